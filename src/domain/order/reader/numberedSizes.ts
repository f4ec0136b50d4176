import { isMark, isNamed, isPart } from './facts.ts';
import type { Span } from './span.ts';

/** Numbers that are a size and count nothing. */

/** 2 hooks, hook: 2, light wire 2; a count of hooks is not asked for. */
export function isHookSize(spans: readonly Span[], at: number): boolean {
  const span = spans[at];
  if (span?.is !== 'number' || span.sure || span.count > LARGEST_NUMBERED) return false;
  return isPart(spans[at + 1], 'hook') || spans[at - 1]?.is === 'pattern' || endsHook(spans, at);
}
/** Hooks are numbered down from 12; beyond that a number is no hook. */
const LARGEST_NUMBERED = 12;

/** hook 2, hook: 2; not 3/0 hooks, 12 of them. */
function endsHook(spans: readonly Span[], at: number): boolean {
  const noun = isMark(spans[at - 1], 'colon') ? at - 2 : at - 1;
  const before = spans[noun - 1];
  const sized = before?.is === 'value' && before.slot === 'hook';
  return isPart(spans[noun], 'hook') && !sized && !isNamed(spans[at + 1], 'count', 'each', 'times');
}

/** 1/0 on the sixteenths and 2 on the eighths */
export function isHookInTurn(spans: readonly Span[], at: number): boolean {
  const span = spans[at];
  const isAim = (place: number) => isNamed(spans[place + 1], 'aim', 'for') && spans[place + 2]?.is === 'value';
  if (span?.is !== 'number' || span.sure || span.count > LARGEST_NUMBERED || !isAim(at)) return false;
  return spans.slice(0, at).some((hook, place) => hook.is === 'value' && hook.slot === 'hook' && isAim(place));
}

/** `3/4 and 1`, and in a list of `3/4 - 10` the row `1 - 5`: one of the weights, since nobody orders a single head. */
export function isOunce(spans: readonly Span[], at: number): boolean {
  const [span, before, next] = [spans[at], spans[at - 1], spans[at + 1]];
  if (span?.is !== 'number' || span.count !== 1) return false;
  if (isNamed(before, 'and', 'or') || isMark(before, 'comma')) return isWeight(spans[at - 2]);
  const isRow = isMark(before, 'line') && isMark(next, 'dash', 'colon') && spans[at + 2]?.is === 'number';
  return isRow && spans.some((mark, row) => isMark(mark, 'line') && isWeight(spans[row + 1]));
}

export const isWeight = (span: Span | undefined): boolean => span?.is === 'value' && span.slot === 'weight';
