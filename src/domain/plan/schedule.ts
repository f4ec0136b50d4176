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

/** The cheapest of a few orders of the lots and of a few shares of grouping for it; or what stands against any plan. */
export function construct(model: Model, before?: Order): Candidate | Impossible {
  const { id } = model.problem;
  const never = hindrances(model);
  if (never.length > 0) return { id, impossible: never };
  const best = firstWay(model, before);
  if (best.cost.ship < Infinity) return best;
  return { id, impossible: unfinished(model, dispatch(model, best.rule, asPlanned(model))) };
}

function firstWay(model: Model, before: Order | undefined): Candidate {
  const keys = SLOWS.map((slow) => keysOf(model, lotOrder(model, slow)));
  const ordered = cheapest(keys.map((keys) => costed(model, { ...RULE, keys })));
  const grouped = cheapest([ordered, ...GROUPINGS.map((grouping) => costed(model, { ...ordered.rule, grouping }))]);
  const again = grouped === ordered ? [] : keys.map((keys) => costed(model, { ...grouped.rule, keys }));
  // Known first: what is planned moves only for something cheaper.
  const known = before === undefined ? [] : [costed(model, resumed(model, before))];
  return cheapest([...known, grouped, ...again]);
}

/** How much longer all takes than its bare minutes: what setups, lags and gaps may come to. */
const SLOWS = [1.1, 1.25, 1.4, 1.6, 1.9];
/** Besides the usual one. */
const GROUPINGS = [0, 10, 100, 300];

const cheapest = (candidates: readonly Candidate[]): Candidate =>
  candidates.reduce((best, one) => (isBetter(one.cost, best.cost) ? one : best));

export const costed = (model: Model, rule: Rule): Candidate => ({
  rule,
  cost: costOf(model, dispatch(model, rule, asPlanned(model))),
});
