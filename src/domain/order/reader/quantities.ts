import type { LineSlot } from '../../shop/words.ts';
import type { Grammar, Part } from './language/language.ts';
import type { Item, Span } from './span.ts';

export type Asked = LineSlot | 'needBy' | 'shipTo';
/** A span, or a number that counts heads. */
export type Counted = Exclude<Span, { is: 'number' }> | (Span & Readonly<{ is: 'number' }>);

/** Numbers that count heads become quantities, all others say nothing: ages, fish and depths have no head beside them. */
export function quantified(spans: readonly Span[], asked: Asked | undefined): readonly Span[] {
  const alone =
    spans.filter(({ is }) => is === 'number').length === 1 &&
    !spans.some((span) => isContent(span) || span.is === 'word');
  return spans.map((span, at) => {
    if (asked === 'hook' && isWeight(span) && spans.filter(isContent).length === 1)
      return { ...span, is: 'stranger', slot: 'hook' };
    if (span.is !== 'number') return span;
    const place = { from: span.from, to: span.to, at: span.at, until: span.until };
    if (asked !== undefined && asked !== 'quantity' && alone) return answered(span, asked);
    if (asked === 'quantity' && isOnlyNumber(spans) && !isNamed(spans[at + 1], 'measure'))
      return { ...place, is: 'value', slot: 'quantity', value: String(span.count) };
    if (isHookSize(spans, at)) return { ...place, is: 'value', slot: 'hook', value: String(span.count) };
    const counts =
      span.count > 0 &&
      (countsHeads(spans, at) || (alone && !isNamed(spans[at + 1], 'measure') && !isAfterNot(spans, at)));
    return counts ? { ...place, is: 'value', slot: 'quantity', value: String(span.count) } : { ...place, is: 'noise' };
  });
}

/** Asked for a number, the one number of the answer is it, whatever is said around it. */
const isOnlyNumber = (spans: readonly Span[]): boolean =>
  spans.filter(({ is }) => is === 'number').length === 1 && !spans.some(isContent);

/** A fraction in answer to the question for the hook is no weight. */
const isWeight = (span: Span): boolean => span.is === 'value' && span.slot === 'weight';

/** A lone number in the light of what was asked. */
function answered(span: Span & Readonly<{ is: 'number' }>, asked: Asked): Span {
  const place = { from: span.from, to: span.to, at: span.at, until: span.until };
  if (asked === 'hook' && span.count <= 12) return { ...place, is: 'value', slot: 'hook', value: String(span.count) };
  if (asked === 'weight' && span.count <= 8)
    return { ...place, is: 'value', slot: 'weight', value: String(span.count) };
  return { ...place, is: 'noise' };
}

export const isNamed = (span: Item | Span | undefined, ...words: readonly Grammar[]): boolean =>
  span?.is === 'grammar' && words.includes(span.word);

/** Something said of a head, beside which a number counts heads. */
export const isContent = (span: Span | undefined): boolean =>
  span !== undefined &&
  (span.is === 'value' ||
    span.is === 'colour' ||
    span.is === 'stranger' ||
    (span.is === 'part' && span.part === 'head'));

const isSeparator = (span: Span | undefined): boolean =>
  span === undefined ||
  (span.is === 'mark' && span.mark !== 'slash' && span.mark !== 'other') ||
  isNamed(span, 'and', 'but');

function countsHeads(spans: readonly Span[], at: number): boolean {
  const span = spans[at] as Span & Readonly<{ is: 'number' }>;
  const [before, next] = [spans[at - 1], spans[at + 1]];
  if (isNamed(before, 'order', 'all', 'both' as Grammar) || isNamed(next, 'measure')) return false;
  if (span.sure) return true;
  if (isNamed(next, 'count', 'each', 'times') || isNamed(before, 'times')) return true;
  if (before?.is === 'mark' && isNamed(spans[at - 2], 'times')) return true;
  if (isAfterNot(spans, at)) return false;
  if (isSeparator(next) && isHeading(spans, at)) return true;
  if (isNamed(next, 'not') && spans[at + 2]?.is === 'number') return true;
  if (isNamed(next, 'more') && (isSeparator(spans[at + 2]) || isNamed(spans[at + 2], 'want', 'link', 'ones', 'count')))
    return true;
  if (isChanged(spans, at)) return true;
  if (isRange(spans, at)) return countsHeads(spans, at + 2);
  return leadsToContent(spans, at) || standsAlone(spans, at) || endsContent(spans, at) || isSet(spans, at);
}

/** qty 40, count: 40, heads: 40; not the heads of a number before. */
function isHeading(spans: readonly Span[], at: number): boolean {
  const colon = spans[at - 1]?.is === 'mark' && (spans[at - 1] as { mark?: string }).mark === 'colon';
  const word = at - (colon ? 2 : 1);
  return isNamed(spans[word], 'count') && spans[word - 1]?.is !== 'number';
}

/** 20 1/4 ball, 20 of the black, 20 in brown, 15 shaky heads. */
function leadsToContent(spans: readonly Span[], at: number): boolean {
  for (let next = at + 1; next <= at + 5; next += 1) {
    const span = spans[next];
    if (isContent(span)) return !(span?.is === 'colour' && isPart(spans[next + 1], 'hook'));
    if (span?.is === 'word' && isPart(spans[next + 1], 'head')) return true;
    if (span?.is === 'part' && next > at + 1 && FITTED.has(span.part)) return true;
    if (span?.is === 'grammar' && PASSED.has(span.word)) continue;
    if (span?.is === 'mark' && (span.mark === 'other' || (next === at + 1 && isListed(spans, at)))) continue;
    return false;
  }
  return false;
}
/** 12 - 1/2 swim, as lists are written. */
const isListed = (spans: readonly Span[], at: number): boolean => {
  const next = spans[at + 1];
  return next?.is === 'mark' && (next.mark === 'dash' || next.mark === 'colon') && isSeparator(spans[at - 1]);
};

/** 10 with guards, 10 with no skirt: what a head is fitted with. */
const FITTED: ReadonlySet<Part> = new Set(['guard', 'skirt', 'collar', 'keeper']);

const PASSED: ReadonlySet<Grammar> = new Set([
  'link',
  'more',
  'plain',
  'shade',
  'naked',
  'tint',
  'same',
  'ones',
  'add',
  'half',
  'match',
  'no',
  'for',
]);
const isPart = (span: Span | undefined, part: string): boolean => span?.is === 'part' && span.part === part;

/** change it from 40 to 60: the second counts. */
const isChanged = (spans: readonly Span[], at: number): boolean =>
  isNamed(spans[at - 1], 'link') &&
  spans[at - 2]?.is === 'number' &&
  spans.slice(0, at).some((span) => isNamed(span, 'make'));

/** 20 or 25, 20-25: both count if the second does. */
const isRange = (spans: readonly Span[], at: number): boolean =>
  spans[at + 2]?.is === 'number' &&
  (isNamed(spans[at + 1], 'or') ||
    (spans[at + 1]?.is === 'mark' && (spans[at + 1] as { mark?: string }).mark === 'dash'));

/** A number alone between two marks, in a message that counts nothing else. */
const standsAlone = (spans: readonly Span[], at: number): boolean =>
  isSeparator(spans[at - 1]) &&
  isSeparator(spans[at + 1]) &&
  spans.filter(({ is }) => is === 'number').length === 1 &&
  numberAt(spans, at) <= 999;

const numberAt = (spans: readonly Span[], at: number): number => {
  const span = spans[at];
  return span?.is === 'number' ? span.count : 0;
};

/** black 15, ball 1/4 white: 25 */
function endsContent(spans: readonly Span[], at: number): boolean {
  const before = spans[at - 1];
  const isHeld =
    isContent(before) ||
    (before?.is === 'mark' && (before.mark === 'colon' || before.mark === 'dash') && isContent(spans[at - 2]));
  return isHeld && (isSeparator(spans[at + 1]) || isNamed(spans[at + 1], 'not', 'instead', 'all'));
}

/** make that 30, just 20, 20 please */
function isSet(spans: readonly Span[], at: number): boolean {
  if (numberAt(spans, at) > 999) return false;
  const [before, next] = [spans[at - 1], spans[at + 1]];
  const isSetBefore =
    isNamed(before, 'wrong', 'make', 'want', 'only', 'more', 'instead', 'rest') ||
    (isNamed(before, 'link', 'ones', 'no') && isNamed(spans[at - 2], 'wrong', 'make', 'want'));
  const isRefused = isNamed(before, 'no') && (isSeparator(spans[at - 2]) || isNamed(spans[at - 2], 'wrong'));
  const isFree =
    isSeparator(next) ||
    isNamed(next, 'not', 'instead', 'want', 'ones', 'link', 'may', 'wrong', 'all', 'or', 'due', 'for');
  return (isSetBefore || isRefused) && isFree;
}

const isAfterNot = (spans: readonly Span[], at: number): boolean => isNamed(spans[at - 1], 'not');

/** 2 hooks; a count of hooks is not asked for. */
/** hook 2, hook size 2; not 3/0 hooks, 12 of them. */
function endsHook(spans: readonly Span[], at: number): boolean {
  const before = spans[at - 2];
  const sized = before?.is === 'value' && before.slot === 'hook';
  return isPart(spans[at - 1], 'hook') && !sized && !isNamed(spans[at + 1], 'count', 'each', 'times');
}

/** Hooks are numbered down from 12; beyond that a number is no hook. */
const LARGEST_NUMBERED = 12;

const isHookSize = (spans: readonly Span[], at: number): boolean => {
  const span = spans[at];
  if (span?.is !== 'number' || span.sure || span.count > LARGEST_NUMBERED) return false;
  return isPart(spans[at + 1], 'hook') || endsHook(spans, at);
};
