import type { Instant } from '../craft/time.ts';
import { int, num } from './arrays.ts';
import { NEVER } from './never.ts';
import type { Run } from './run.ts';

/** Looks at every active lot's next task and keeps the best that can be done now: the smallest score. What cannot be done yet
 *  leaves the moment it can. */
export function look(run: Run): void {
  run.best = -1;
  run.bestScore = Infinity;
  run.event = Infinity;
  const bakesFrom = run.bakes > 0 && run.out === Infinity ? lookAtBakes(run) : Infinity;
  run.limit = Math.min(run.closes, run.out, bakesFrom);
  if (run.limit > run.now) lookAtHands(run);
  if (run.rule.yields < NEVER && run.best >= 0) run.limit = Math.min(run.limit, calledAway(run));
}

function lookAtHands(run: Run): void {
  const { active, now, next, free, limit, left } = run;
  const { kindOf, setup } = run.model;
  const { keys } = run.rule;
  // At the start of a stretch of hours a crumb is better than nothing.
  const crumb = now === run.opens && limit === run.closes ? 0 : run.rule.crumb;
  const stay = stayOf(run);
  let { best, bestScore, event, kind: current } = run;
  for (let i = 0; i < active.length; i++) {
    const lot = active[i] as number;
    const task = int(next, lot);
    const kind = int(kindOf, task);
    if (kind < 0) continue;
    const score = num(keys, task) - (kind === current ? stay : 0);
    if (score >= bestScore) continue;
    const start = now + (kind === current ? 0 : num(setup, kind));
    if (num(free, lot) > start) event = Math.min(event, num(free, lot) - start + now);
    else if (limit - start > 0 && limit - start >= Math.min(crumb, num(left, task))) {
      best = task;
      bestScore = score;
    }
  }
  run.best = best;
  run.bestScore = bestScore;
  run.event = event;
}

/** How much more urgent other work must be to end a session that could go on. Only a load that must go in now ends one that pools. */
function stayOf({ kind, model, rule }: Run): number {
  if (kind < 0) return 0;
  return model.problem.pooled === true ? NEVER / 2 : rule.grouping * num(model.setup, kind);
}

/** When a lot so much more urgent than the chosen task comes free that it breaks in; Infinity when none does while anything can be
 *  done before. */
function calledAway({ active, now, next, free, model, rule, best, kind }: Run): Instant {
  const { kindOf, setup } = model;
  const doing = int(kindOf, best);
  if (doing < 0) return Infinity;
  const urgent = num(rule.keys, best) - rule.yields;
  const begins = now + (doing === kind ? 0 : num(setup, doing));
  let call = Infinity;
  for (let i = 0; i < active.length; i++) {
    const lot = active[i] as number;
    const task = int(next, lot);
    const wanted = int(kindOf, task);
    if (num(rule.keys, task) >= urgent || wanted < 0) continue;
    const at = num(free, lot) - num(setup, wanted);
    if (at > begins && at < call) call = at;
  }
  return call;
}

/** Scores the loads that could start now; answers the last moment one must, for hands work to be cut there.
 *  A load that is full goes by its key; one that is not waits with patience, but not past that moment. */
function lookAtBakes(run: Run): Instant {
  const { active, now, next, free, closes, model, rule } = run;
  const { rack } = model.problem.oven;
  let last = Infinity;
  for (let i = 0; i < active.length; i++) {
    const lot = active[i] as number;
    const task = int(next, lot);
    const recipe = int(model.recipeOf, task);
    if (recipe < 0) continue;
    const latest = closes - num(model.cycle, recipe);
    const from = num(free, lot);
    if (Math.max(from, now) > latest) continue;
    if (from > now) {
      run.event = Math.min(run.event, from);
      continue;
    }
    const full = latest <= now || hanging(run, recipe) >= rack;
    const score = latest <= now ? -1e15 : num(rule.keys, task) + (full ? 0 : rule.patience);
    if (score < run.bestScore) {
      run.best = task;
      run.bestScore = score;
    }
    if (latest < last) last = latest;
  }
  return last;
}

/** Heads that could go into a load of this recipe now. */
function hanging(run: Run, recipe: number): number {
  const { model, active, now } = run;
  let heads = 0;
  for (let i = 0; i < active.length; i++) {
    const lot = active[i] as number;
    const task = int(run.next, lot);
    if (int(model.recipeOf, task) === recipe && num(run.free, lot) <= now) heads += num(run.left, task);
  }
  return heads;
}
