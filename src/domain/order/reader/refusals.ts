import { BARE, NONE, type LineSlot } from '../../shop/words.ts';
import { fact, isMark, isNamed, isPart, over, SLOT_OF_NOUN, type Step } from './facts.ts';
import type { Fact, Span } from './span.ts';
import type { Token } from './tokens.ts';

/** 20 with black guards, 10 without: the part named last is refused. */
export function without(spans: readonly Span[], at: number): Step | undefined {
  const before = spans[at - 1];
  const isCounted = (before?.is === 'value' && before.slot === 'quantity') || isNamed(before, 'rest');
  const facts = isCounted && (spans[at + 1]?.is ?? 'mark') === 'mark' ? refusedBefore(spans, at) : [];
  return facts.length === 0 ? undefined : { items: facts, next: at + 1 };
}

/** no guards, skirts or keepers */
export function refused(spans: readonly Span[], at: number): Step | undefined {
  const facts: Fact[] = [];
  let next = at + 1;
  for (;;) {
    while (isNamed(spans[next], 'link', 'all', 'each', 'only')) next += 1;
    const start = spans[next]?.is === 'colour' ? next + 1 : next;
    const span = spans[start];
    const slot = isPart(span, 'guard', 'skirt', 'collar', 'keeper', 'paint')
      ? SLOT_OF_NOUN[span.part]
      : span?.is === 'stranger' && start === next && facts.length === 0
        ? span.slot
        : undefined;
    if (span === undefined || slot === undefined || !REFUSABLE.has(slot)) break;
    facts.push(fact(span, slot, [slot === 'paint' ? BARE : NONE]));
    next = start + 1;
    const joint = jointAt(spans, next);
    if (joint === undefined) return { items: facts, next };
    next = joint;
  }
  return facts.length === 0 ? undefined : { items: facts, next };
}
const REFUSABLE: ReadonlySet<LineSlot> = new Set(['guard', 'dressing', 'keeper', 'paint']);

/** Past a comma, an or, an and, if what follows is refused too: a bare noun that no colour and no `no` of its own begins. */
function jointAt(spans: readonly Span[], from: number): number | undefined {
  let next = from;
  if (spans[next]?.is === 'mark' && (spans[next] as { mark?: string }).mark === 'comma') next += 1;
  if (isNamed(spans[next], 'or', 'and')) next += 1;
  else if (!(spans[next - 1]?.is === 'mark' && next > from && isNamed(spans[next + 1], 'or', 'and'))) return undefined;
  const noun = spans[next];
  // Just collars, a plain collar: more than a bare noun, and wanted.
  const isWanted = isPart(noun, 'collar') && noun.until - noun.at > 1;
  return isPart(noun, 'guard', 'skirt', 'collar', 'keeper', 'paint') && !isWanted && spans[next + 1]?.is !== 'colour'
    ? next
    : undefined;
}

/** Leave the guards off, leave the skirt off those. */
export function leftOff(spans: readonly Span[], at: number, tokens: readonly Token[]): Step | undefined {
  const facts: Fact[] = [];
  let next = at + 1;
  for (; next < spans.length; next += 1) {
    const span = spans[next] as Span;
    if (isPart(span, 'guard', 'skirt', 'collar', 'keeper', 'paint')) {
      const slot = SLOT_OF_NOUN[span.part] as LineSlot;
      facts.push(fact(span, slot, [slot === 'paint' ? BARE : NONE]));
    } else if (!isNamed(span, 'link', 'and', 'or')) break;
  }
  return facts.length > 0 && OFF.has(tokens[spans[next]?.at ?? -1]?.stem ?? '')
    ? { items: facts, next: next + 1 }
    : undefined;
}
const OFF: ReadonlySet<string> = new Set(['off', 'out']);

/** The guard, just leave it off: the part named last is refused. */
export function refusedBefore(spans: readonly Span[], at: number): readonly Fact[] {
  const last = spans.slice(0, at).findLast((span) => isPart(span, 'guard', 'skirt', 'collar', 'keeper', 'paint'));
  const slot = isPart(last) ? SLOT_OF_NOUN[last.part] : undefined;
  return slot === undefined ? [] : [fact(spans[at] as Span, slot, [slot === 'paint' ? BARE : NONE])];
}

/** guards: none, keeper yes */
export function answerAfter(
  spans: readonly Span[],
  at: number,
): Readonly<{ is: 'none' | 'yes'; next: number }> | undefined {
  let next = at + 1;
  while (isNamed(spans[next], 'link') || isMark(spans[next], 'colon', 'dash')) next += 1;
  if (isNamed(spans[next], 'none') || (isNamed(spans[next], 'no', 'not') && !isNextNoun(spans[next + 1])))
    return { is: 'none', next: next + 1 };
  return isNamed(spans[next], 'yes') && next <= at + 2 ? { is: 'yes', next: next + 1 } : undefined;
}
const isNextNoun = (span: Span | undefined): boolean =>
  span?.is === 'part' ||
  span?.is === 'colour' ||
  span?.is === 'value' ||
  span?.is === 'stranger' ||
  isNamed(span, 'link');

/** Same hooks, same paint and skirt: as the line before; matching guards: a colour that was not said; the usual hook: nothing was said. */
export function likened(spans: readonly Span[], at: number): Step | undefined {
  const span = spans[at] as Span;
  const next = isNamed(spans[at + 1], 'link') ? at + 2 : at + 1;
  const noun = spans[next];
  if (noun?.is !== 'part') return undefined;
  const slot = SLOT_OF_NOUN[noun.part];
  if (slot === undefined) return undefined;
  const place = over(span, noun);
  if (isNamed(span, 'usual')) return { items: [], next: next + 1 };
  if (!isNamed(span, 'same')) return { items: [fact(place, slot, [])], next: next + 1 };
  const more = likewise(spans, next + 1);
  return { items: [{ ...fact(place, slot, []), copied: true }, ...more], next: next + 1 + 2 * more.length };
}

/** The noun that an `and` joins to the same paint. */
function likewise(spans: readonly Span[], at: number): readonly Fact[] {
  const noun = spans[at + 1];
  const slot = isNamed(spans[at], 'and') && isPart(noun) ? SLOT_OF_NOUN[noun.part] : undefined;
  return slot === undefined ? [] : [{ ...fact(noun as Span, slot, []), copied: true }];
}
