import type { Instant } from '../craft/time.ts';
import { HOUR } from '../craft/time.ts';
import { firstAtLeast } from './arrays.ts';
import { cutOff, hasWindow } from './calendar.ts';
import type { Rule } from './run.ts';
import type { Model, Task } from './model.ts';
import { NEVER } from './never.ts';
import type { Order } from './plan.ts';

/** Lots in the order that ends each before its due day at the least weighted waiting: from the last place to the first, the lot that
 *  costs least there. Among those still in time it is the one with the most work for its weight (Smith 1956 shows that
 *  this is best for one machine with deadlines and equal weights). `slow` says how much longer all takes than its bare minutes. */
export function lotOrder(model: Model, slow: number): number[] {
  const { work, weight } = model;
  const limits = Array.from(work, (_, lot) => limitOf(model, lot));
  const left = Array.from(work.keys());
  const order: number[] = [];
  const ends = handsClock(model);
  let before = work.reduce((sum, one) => sum + one, 0);
  while (left.length > 0) {
    const place = cheapestLast(ends(before * slow), left, limits, { work, weight });
    const lot = left[place] as number;
    order.push(lot);
    left[place] = left.at(-1) as number;
    left.pop();
    before -= work[lot] as number;
  }
  return order.reverse();
}

type Loads = Pick<Model, 'work' | 'weight'>;

/** The place in `left` of the lot that costs least when it ends at `end`. */
function cheapestLast(
  end: Instant,
  left: readonly number[],
  limits: readonly number[],
  { work, weight }: Loads,
): number {
  let [best, bestLate, bestWork] = [0, Infinity, 0];
  for (let i = 0; i < left.length; i++) {
    const lot = left[i] as number;
    const heavy = ((work[lot] as number) + 1) / ((weight[lot] as number) + 1e-9);
    const late = Math.max(0, end - (limits[lot] as number)) / heavy;
    if (late > bestLate || (late === bestLate && heavy <= bestWork)) continue;
    [best, bestLate, bestWork] = [i, late, heavy];
  }
  return best;
}

/** When so many ms of hands time have passed, counted from now over the shop's hours. */
function handsClock({ calendar }: Model): (spent: number) => Instant {
  const spentBy: number[] = [0];
  return (spent) => {
    for (let i = spentBy.length - 1; (spentBy[i] as number) < spent && hasWindow(calendar, i); i++) {
      spentBy.push((spentBy[i] as number) + (calendar.ends[i] as number) - (calendar.starts[i] as number));
    }
    const window = Math.max(1, firstAtLeast(spentBy, spent)) - 1;
    return (calendar.starts[window] ?? calendar.now) + spent - (spentBy[window] as number);
  };
}

/** Keys that make the bench work through lots in this order: the ms of hands work before each. */
export function keysOf(model: Model, order: readonly number[]): Float64Array {
  const keys = new Float64Array(model.tasks.length);
  let before = 0;
  for (const lot of order) {
    keys.fill(before, model.firstTask[lot], model.firstTask[lot + 1]);
    before += model.work[lot] ?? 0;
  }
  return keys;
}

/** The usual way of working; the improvement tries others. */
export const RULE: Omit<Rule, 'keys'> = { grouping: 40, ahead: 12, patience: HOUR, yields: NEVER, crumb: 5 * 60_000 };

/** The rule of an earlier plan for the tasks that are left. A task it does not know, such as heads poured again, goes
 *  where its lot stood; a lot it does not know comes last, in the order given. */
export function resumed(model: Model, { places, ...rule }: Order): Rule {
  const known = new Map<string, number[]>();
  const lots = new Map<string, number>();
  for (const { lot, do: what, key } of places) {
    push(known, `${what} ${lot}`, key);
    lots.set(lot, Math.min(key, lots.get(lot) ?? Infinity));
  }
  const last = places.reduce((most, { key }) => Math.max(most, key), 0);
  const keys = new Float64Array(model.tasks.length);
  // From the end, because the steps of a begun lot are gone from its front.
  for (let task = model.tasks.length - 1; task >= 0; task--) {
    const { lot, does } = model.tasks[task] as Task;
    const id = model.problem.lots[lot]?.id ?? '';
    keys[task] = known.get(`${does.do} ${id}`)?.pop() ?? lots.get(id) ?? last + (lot + 1) * HOUR;
  }
  return { ...rule, keys };
}

function push(known: Map<string, number[]>, name: string, key: number): void {
  const list = known.get(name);
  if (list === undefined) known.set(name, [key]);
  else list.push(key);
}

/** When a lot must be ready, lags taken off, to ship when due. */
const limitOf = (model: Model, lot: number): number => {
  const due = model.due[lot] as number;
  return (
    (due === Infinity ? model.calendar.now + 400 * 24 * HOUR : dueInstant(model, due)) - (model.lags[lot] as number)
  );
};

const dueInstant = ({ calendar }: Model, due: number): number =>
  due < 0 ? calendar.now + due * 24 * HOUR : cutOff(calendar, due);
