import { HOUR, MINUTE } from '../craft/time.ts';
import { costOf, isBetter } from './cost.ts';
import type { Outcome } from './dispatch.ts';
import type { Rule } from './run.ts';
import { dispatch } from './dispatch.ts';
import { asPlanned } from './layout.ts';
import type { Model } from './model.ts';
import { NEVER } from './never.ts';
import type { Cost } from './plan.ts';
import type { Random } from './random.ts';
import { gauss, pick, randomOf } from './random.ts';
import type { Candidate } from './schedule.ts';

/** Whether to stop looking; asked before each round with the rounds made and the least cost so far. A count gives the same plan each
 *  time, a clock does not. */
export type Stop = (rounds: number, best: Cost) => boolean;

/** How many rounds back a changed plan is compared to. */
const MEMORY = 10;
/** Rounds without a better plan after which the search starts again near the best one. */
const PATIENCE = 600;

/** Looks for a cheaper course of work by late-acceptance hill climbing (Burke and Bykov 2017): a small change is kept when it is no worse
 *  than what was held some rounds ago. Never answers with anything dearer than what it was given. */
export function improve(model: Model, given: Candidate, seed: number, stop: Stop): Candidate {
  const random = randomOf(seed);
  const world = asPlanned(model);
  const weighed = (rule: Rule) => weigh(model, rule, dispatch(model, rule, world));
  const start = weighed(given.rule);
  let [best, held, since] = [start, start, 0];
  const past = new Float64Array(MEMORY).fill(start.height);
  for (let round = 0; !stop(round, best.cost) && !isIdeal(best.cost); round++) {
    const next = weighed(changed(model, held.rule, random));
    const slot = round % MEMORY;
    if (next.height <= held.height || next.height <= (past[slot] as number)) held = next;
    past[slot] = Math.min(held.height, past[slot] as number);
    since++;
    if (isBetter(next.cost, best.cost)) [best, since] = [next, 0];
    if (since < PATIENCE) continue;
    held = weighed(shaken(model, best.rule, random));
    past.fill(held.height);
    since = 0;
  }
  return { rule: best.rule, cost: best.cost };
}

/** A few changes at once, to get away from where small ones lead back to. */
function shaken(model: Model, rule: Rule, random: Random): Rule {
  let other = rule;
  for (let changes = 2 + pick(random, 5); changes > 0; changes--) other = changed(model, other, random);
  return other;
}

type Weighed = Candidate & Readonly<{ height: number }>;

/** The cost as one number for the climb; how early lots are ready counts a little, to show the way inside one ship day. */
function weigh(model: Model, rule: Rule, outcome: Outcome): Weighed {
  const cost = costOf(model, outcome);
  const { now } = model.calendar;
  let early = 0;
  for (let lot = 0; lot < outcome.ready.length; lot++) {
    early += (model.weight[lot] as number) * ((outcome.ready[lot] as number) - now);
  }
  return { rule, cost, height: cost.late * 1e6 + cost.ship * 1e3 + cost.setup + early / HOUR };
}

const isIdeal = ({ ship, setup }: Cost): boolean => ship === 0 && setup === 0;

/** A small change of the order of work or of the way of working. */
function changed(model: Model, rule: Rule, random: Random): Rule {
  if (model.tasks.length === 0) return rule;
  const luck = random();
  if (luck < 0.1) return { ...rule, ...otherWay(rule, random) };
  const keys = rule.keys.slice();
  const lot = model.lotOf[pick(random, keys.length)] as number;
  if (luck < 0.45) moveLot(model, keys, lot, random);
  else if (luck < 0.65) swapLots(model, keys, lot, random);
  else if (luck < 0.85) moveTask(model, keys, lot, random);
  else shiftTail(model, keys, lot, random);
  return { ...rule, keys };
}

const otherWay = (rule: Rule, random: Random): Partial<Rule> =>
  [
    () => ({
      grouping: random() < 0.25 ? 0 : Math.min(300, Math.max(0.1, rule.grouping) * Math.exp(1.5 * gauss(random))),
    }),
    () => ({ patience: random() < 0.3 ? 0 : rule.patience + gauss(random) * HOUR }),
    () => ({ crumb: random() < 0.4 ? 0 : pick(random, 30) * MINUTE }),
    () => ({ ahead: 1 + pick(random, 24) }),
    () => ({ yields: rule.yields === 0 ? NEVER : 0 }),
  ][pick(random, 5)]?.() ?? {};

/** A whole lot goes just before or after another, or a few evenings of work to and fro. */
function moveLot(model: Model, keys: Float64Array, lot: number, random: Random): void {
  const first = model.firstTask[lot] as number;
  const other = model.lotOf[pick(random, keys.length)] as number;
  const beside = (keys[model.firstTask[other] as number] as number) + (random() < 0.6 ? -1 : 1) * random() * MINUTE;
  const near = (keys[first] as number) + gauss(random) * 8 * HOUR;
  keys.fill(random() < 0.3 ? near : beside, first, model.firstTask[lot + 1]);
}

function swapLots(model: Model, keys: Float64Array, lot: number, random: Random): void {
  const other = model.lotOf[pick(random, keys.length)] as number;
  const [mine, theirs] = [keys[model.firstTask[lot] as number], keys[model.firstTask[other] as number]];
  keys.fill(theirs as number, model.firstTask[lot], model.firstTask[lot + 1]);
  keys.fill(mine as number, model.firstTask[other], model.firstTask[other + 1]);
}

/** One step of a lot goes before some other step. */
function moveTask(model: Model, keys: Float64Array, lot: number, random: Random): void {
  const first = model.firstTask[lot] as number;
  const task = first + pick(random, (model.firstTask[lot + 1] as number) - first);
  keys[task] = (keys[pick(random, keys.length)] as number) - random() * MINUTE;
}

/** The rest of a lot from some step on is hurried or put off. */
function shiftTail(model: Model, keys: Float64Array, lot: number, random: Random): void {
  const [first, end] = [model.firstTask[lot] as number, model.firstTask[lot + 1] as number];
  const by = gauss(random) * 4 * HOUR;
  for (let task = first + pick(random, end - first); task < end; task++) keys[task] = (keys[task] as number) + by;
}
