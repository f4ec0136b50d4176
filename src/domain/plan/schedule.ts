import type { Cost, Impossible, Order, Plan } from './plan.ts';
import type { Problem } from './problem.ts';
import { costOf, isBetter } from './cost.ts';
import type { Rule } from './run.ts';
import { dispatch } from './dispatch.ts';
import { hindrances, unfinished } from './impossible.ts';
import { asPlanned, layOut } from './layout.ts';
import type { Model } from './model.ts';
import { modelOf } from './model.ts';
import { keysOf, lotOrder, resumed, RULE } from './order.ts';

/** A rule with what it costs. */
export type Candidate = Readonly<{ rule: Rule; cost: Cost }>;

/** The plan made without search: a few ways of ordering the lots are tried and the cheapest is kept. Milliseconds, and
 *  the same problem gives the same plan. A problem that cannot be made says which lots and why.
 *  @param before the order of an earlier plan of this bench; it is kept unless another is cheaper */
export function schedule(problem: Problem, before?: Order): Plan | Impossible {
  const model = modelOf(problem);
  const made = construct(model, before);
  return 'impossible' in made ? made : layOut(model, made.rule);
}

/** The plan that keeps to the order of work of an earlier one, whatever has happened since; lots new to it come last. */
export function follow(problem: Problem, before: Order): Plan | Impossible {
  const model = modelOf(problem);
  const never = hindrances(model);
  if (never.length > 0) return { id: problem.id, impossible: never };
  const rule = resumed(model, before);
  const left = unfinished(model, dispatch(model, rule, asPlanned(model)));
  return left.length > 0 ? { id: problem.id, impossible: left } : layOut(model, rule);
}

/** The cheapest of a few ways of ordering the lots, each with little and much grouping; or what stands against any plan. */
export function construct(model: Model, before?: Order): Candidate | Impossible {
  const { id } = model.problem;
  const never = hindrances(model);
  if (never.length > 0) return { id, impossible: never };
  const best = waysOf(model, before).reduce((best, one) => (isBetter(one.cost, best.cost) ? one : best));
  if (best.cost.ship < Infinity) return best;
  return { id, impossible: unfinished(model, dispatch(model, best.rule, asPlanned(model))) };
}

function waysOf(model: Model, before: Order | undefined): Candidate[] {
  const known = before === undefined ? [] : [costed(model, resumed(model, before))];
  const tried = SLOWS.flatMap((slow) => {
    const keys = keysOf(model, lotOrder(model, slow));
    return GROUPINGS.map((grouping) => costed(model, { ...RULE, keys, grouping }));
  });
  return [...known, ...tried];
}

const SLOWS = [1.1, 1.25, 1.4, 1.6];
const GROUPINGS = [0, 10, 40, 100, 300];

export const costed = (model: Model, rule: Rule): Candidate => ({
  rule,
  cost: costOf(model, dispatch(model, rule, asPlanned(model))),
});
