import type { LineSlot } from '../../shop/words.ts';
import { fact, isContent, isMark, isNamed, isPart, over, SLOT_OF_NOUN, type Step } from './facts.ts';
import type { Span } from './span.ts';

/** A thing that other benches have, with its noun; a style counts only with a head, a number or a size beside it: rocks and grass are also places to fish. */
export function stranger(spans: readonly Span[], at: number): Step {
  const span = spans[at] as Span & Readonly<{ is: 'stranger'; slot: LineSlot; isAnswered?: true }>;
  const metal = spans[at - 1];
  const isCorrected = metal?.is === 'value' && metal.slot === span.slot;
  if (span.isAnswered && (isCorrected || isAnswered(spans, at, span.slot))) return { items: [], next: at + 1 };
  const next = spans[at + 1];
  const before = spans[at - 1];
  const noun = next?.is === 'part' && SLOT_OF_NOUN[next.part] === span.slot ? next : undefined;
  const isSaid = noun !== undefined || next?.is === 'value' || before?.is === 'value' || before?.is === 'colour';
  if (span.slot === 'style' && !isSaid) return { items: [], next: at + 1 };
  if (span.slot === 'quantity' && !isBeforeHeads(spans, at + 1)) return { items: [], next: at + 1 };
  return { items: [fact(noun ? over(span, noun) : span, span.slot, [])], next: at + (noun ? 2 : 1) };
}

/** Not lead, tin; lead free please so bismuth: the metal that follows is the one. */
function isAnswered(spans: readonly Span[], from: number, slot: LineSlot): boolean {
  let at = from + 1;
  while (isMark(spans[at], 'comma', 'dash', 'stop') || isNamed(spans[at], 'link', 'but', 'want', 'make')) at += 1;
  const span = spans[at];
  return span?.is === 'value' && span.slot === slot && at > from + 1;
}

/** A bunch of quarter ounce ball heads. */
function isBeforeHeads(spans: readonly Span[], from: number): boolean {
  let at = from;
  while (isNamed(spans[at], 'link', 'more')) at += 1;
  return isContent(spans[at]);
}

/** 24 gizmos 3/8: a word where a kind of head stands, with its weight behind it. */
export function isKindWord(spans: readonly Span[], at: number): boolean {
  const [word, weight] = [spans[at], spans[at + 1]];
  return word?.is === 'word' && word.stem.length >= SHORTEST_KIND && weight?.is === 'value' && weight.slot === 'weight';
}
const SHORTEST_KIND = 4;

/** 15 gorgo heads, in shad color, twin tail keepers: words that no list holds name a kind that the shop does not have. */
export function namedByWord(spans: readonly Span[], at: number): Step | undefined {
  const count = spans[at - 1];
  if (count?.is === 'value' && count.slot === 'quantity' && isKindWord(spans, at))
    return { items: [fact(spans[at] as Span, 'style', [])], next: at + 1 };
  let next = at + 1;
  while (spans[next]?.is === 'word' && next < at + 3) next += 1;
  const noun = spans[next];
  if (noun?.is !== 'part' || !isKindOf(spans, at, next)) return undefined;
  return { items: [fact(over(spans[at] as Span, noun), SLOT_OF_NOUN[noun.part] as LineSlot, [])], next: next + 1 };
}

function isKindOf(spans: readonly Span[], at: number, noun: number): boolean {
  const before = spans[at - 1];
  if (isPart(spans[noun], 'keeper')) return true;
  if (isPart(spans[noun], 'hook')) return isNamed(before, 'link') && spans[noun + 1]?.is !== 'value';
  if (noun > at + 1) return false;
  if (isPart(spans[noun], 'paint')) return isNamed(before, 'link') || before?.is === 'value';
  const isSized = before?.is === 'value' || before?.is === 'colour';
  return isPart(spans[noun], 'head') && isSized && spans[noun + 1]?.is !== 'part';
}
