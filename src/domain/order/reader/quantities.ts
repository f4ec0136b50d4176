import type { LineSlot } from '../../shop/words.ts';
import { isContent, isMark, isNamed } from './facts.ts';
import { countsHeads, isAfterNot } from './headCounts.ts';
import { isHookInTurn, isHookSize, isOunce, isWeight } from './numberedSizes.ts';
import { isRow } from './otherNumbers.ts';
import type { Span } from './span.ts';

export type Asked = LineSlot | 'needBy' | 'shipTo';
type NumberSpan = Span & Readonly<{ is: 'number' }>;

/** Numbers that count heads become quantities, all others say nothing: ages, fish and depths have no head beside them. */
export function quantified(said: readonly Span[], asked: Asked | undefined): readonly Span[] {
  const numbers = said.filter(({ is }) => is === 'number').length;
  const spans = numbers > 1 ? saidOnce(said) : said;
  if (asked === 'hook' && spans.filter(isContent).length === 1) return spans.map(hookSaid);
  if (numbers === 0) return spans;
  const alone = numbers === 1 && !spans.some((span) => isContent(span) || span.is === 'word');
  const only = numbers === 1 && !spans.some(isContent);
  return spans.map((span, at) => {
    if (span.is !== 'number') return span;
    if (asked !== undefined && asked !== 'quantity' && alone) return answered(span, asked);
    // Asked for a number, the one number of the answer is it, whatever is said around it.
    if (asked === 'quantity' && only && !isNamed(spans[at + 1], 'measure')) return as(span, 'quantity');
    if (isRow(spans, at)) return row(span);
    if (isHookSize(spans, at) || isHookInTurn(spans, at)) return as(span, 'hook');
    const isAlone = alone && !isNamed(spans[at + 1], 'measure') && !isAfterNot(spans, at);
    return span.count > 0 && (countsHeads(spans, at) || isAlone) ? as(span, 'quantity') : noise(span);
  });
}

/** A number as what it is the number of. */
const as = ({ from, to, at, until, count }: NumberSpan, slot: LineSlot): Span => ({
  is: 'value',
  slot,
  value: String(count),
  from,
  to,
  at,
  until,
});
const row = ({ from, to, at, until, count }: NumberSpan): Span => ({ is: 'row', row: count, from, to, at, until });
const noise = ({ from, to, at, until }: NumberSpan): Span => ({ is: 'noise', from, to, at, until });

/** The spans without a number said again in brackets, `20 (twenty)`, and with a lone 1 among weights as an ounce. */
function saidOnce(spans: readonly Span[]): readonly Span[] {
  const once = spans.some((_, at) => isRepeated(spans, at))
    ? spans.filter((_, at) => !isRepeated(spans, at - 1) && !isRepeated(spans, at) && !isRepeated(spans, at + 1))
    : spans;
  return once.map((span, at) => (span.is === 'number' && isOunce(once, at) ? as(span, 'weight') : span));
}

const isRepeated = (spans: readonly Span[], at: number): boolean => {
  const [span, before] = [spans[at], spans[at - 2]];
  return (
    span?.is === 'number' &&
    before?.is === 'number' &&
    span.count === before.count &&
    isMark(spans[at - 1], 'bracket', 'other')
  );
};

/** A fraction in answer to the question for the hook is no weight. */
const hookSaid = (span: Span): Span => (isWeight(span) ? { ...span, is: 'stranger', slot: 'hook' } : span);

/** A lone number in the light of what was asked. */
function answered(span: NumberSpan, asked: Asked): Span {
  if (asked === 'hook' && span.count <= 12) return as(span, 'hook');
  return asked === 'weight' && span.count <= 8 ? as(span, 'weight') : noise(span);
}
