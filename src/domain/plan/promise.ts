import type { Day } from '../craft/time.ts';
import { dayAfter } from './calendar.ts';
import { shipDayOf } from './cost.ts';
import { dispatch } from './dispatch.ts';
import { hindrances, unfinished } from './impossible.ts';
import { asPlanned, layOut, orderOf } from './layout.ts';
import type { Model } from './model.ts';
import { modelOf } from './model.ts';
import { resumed, RULE } from './order.ts';
import type { Impossible, Order, Plan } from './plan.ts';
import type { PlanLot, Problem } from './problem.ts';
import type { Rule } from './run.ts';
import { construct } from './schedule.ts';
import type { Spread } from './world.ts';
import { UNKNOWN, worldsOf } from './world.ts';

/** What a promise rests on. */
export type Terms = Readonly<{
  /** How sure the ship day is to hold, between 0 and 1. */
  confidence: number;
  /** Imagined courses of the weeks; more are slower and smoother. */
  worlds: number;
  seed: number;
  spread: Spread;
  /** `turn`: after the work already accepted. `rush`: as early as breaks no promise. */
  place: 'turn' | 'rush';
  /** How much of the time to a promised day a rushed order must leave free. */
  reserve: number;
  /** The order of work the bench follows now. */
  before?: Order;
}>;

export const TERMS: Terms = { confidence: 0.9, worlds: 200, seed: 1, spread: UNKNOWN, place: 'turn', reserve: 0.3 };

/** A lot and the chance that it ships after its due day. */
export type Risk = Readonly<{ lot: string; late: number }>;

/** A day and the chance that all has left by then. */
export type Chance = Readonly<{ day: Day; chance: number }>;

export type Promised = Readonly<{
  /** The day all asked lots have left by, as near to the asked confidence as whole days allow. */
  day: Day;
  /** The day they leave if all goes as planned. */
  planned: Day;
  /** The share of imagined courses in which they have left by `day`. */
  chance: number;
  /** The same share for every day on which some course ends, rising. */
  outlook: readonly Chance[];
  /** The accepted lots' chances of being late, with the asked ones on the bench. */
  risks: readonly Risk[];
  /** The plan with the asked lots in it; its `order` is what the bench follows once they are accepted. */
  plan: Plan;
}>;

/** When lots that are asked for would ship, all accepted ones in `problem` kept: their due days are promises.
 *  @example promise(problem, lots, TERMS) //=> { day: '2026-05-16', chance: 0.93, … } */
export function promise(problem: Problem, asked: readonly PlanLot[], terms: Terms): Promised | Impossible {
  const model = modelOf({ ...problem, lots: [...problem.lots, ...asked] });
  const never = hindrances(model);
  if (never.length > 0) return { id: problem.id, impossible: never };
  const rule = ruleWith(model, problem, terms);
  const planned = dispatch(model, rule, asPlanned(model));
  const left = unfinished(model, planned);
  if (left.length > 0) return { id: problem.id, impossible: left };
  const first = problem.lots.length;
  const courses = imagine(model, rule, terms);
  const outlook = outlookOf(
    model,
    courses.map((ready) => lastDay(model, ready, first)),
  );
  const plannedDay = dayAfter(model.calendar, lastDay(model, planned.ready, first));
  return {
    ...(outlook.length > 0 ? dayFor(outlook, terms.confidence) : { day: plannedDay, chance: 0 }),
    planned: plannedDay,
    outlook,
    risks: risksOf(model, courses, first),
    plan: layOut(model, rule),
  };
}

/** Every day on which some course of the weeks ends, with the share of courses ended by then; one that never ends has no day. */
const outlookOf = ({ calendar }: Model, days: readonly number[]): Chance[] =>
  [...new Set(days)]
    .filter(Number.isFinite)
    .sort((a, b) => a - b)
    .map((day) => ({
      day: dayAfter(calendar, day),
      chance: days.filter((one) => one <= day).length / days.length,
    }));

/** The day whose chance is nearest to the confidence. Days are coarse: were it always the first day at or above it, promises would
 *  be kept oftener than asked and stand days longer than they need; taken nearest, they are kept as often as asked. */
export const dayFor = (outlook: readonly Chance[], confidence: number): Chance =>
  outlook.reduce((best, one) =>
    Math.abs(one.chance - confidence) < Math.abs(best.chance - confidence) - 1e-9 ? one : best,
  );

/** The accepted lots' chances of being late as the bench stands. */
export function risks(problem: Problem, terms: Terms): readonly Risk[] {
  const model = modelOf(problem);
  if (hindrances(model).length > 0) return problem.lots.map(({ id }) => ({ lot: id, late: 1 }));
  return risksOf(model, imagine(model, ruleWith(model, problem, terms), terms), problem.lots.length);
}

/** The bench's present rule with the lots it does not know yet in their place. */
function ruleWith(model: Model, accepted: Problem, terms: Terms): Rule {
  const base = modelOf(accepted);
  const known = terms.before === undefined ? construct(base) : { rule: resumed(base, terms.before) };
  if ('impossible' in known) return { ...RULE, keys: new Float64Array(model.tasks.length) };
  if (accepted.lots.length === model.weight.length) return known.rule;
  const rule = resumed(model, orderOf(base, known.rule));
  const ways = terms.place === 'turn' ? inTurn(rule) : atPlaces(base, rule);
  return kindest(model, ways, limitsOf(base, known.rule, terms));
}

/** The asked lots last, with as much grouping as now, less, and none: grouping lets a new lot overtake. */
const inTurn = (rule: Rule): Rule[] => [1, 0.3, 0].map((share) => ({ ...rule, grouping: rule.grouping * share }));

/** Places tried for a rushed order, besides the last. */
const PLACES = 14;

/** The asked lots at even steps through the work that stands, from the last place to the first. */
function atPlaces(base: Model, rule: Rule): Rule[] {
  const sorted = rule.keys.slice(0, base.tasks.length).sort();
  const places = Array.from({ length: PLACES }, (_, i) => Math.floor((sorted.length * (PLACES - 1 - i)) / PLACES));
  const moved = places.map((place) => {
    const keys = rule.keys.slice();
    return { ...rule, keys: keys.fill((sorted[place] ?? 0) - 1, base.tasks.length) };
  });
  return [...inTurn(rule), ...moved];
}

/** The day, counted from today, each accepted lot may move to: where it stands, and for a rushed order as far as its promise
 *  less the reserve. */
function limitsOf(base: Model, rule: Rule, { place, reserve }: Terms): number[] {
  const { ready } = dispatch(base, rule, asPlanned(base));
  return Array.from(ready, (at, lot) => {
    const due = base.due[lot] ?? Infinity;
    const spare = place === 'turn' ? -Infinity : due === Infinity ? Infinity : Math.floor(due * (1 - reserve));
    return Math.max(shipDayOf(base, at), spare);
  });
}

/** The way that moves the fewest accepted lots past their limits, then ships the asked lots first; the earlier named on a tie. */
function kindest(model: Model, ways: readonly Rule[], limits: readonly number[]): Rule {
  const judged = ways.map((rule) => {
    const { ready } = dispatch(model, rule, asPlanned(model));
    const pushed = limits.filter((limit, lot) => shipDayOf(model, ready[lot] ?? Infinity) > limit).length;
    return { rule, pushed, day: lastDay(model, ready, limits.length) };
  });
  const best = judged.reduce((best, one) =>
    one.pushed < best.pushed || (one.pushed === best.pushed && one.day < best.day) ? one : best,
  );
  return best.rule;
}

/** When each lot is ready in each imagined course of the weeks. */
const imagine = (model: Model, rule: Rule, { spread, worlds, seed }: Terms): Float64Array[] =>
  worldsOf(model, spread, worlds, seed).map((world) => dispatch(model, rule, world).ready);

const risksOf = (model: Model, courses: readonly Float64Array[], lots: number): Risk[] =>
  model.problem.lots.slice(0, lots).map(({ id }, lot) => {
    const due = model.due[lot] ?? Infinity;
    const late = courses.filter((ready) => shipDayOf(model, ready[lot] ?? Infinity) > due).length;
    return { lot: id, late: late / courses.length };
  });

/** The day, counted from today, the last of the lots from `first` on ships. */
function lastDay(model: Model, ready: Float64Array, first: number): number {
  let day = 0;
  for (let lot = first; lot < ready.length; lot++) day = Math.max(day, shipDayOf(model, ready[lot] ?? Infinity));
  return day;
}
