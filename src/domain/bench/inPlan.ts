import type { Celsius } from '../craft/temperature.ts';
import { instantOf, MINUTE, type Day, type Instant } from '../craft/time.ts';
import type { PlanLot, PlanStep, Problem } from '../plan/problem.ts';
import { headsToPour, routing, workOf } from '../plan/routing.ts';
import type { Line } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import { inGarage } from './cure.ts';
import { headsAlive, headsAt, leftOutNext } from './session.ts';
import { currentStep, isFinished, isHeldBack, type Lot, type LotStep } from './lot.ts';
import type { Timer } from './timer.ts';

/** What of the bench the plan has to know: lots under way, their timers, and the day each order was promised for. */
export type Bench = Readonly<{
  lots: readonly Lot[];
  timers: readonly Timer[];
  dueOf: (lot: Lot) => Day | null;
  /** The day the last material of a lot comes, if it waits for some. */
  materialsOf: (lot: Lot) => Day | null;
  garage: Celsius;
  /** Days off and extra hours told in chat, added to the shop file's. */
  hours: Shop['hours'];
}>;

/** Accepted lots as the planner wants them: what is left of each, in the order given. */
export function problemOf(shop: Shop, bench: Bench, now: Instant): Problem {
  const out = leftOutNext(shop, bench.lots);
  return {
    id: 'bench',
    zone: shop.zone,
    now,
    hours: { weekly: bench.hours.weekly, daysOff: bench.hours.daysOff, extra: bench.hours.extra },
    post: shop.post,
    pooled: true,
    setup: setups(shop),
    oven: ovenOf(shop, bench.timers),
    lots: bench.lots.filter((lot) => !isFinished(lot)).map((lot) => lotInPlan(shop, bench, lot, now, out[lot.id] ?? 0)),
  };
}

/** A line that was only asked for, as a lot of the plan. `materials` is the day the last of its material comes. */
export function lineInPlan(shop: Shop, garage: Celsius, id: string, line: Line, materials: Day | null): PlanLot {
  const heads = headsToPour(shop, line.spec, line.quantity);
  return {
    id,
    heads,
    due: null,
    weight: 1,
    release: fromDay(shop, materials),
    steps: routing(line.spec).map((step) => workOf(shop, garage, line.spec, step, heads)),
  };
}

/** Finished heads off the shelf that were only asked for: they want packing and no more. */
export function madeInPlan(shop: Shop, garage: Celsius, id: string, line: Line, materials: Day | null): PlanLot {
  const whole = lineInPlan(shop, garage, id, line, materials);
  return { ...whole, heads: line.quantity, steps: [workOf(shop, garage, line.spec, 'pack', line.quantity)] };
}

/** `out` heads made over are not baked with the others, so no load is planned for them. */
function lotInPlan(shop: Shop, bench: Bench, lot: Lot, now: Instant, out: number): PlanLot {
  const materials = bench.materialsOf(lot);
  const here = fromDay(shop, materials);
  return {
    id: lot.id,
    heads: Math.max(1, headsAlive(shop, lot) - bakedOf(lot) - out),
    due: bench.dueOf(lot),
    weight: 1,
    release: lot.from !== null && isHeldBack(lot, now) ? Math.max(lot.from, here ?? lot.from) : here,
    steps: lot.steps
      .filter(({ state }) => state !== 'done')
      .map((at) =>
        at.state === 'running'
          ? restOf(shop, bench, lot, at, now)
          : workOf(shop, bench.garage, lot.spec, at.step, headsLeft(shop, lot, at)),
      ),
  };
}

/** Heads of a lot that have been in the oven while the rest of it waits. */
function bakedOf(lot: Lot): number {
  const at = currentStep(lot);
  return at?.step === 'bake' ? at.through : 0;
}

/** What is left of a step under way: a timer runs to its end; hands need what they have not used yet, a minute at least. */
function restOf(shop: Shop, bench: Bench, lot: Lot, at: LotStep, now: Instant): PlanStep {
  const timer = bench.timers.find(({ lots, kind }) => lots.includes(lot.id) && HOLDS_LOT[kind]);
  if (timer) return { do: at.step, wait: Math.max(0, Math.ceil((dueOf(shop, timer, now) - now) / MINUTE)) };
  const work = workOf(shop, bench.garage, lot.spec, at.step, headsLeft(shop, lot, at));
  if (!('minutes' in work)) return work;
  const used = Math.floor((now - (at.startedAt ?? now)) / MINUTE);
  return { ...work, minutes: Math.max(1, work.minutes - used) };
}

/** A cure that stands still in the cold goes on at the earliest from now, in a garage just warm enough. */
const dueOf = ({ epoxy }: Shop, timer: Timer, now: Instant): Instant =>
  timer.course?.still ? inGarage(timer, epoxy.leastCelsius, now, epoxy).dueAt : timer.dueAt;

const headsLeft = (shop: Shop, lot: Lot, at: LotStep): number =>
  Math.max(
    1,
    (lot.good > 0 || at.step === 'pour' ? headsAt(shop, lot, at.step) : headsToPour(shop, lot.spec, lot.heads)) -
      at.through,
  );

function setups({ steps }: Shop): Problem['setup'] {
  const { pour, trim, paint, guard, dress, pack } = steps;
  return {
    pour: pour.setup,
    trim: trim.setup,
    paint: paint.setup,
    'clear-eyes': steps['clear-eyes'].setup,
    guard: guard.setup,
    dress: dress.setup,
    pack: pack.setup,
  };
}

function ovenOf(shop: Shop, timers: readonly Timer[]): Problem['oven'] {
  const { load, unload } = shop.steps.bake;
  const baking = timers.find(({ kind }) => kind === 'bake');
  return { rack: shop.oven.rack, load, unload, ...(baking ? { running: { out: baking.dueAt } } : {}) };
}

/** Materials are counted on from noon of the day they come, as post does. */
const fromDay = (shop: Shop, day: Day | null): Instant | null =>
  day === null ? null : instantOf(day, '12:00', shop.zone);

/** The timers that a lot waits for; the others only say something. */
const HOLDS_LOT: Readonly<Record<Timer['kind'], boolean>> = {
  'up-to-heat': false,
  bake: true,
  cool: true,
  glue: false,
  handling: false,
  cure: true,
};
