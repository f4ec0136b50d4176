import type { Instant } from '../craft/time.ts';
import { int, num } from './arrays.ts';
import type { Model } from './model.ts';

/** How the bench decides what to do next. All of it is searched by the improvement; ms unless said. */
export type Rule = Readonly<{
  /** Each task's place in the order of work, as ms of hands before it: the smallest that can be done now is done. */
  keys: Float64Array;
  /** How much work may be jumped for each ms of setup saved. */
  grouping: number;
  /** How many lots not yet begun are looked at for grouping. */
  ahead: number;
  /** How much other work goes before a load that is not full. */
  patience: number;
  /** How much more urgent, in ms of the order of work, a lot must be to break into another's step when it comes free. */
  yields: number;
  /** The smallest part of a step worth a session at the end of an evening. */
  crumb: number;
}>;

/** What happens otherwise than planned in one imagined course of the weeks; ms as in the model. */
export type World = Readonly<{ amount: Float64Array; free: Float64Array; missed: Uint8Array }>;

/** Hears each thing done, in order of time. A session part that follows on has `setup` equal to `start`. */
export type Listener = Readonly<{
  part: (task: number, setup: Instant, start: Instant, end: Instant) => void;
  load: (recipe: number, start: Instant, tasks: readonly number[], heads: readonly number[]) => void;
}>;

/** The bench at an instant of the run; all arrays are written in place. */
export type Run = {
  readonly model: Model;
  readonly rule: Rule;
  readonly world: World;
  readonly listener: Listener | undefined;
  now: Instant;
  window: number;
  opens: Instant;
  closes: Instant;
  /** The kind of the session that ended just now; -1 for none. */
  kind: number;
  setup: number;
  /** When the load in the oven must come out; Infinity when it is empty. */
  out: Instant;
  readonly inOven: number[];
  readonly headsInOven: number[];
  /** Each lot's next task. */
  readonly next: Int32Array;
  readonly free: Float64Array;
  readonly left: Float64Array;
  readonly ready: Float64Array;
  /** Lots looked at: begun ones and some not begun. */
  readonly active: number[];
  /** Begun lots that nothing can be done to in this stretch of hours. */
  readonly asleep: number[];
  /** How many of the active lots go into the oven next. */
  bakes: number;
  readonly queue: Int32Array;
  queued: number;
  fresh: number;
  readonly isFresh: Uint8Array;
  undone: number;
  /** What the last look found: the best task, its score, how long hands work may go on, when something more becomes possible. */
  best: number;
  bestScore: number;
  limit: Instant;
  event: Instant;
  /** Stretches of hours opened since something was last done. */
  fruitless: number;
};
const CLOSED = { now: -Infinity, window: -1, opens: 0, closes: -Infinity, kind: -1, setup: 0 };
const UNSEEN = { bakes: 0, queued: 0, fresh: 0, best: -1, bestScore: 0, limit: 0, event: 0, fruitless: 0 };

/** The bench before anything is done, with the first lots in sight. */
export function begin(model: Model, rule: Rule, world: World, listener: Listener | undefined): Run {
  const lots = model.weight.length;
  const run: Run = {
    model,
    rule,
    world,
    listener,
    ...CLOSED,
    out: model.problem.oven.running?.out ?? Infinity,
    inOven: [],
    headsInOven: [],
    active: [],
    asleep: [],
    ...UNSEEN,
    next: model.firstTask.slice(0, lots),
    free: world.free.slice(),
    left: world.amount.slice(),
    ready: new Float64Array(lots).fill(Infinity),
    queue: lotsByKey(model, rule.keys),
    isFresh: new Uint8Array(lots),
    undone: model.lotOf.length,
  };
  for (let lot = 0; lot < lots; lot++) {
    if (int(model.firstTask, lot) === int(model.firstTask, lot + 1)) run.ready[lot] = num(run.free, lot);
  }
  fill(run);
  return run;
}

/** Lots in the order of their first task's key. */
function lotsByKey({ firstTask, weight }: Model, keys: Float64Array): Int32Array {
  const lots: number[] = [];
  for (let lot = 0; lot < weight.length; lot++) if (int(firstTask, lot) < int(firstTask, lot + 1)) lots.push(lot);
  return Int32Array.from(lots.sort((a, b) => num(keys, int(firstTask, a)) - num(keys, int(firstTask, b)) || a - b));
}

/** Keeps enough lots in sight; one whose material is still to come takes nobody's place. */
export function fill(run: Run): void {
  while (run.fresh < run.rule.ahead && run.queued < run.queue.length) {
    const lot = int(run.queue, run.queued++);
    wake(run, lot);
    if (num(run.free, lot) > Math.max(run.now, run.model.calendar.now)) continue;
    run.isFresh[lot] = 1;
    run.fresh++;
  }
}

/** Puts a lot among those looked at. */
export function wake(run: Run, lot: number): void {
  run.active.push(lot);
  if (int(run.model.kindOf, int(run.next, lot)) < 0) run.bakes++;
}
