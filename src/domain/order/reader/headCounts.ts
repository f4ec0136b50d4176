import { isContent, isMark, isNamed, isPart } from './facts.ts';
import type { Grammar } from './language/language.ts';
import { isOfElse, isRow } from './otherNumbers.ts';
import { isKindWord } from './strangers.ts';
import type { Span } from './span.ts';

type Rule = (spans: readonly Span[], at: number) => boolean;

/** Whether the number at a place counts heads, by the words beside it: the first rule that fits says so. */
export function countsHeads(spans: readonly Span[], at: number): boolean {
  for (const [fits, counts] of RULES) if (fits(spans, at)) return counts;
  return false;
}

/** Two dozen. */
const isSure: Rule = (spans, at) => {
  const span = spans[at];
  return span?.is === 'number' && span.sure;
};

/** 20 pieces, 20 each, x20, qty: 20. */
const isNamedCount: Rule = (spans, at) =>
  isNamed(spans[at + 1], 'count', 'each', 'times') ||
  isNamed(spans[spans[at - 1]?.is === 'mark' ? at - 2 : at - 1], 'times');

export const isAfterNot: Rule = (spans, at) => isNamed(spans[at - 1], 'not');

/** qty 40, count: 40, heads: 40; not the heads of a number before. */
const isHeading: Rule = (spans, at) => {
  const word = isMark(spans[at - 1], 'colon') ? at - 2 : at - 1;
  return isSeparator(spans[at + 1]) && isNamed(spans[word], 'count') && spans[word - 1]?.is !== 'number';
};

/** 40 not 30; 25 please, not 20. */
const isCorrected: Rule = (spans, at) => {
  let not = at + 1;
  while (isMark(spans[not], 'comma', 'dash') || isNamed(spans[not], 'want')) not += 1;
  return isNamed(spans[not], 'not') && spans[not + 1]?.is === 'number';
};

/** 20 more, 20 more please. */
const isMore: Rule = (spans, at) =>
  isNamed(spans[at + 1], 'more') &&
  (isSeparator(spans[at + 2]) || isNamed(spans[at + 2], 'want', 'link', 'ones', 'count', 'same'));

/** Change it from 40 to 60, bump the footballs up to 40: the last number of a change counts heads, if no hook is changed. */
const isChanged: Rule = (spans, at) => {
  if (!isNamed(spans[at - 1], 'link') || numberAt(spans, at) > MOST) return false;
  const start = spans.slice(0, at).findLastIndex((span) => isNamed(span, 'make'));
  if (start === -1) return false;
  if (spans[at - 2]?.is === 'number') return true;
  const between = spans.slice(start + 1, at);
  return isFree(spans[at + 1]) && between.every((span) => isNamed(span, 'link', 'ones') || isContent(span));
};
/** A larger number is a year, a price or a house. */
const MOST = 999;

/** 20 or 25, 20-25, between 20 and 25: both count if the second does. */
const isRange: Rule = (spans, at) =>
  spans[at + 2]?.is === 'number' &&
  (isNamed(spans[at + 1], 'or') || isMark(spans[at + 1], 'dash') || isFromTo(spans, at)) &&
  countsHeads(spans, at + 2);

/** Either 20 or 30, have not decided. */
const isEither: Rule = (spans, at) => {
  const first = isNamed(spans[at - 1], 'or') ? at - 2 : at;
  const isTwo = spans[first]?.is === 'number' && spans[first + 2]?.is === 'number' && isNamed(spans[first + 1], 'or');
  return isTwo && isNamed(spans[first - 1], 'either') && isSeparator(spans[first + 3]);
};

const isFromTo: Rule = (spans, at) => isNamed(spans[at - 1], 'open') && isNamed(spans[at + 1], 'and');

/** 20 1/4 ball, 20 of the black, 20 in brown, 15 shaky heads. */
const leadsToContent: Rule = (spans, at) => {
  for (let next = at + 1; next <= at + REACH; next += 1) {
    const span = spans[next];
    if (isContent(span)) return !(span?.is === 'colour' && isPart(spans[next + 1], 'hook'));
    if (span?.is === 'word' && isPart(spans[next + 1], 'head')) return true;
    if (isUnknownKind(spans, at, next)) return true;
    if (isPart(span, 'paint') && spans[next + 1]?.is === 'colour') return true;
    if (next > at + 1 && isPart(span, 'guard', 'skirt', 'collar', 'keeper')) return true;
    if (!isPassed(spans, at, next)) return false;
  }
  return false;
};
const REACH = 5;

/** 24 gizmos 3/8 black: a word that no list holds, where a kind of head stands, with its weight behind it. */
const isUnknownKind = (spans: readonly Span[], at: number, next: number): boolean =>
  next === at + 1 && isSeparator(spans[at - 1]) && isKindWord(spans, next);

/** Words and marks between a number and what it counts; `12 - 1/2 swim`, as lists are written. */
function isPassed(spans: readonly Span[], at: number, next: number): boolean {
  const span = spans[next];
  if (span?.is === 'grammar') return PASSED.has(span.word);
  if (isMark(span, 'bracket', 'other')) return true;
  return next === at + 1 && isMark(span, 'dash', 'colon') && isSeparator(spans[at - 1]);
}

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

/** A number alone between two marks, in a message that counts nothing else. */
const standsAlone: Rule = (spans, at) =>
  (isSeparator(spans[isNamed(spans[at - 1], 'roughly') ? at - 2 : at - 1]) || isNamed(spans[at - 1], 'yes')) &&
  (isSeparator(spans[at + 1]) || isNamed(spans[at + 1], 'want', 'fits')) &&
  numberAt(spans, at) <= MOST &&
  spans.every((span) => span.is !== 'number' || span.count === numberAt(spans, at));

/** Hmm. 50. Yeah 50: a sentence of nothing but a number. */
const isSentence: Rule = (spans, at) => {
  const before = isNamed(spans[at - 1], 'yes') ? at - 2 : at - 1;
  return (
    numberAt(spans, at) <= MOST && isMark(spans[before], 'stop', 'question') && isMark(spans[at + 1] ?? END, 'stop')
  );
};
const END: Span = { is: 'mark', mark: 'stop', from: 0, to: 0, at: 0, until: 0 };

const numberAt = (spans: readonly Span[], at: number): number => {
  const span = spans[at];
  return span?.is === 'number' ? span.count : 0;
};

/** `1/4 ball, 30, chart`, `ball 1/4 (30)`: alone between two commas or on its line, with what is said of a head before it; not the `2)` of a list. */
const isCell: Rule = (spans, at) =>
  isContent(spans[at - 2]) && numberAt(spans, at) <= MOST && (isOnLine(spans, at) || isBetween(spans, at));

const isBetween: Rule = (spans, at) => isMark(spans[at - 1], 'comma', 'bracket', 'other') && isSeparator(spans[at + 1]);

const isOnLine: Rule = (spans, at) =>
  isMark(spans[at - 1], 'line') && (spans[at + 1] === undefined || isMark(spans[at + 1], 'line'));

/** black 15, white ones 20, ball 1/4 white: 25 */
const endsContent: Rule = (spans, at) => {
  const last = isMark(spans[at - 1], 'colon', 'dash') ? at - 2 : at - 1;
  const isHeld = isContent(spans[isNamed(spans[last], 'ones') ? last - 1 : last]);
  return isHeld && (isSeparator(spans[at + 1]) || isNamed(spans[at + 1], 'not', 'instead', 'all'));
};

/** 20 with guards, 10 without. */
const isWithout: Rule = (spans, at) =>
  isSeparator(spans[at - 1]) && isNamed(spans[at + 1], 'no') && isSeparator(spans[at + 2]);

/** make that 30, just 20, 20 please */
const isSet: Rule = (spans, at) => {
  if (numberAt(spans, at) > MOST || !isFree(spans[at + 1])) return false;
  const last = isNamed(spans[at - 1], 'roughly') ? at - 2 : at - 1;
  const [before, first] = [spans[last], spans[last - 1]];
  if (isNamed(before, 'wrong', 'make', 'want', 'only', 'more', 'instead', 'rest')) return true;
  if (isNamed(before, 'no') && isSeparator(first)) return true;
  return isNamed(before, 'link', 'ones', 'no') && isNamed(first, 'wrong', 'make', 'want');
};

/** Make line 2 35. */
const isOfRow: Rule = (spans, at) => spans[at - 1]?.is === 'number' && isRow(spans, at - 1) && isFree(spans[at + 1]);

/** Whether nothing that a number could be of comes after it. */
const isFree = (next: Span | undefined): boolean =>
  isSeparator(next) ||
  isNamed(next, 'not', 'instead', 'want', 'ones', 'link', 'may', 'wrong', 'all', 'each', 'or', 'due', 'for');

const isSeparator = (span: Span | undefined): boolean =>
  span === undefined ||
  (span.is === 'mark' && span.mark !== 'slash' && span.mark !== 'bracket' && span.mark !== 'other') ||
  isNamed(span, 'and', 'but');

/** In the order in which they are asked. */
const RULES: readonly (readonly [Rule, boolean])[] = [
  [isOfElse, false],
  [isSure, true],
  [isNamedCount, true],
  [isAfterNot, false],
  [isHeading, true],
  [isCorrected, true],
  [isMore, true],
  [isChanged, true],
  [isRange, true],
  [isEither, true],
  [leadsToContent, true],
  [standsAlone, true],
  [isSentence, true],
  [isCell, true],
  [endsContent, true],
  [isWithout, true],
  [isSet, true],
  [isOfRow, true],
];
