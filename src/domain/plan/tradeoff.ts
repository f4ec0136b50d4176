import type { Day } from '../craft/time.ts';
import { isImpossible } from './plan.ts';
import type { Promised, Terms } from './promise.ts';
import { promise } from './promise.ts';
import type { PlanLot, Problem } from './problem.ts';

/** The lots of an order if so many heads of it were made. */
export type LotsOf = (heads: number) => readonly PlanLot[];

/** The most heads, at most `wanted`, that leave by `day` with the asked confidence, with their promise; undefined when not even `least` do. */
export function mostHeadsBy(
  problem: Problem,
  lotsOf: LotsOf,
  { day, least, wanted }: Readonly<{ day: Day; least: number; wanted: number }>,
  terms: Terms,
): Readonly<{ heads: number; promised: Promised }> | undefined {
  let best: Readonly<{ heads: number; promised: Promised }> | undefined;
  for (let low = least, high = wanted; low <= high;) {
    // The whole first: often all of it can be done.
    const heads = best === undefined && low === least && high === wanted ? wanted : Math.floor((low + high) / 2);
    const promised = promise(problem, lotsOf(heads), terms);
    if (isImpossible(promised) || promised.day > day) high = heads - 1;
    else {
      best = { heads, promised };
      low = heads + 1;
    }
  }
  return best;
}

/** Each way of making an order with the promise it would have, soonest first; ways that cannot be made are left out. */
export const soonest = <Way>(
  problem: Problem,
  ways: readonly Readonly<{ way: Way; lots: readonly PlanLot[] }>[],
  terms: Terms,
): readonly Readonly<{ way: Way; promised: Promised }>[] =>
  ways
    .flatMap(({ way, lots }) => {
      const promised = promise(problem, lots, terms);
      return isImpossible(promised) ? [] : [{ way, promised }];
    })
    .sort((a, b) => (a.promised.day < b.promised.day ? -1 : a.promised.day > b.promised.day ? 1 : 0));
