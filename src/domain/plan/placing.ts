import { MINUTE, type Instant } from '../craft/time.ts';
import { hasWindow } from './calendar.ts';
import { shipDayOf } from './cost.ts';
import { dispatch } from './dispatch.ts';
import { asPlanned, orderOf } from './layout.ts';
import type { Model } from './model.ts';
import { modelOf } from './model.ts';
import { resumed, RULE } from './order.ts';
import type { Order } from './plan.ts';
import type { Problem } from './problem.ts';
import type { Rule } from './run.ts';
import { construct } from './schedule.ts';

/** Where new lots go among accepted ones. */
export type Placing = Readonly<{
  /** `turn`: after the work already accepted. `pool`: the same, but what shares a session may push it up to its promise. `rush`: as early as
   *  breaks no promise. */
  place: 'turn' | 'pool' | 'rush';
  /** How much of the time to a promised day a rushed order must leave free, between 0 and 1. */
  reserve: number;
  /** The order of work the bench follows now. */
  before?: Order;
}>;

/** The bench with the new lots in their place: a model in which they are held back until `from`, where that is needed. */
export type Placed = Readonly<{ model: Model; rule: Rule; from: Instant | null }>;

/** Finds the new lots of `model` their place so that no accepted lot ships later than it may. */
export function placed(model: Model, accepted: Problem, placing: Placing): Placed {
  const base = modelOf(accepted);
  const known = placing.before === undefined ? construct(base) : { rule: resumed(base, placing.before) };
  if ('impossible' in known)
    return { model, rule: { ...RULE, keys: new Float64Array(model.tasks.length) }, from: null };
  if (accepted.lots.length === model.weight.length) return { model, rule: known.rule, from: null };
  const rule = resumed(model, orderOf(base, known.rule));
  const limits = limitsOf(base, known.rule, placing);
  const ways = placing.place === 'rush' ? [...inTurn(rule), ...atPlaces(base, rule)] : inTurn(rule);
  const best = kindest(model, ways, limits);
  return best.pushed === 0 ? { model, rule: best.rule, from: null } : heldBack(model, base, rule, limits);
}

/** Evenings tried for lots that must be held back. */
const EVENINGS = 12;

/** The new lots held back to the first evening, of some up to the end of all accepted work, from which they push nobody. At the end
 *  of it they cannot. */
function heldBack(model: Model, base: Model, rule: Rule, limits: readonly number[]): Placed {
  const { calendar } = model;
  const end = dispatch(base, resumed(base, orderOf(model, rule)), asPlanned(base)).ready.reduce(
    (a, b) => Math.max(a, b),
    0,
  );
  let windows = 0;
  while (hasWindow(calendar, windows) && (calendar.starts[windows] ?? end) < end) windows++;
  const evenings = Array.from({ length: EVENINGS - 1 }, (_, i) => Math.ceil((windows * (i + 1)) / EVENINGS));
  const starts = evenings.map((window) => calendar.starts[window] ?? end);
  // Where work pools, half an hour later may be enough: what is begun by then goes ahead.
  for (const from of model.problem.pooled ? [...soonIn(model), ...starts] : starts) {
    const held = from < end ? withHold(model, from, limits.length) : undefined;
    if (held !== undefined && kindest(held, [rule], limits).pushed === 0) return { model: held, rule, from };
  }
  // A setup may begin before its lot is there, so it too must come after.
  const last = end + Math.max(0, ...model.setup);
  return { model: withHold(model, last, limits.length), rule, from: last };
}

/** Stretches of hours that are looked at every half hour. */
const SOON = 2;

/** Each half hour of the next stretches of hours. */
function soonIn({ calendar }: Model): number[] {
  const windows = Array.from({ length: SOON }, (_, window) => window).filter((window) => hasWindow(calendar, window));
  return windows.flatMap((window) => {
    const [from, to] = [calendar.starts[window] ?? 0, calendar.ends[window] ?? 0];
    const steps = Math.ceil((to - from) / (30 * MINUTE));
    return Array.from({ length: steps }, (_, step) => from + step * 30 * MINUTE);
  });
}

const withHold = (model: Model, from: Instant, first: number): Model => ({
  ...model,
  free: model.free.map((free, lot) => (lot < first ? free : Math.max(free, from))),
});

/** The asked lots last, with as much grouping as now, less, and none: grouping lets a new lot overtake. */
const inTurn = (rule: Rule): Rule[] => [1, 0.3, 0].map((share) => ({ ...rule, grouping: rule.grouping * share }));

/** Places tried for a rushed order, besides the last. */
const PLACES = 14;

/** The asked lots at even steps through the work that stands, from the last place to the first. */
function atPlaces(base: Model, rule: Rule): Rule[] {
  const sorted = rule.keys.slice(0, base.tasks.length).sort();
  const places = Array.from({ length: PLACES }, (_, i) => Math.floor((sorted.length * (PLACES - 1 - i)) / PLACES));
  return places.map((place) => {
    const keys = rule.keys.slice();
    return { ...rule, keys: keys.fill((sorted[place] ?? 0) - 1, base.tasks.length) };
  });
}

/** The day, counted from today, each accepted lot may move to: where it stands, and for a rushed order as far as its promise
 *  less the reserve. */
function limitsOf(base: Model, rule: Rule, { place, reserve }: Placing): number[] {
  const { ready } = dispatch(base, rule, asPlanned(base));
  return Array.from(ready, (at, lot) => {
    const due = base.due[lot] ?? Infinity;
    const spare =
      place === 'turn'
        ? -Infinity
        : place === 'pool'
          ? due
          : due === Infinity
            ? Infinity
            : Math.floor(due * (1 - reserve));
    return Math.max(shipDayOf(base, at), spare);
  });
}

/** The way that moves the fewest accepted lots past their limits, then ships the asked lots first; the earlier named on a tie. */
function kindest(model: Model, ways: readonly Rule[], limits: readonly number[]): Judged {
  const judged = ways.map((rule) => {
    const { ready } = dispatch(model, rule, asPlanned(model));
    const pushed = limits.filter((limit, lot) => shipDayOf(model, ready[lot] ?? Infinity) > limit).length;
    return { rule, pushed, day: lastDay(model, ready, limits.length) };
  });
  return judged.reduce((best, one) =>
    one.pushed < best.pushed || (one.pushed === best.pushed && one.day < best.day) ? one : best,
  );
}

type Judged = Readonly<{ rule: Rule; pushed: number; day: number }>;

/** The day, counted from today, the last of the lots from `first` on ships. */
export function lastDay(model: Model, ready: Float64Array, first: number): number {
  let day = 0;
  for (let lot = first; lot < ready.length; lot++) day = Math.max(day, shipDayOf(model, ready[lot] ?? Infinity));
  return day;
}
