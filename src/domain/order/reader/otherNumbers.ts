import { isNamed, isPart } from './facts.ts';
import type { Span } from './span.ts';

/** Numbers that are of something else than heads. */

/** 12 inches, order 1042, line 2. */
export const isOfElse = (spans: readonly Span[], at: number): boolean =>
  isNamed(spans[at - 1], 'order', 'all') ||
  isNamed(spans[at + 1], 'measure', 'row') ||
  isRow(spans, at) ||
  isRate(spans, at);

/** 30 jigs a weekend, 20 a trip: what is used up. */
const isRate = (spans: readonly Span[], at: number): boolean => {
  const per = isNamed(spans[at + 1], 'count') || isPart(spans[at + 1], 'head') ? at + 2 : at + 1;
  const span = spans[per + 1];
  return isNamed(spans[per], 'link', 'each') && (isNamed(span, 'measure') || (span?.is === 'day' && span.day === null));
};

/** Line 2, item 3, lines 1 and 2: the place of a line; not 6 lb line, 20 heads. */
export const isRow = (spans: readonly Span[], at: number): boolean =>
  (isNamed(spans[at - 1], 'row') && !isNamed(spans[at - 2], 'measure') && spans[at - 2]?.is !== 'number') ||
  (isNamed(spans[at - 1], 'and') && spans[at - 2]?.is === 'number' && isNamed(spans[at - 3], 'row'));
