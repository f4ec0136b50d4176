import { MINUTE } from '../craft/time.ts';
import { int, item, num } from './arrays.ts';
import { hasWindow } from './calendar.ts';
import { look } from './look.ts';
import type { Model } from './model.ts';
import type { Listener, Rule, Run, World } from './run.ts';
import { begin, fill, wake } from './run.ts';

/** After so many stretches of hours in which nothing could be done, nothing ever can. */
const FRUITLESS = 3000;

/** When each lot is ready (Infinity when hours end before), and the ms spent on setups. */
export type Outcome = Readonly<{ ready: Float64Array; setup: number }>;

/** Works through all tasks forward in time: at each moment the bench does the task with the best score that can be done
 *  then, cut where hours end or the oven calls. Never idle while something can be done; the same input gives the same run. */
export function dispatch(model: Model, rule: Rule, world: World, listener?: Listener): Outcome {
  const run = begin(model, rule, world, listener);
  while (run.undone > 0) {
    if (run.now >= run.out) unload(run);
    else if (run.now >= run.closes) {
      if (!openNext(run)) break;
    } else work(run);
  }
  return run;
}

function openNext(run: Run): boolean {
  const { calendar, problem } = run.model;
  do run.window++;
  while (run.world.missed[run.window] === 1);
  if (run.fruitless++ > FRUITLESS || !hasWindow(calendar, run.window)) return false;
  run.opens = run.now = item(calendar.starts, run.window);
  run.closes = item(calendar.ends, run.window);
  run.kind = -1;
  wakeAll(run);
  // A load from before whose time came outside hours was taken out then.
  if (run.out < run.now) {
    run.now = Math.max(run.now, run.out + Math.round(problem.oven.unload * MINUTE));
    run.out = Infinity;
  }
  return true;
}

function wakeAll(run: Run): void {
  const { asleep, free, closes } = run;
  for (let i = asleep.length - 1; i >= 0; i--) {
    const lot = item(asleep, i);
    if (num(free, lot) >= closes) continue;
    asleep[i] = asleep.at(-1) as number;
    asleep.pop();
    wake(run, lot);
  }
}

function work(run: Run): void {
  look(run);
  if (run.best < 0) {
    run.now = Math.min(run.event, run.closes, run.out);
    run.kind = -1;
    return;
  }
  run.fruitless = 0;
  const recipe = int(run.model.recipeOf, run.best);
  if (recipe >= 0) load(run, recipe);
  else hands(run, run.best);
}

function load(run: Run, recipe: number): void {
  const { model, rule, now, inOven, headsInOven } = run;
  const { rack, load: minutes, unload: after } = model.problem.oven;
  const hung = run.active
    .map((lot) => int(run.next, lot))
    .filter((task) => int(model.recipeOf, task) === recipe && num(run.free, int(model.lotOf, task)) <= now)
    .sort((a, b) => num(rule.keys, a) - num(rule.keys, b) || a - b);
  let room = rack;
  for (const task of hung) {
    const heads = Math.min(room, num(run.left, task));
    if (heads <= 0) break;
    room -= heads;
    inOven.push(task);
    headsInOven.push(heads);
  }
  run.listener?.load(recipe, now, inOven, headsInOven);
  for (const task of inOven) run.free[int(model.lotOf, task)] = Infinity;
  run.now = now + Math.round(minutes * MINUTE);
  run.out = now + num(model.cycle, recipe) - Math.round(after * MINUTE);
  run.kind = -1;
}

function unload(run: Run): void {
  const { inOven, headsInOven, model } = run;
  run.now = Math.max(run.now, run.out) + Math.round(model.problem.oven.unload * MINUTE);
  run.out = Infinity;
  run.kind = -1;
  for (let i = 0; i < inOven.length; i++) {
    const task = item(inOven, i);
    run.left[task] = num(run.left, task) - item(headsInOven, i);
    if (num(run.left, task) <= 0) finish(run, task);
    else run.free[int(model.lotOf, task)] = run.now;
  }
  inOven.length = 0;
  headsInOven.length = 0;
}

function hands(run: Run, task: number): void {
  const { model } = run;
  const kind = int(model.kindOf, task);
  const lot = int(model.lotOf, task);
  const setup = kind === run.kind ? 0 : num(model.setup, kind);
  const start = run.now + setup;
  const end = Math.min(start + num(run.left, task), run.limit);
  run.listener?.part(task, run.now, start, end);
  run.setup += setup;
  run.kind = kind;
  run.now = end;
  run.left[task] = num(run.left, task) - (end - start);
  if (run.isFresh[lot] === 1) {
    run.isFresh[lot] = 0;
    run.fresh--;
    fill(run);
  }
  if (num(run.left, task) <= 1e-3) finish(run, task);
}

function finish(run: Run, task: number): void {
  const { model, active } = run;
  const lot = int(model.lotOf, task);
  run.undone--;
  run.free[lot] = run.now + num(model.after, task);
  run.next[lot] = task + 1;
  if (int(model.kindOf, task) < 0) run.bakes--;
  const done = task + 1 === int(model.firstTask, lot + 1);
  if (done) run.ready[lot] = num(run.free, lot);
  if (done || num(run.free, lot) >= run.closes) {
    active[active.indexOf(lot)] = active.at(-1) as number;
    active.pop();
    if (!done) run.asleep.push(lot);
  } else if (int(model.kindOf, task + 1) < 0) run.bakes++;
}
