import type { Minutes } from '../craft/time.ts';
import { MINUTE } from '../craft/time.ts';
import { dayNumber } from './daynumber.ts';
import type { BakeStep, HandsStep, PlanLot, PlanStep, Problem } from './problem.ts';
import { isBake, isHands, isWait } from './problem.ts';
import type { Calendar } from './calendar.ts';
import { calendarOf } from './calendar.ts';

/** One step that needs hands or oven; waits are folded into the lag after it. */
export type Task = Readonly<{ lot: number; step: number; does: HandsStep | BakeStep }>;
/** A kind of session: what is done, with what. */
export type Kind = Readonly<{ do: string; with?: string }>;
export type Recipe = Readonly<{ with?: string; hold: Minutes }>;

/** The problem as numbers in flat arrays, so that a plan of hundreds of lots is laid in a fraction of a millisecond. Times in ms. */
export type Model = Readonly<{
  problem: Problem;
  calendar: Calendar;
  tasks: readonly Task[];
  kinds: readonly Kind[];
  recipes: readonly Recipe[];
  /** A lot's tasks are `firstTask[lot]` up to `firstTask[lot + 1]`, in order. */
  firstTask: Int32Array;
  lotOf: Int32Array;
  /** A hands task's kind; -1 for a bake. */
  kindOf: Int32Array;
  /** A bake's recipe; -1 for hands. */
  recipeOf: Int32Array;
  /** Hands ms, or heads to bake. */
  amount: Float64Array;
  /** The lag after a task, before the next may start or the lot is ready. */
  after: Float64Array;
  setup: Float64Array;
  /** Load, hold and unload together. */
  cycle: Float64Array;
  /** When the first task may start. */
  free: Float64Array;
  /** Due day counted from today; Infinity for never late. */
  due: Float64Array;
  weight: Float64Array;
  /** Hands ms a lot needs, setups left out. */
  work: Float64Array;
  /** All a lot's lags and oven time. */
  lags: Float64Array;
}>;

/** Compiles a problem once; everything after works on its numbers. */
export function modelOf(problem: Problem): Model {
  const { lots, now } = problem;
  const calendar = calendarOf(problem);
  const tasks = lots.flatMap((lot, index) => tasksOf(lot, index));
  const kinds = new Numbered<Kind>();
  const recipes = new Numbered<Recipe>();
  const lotNumbers = {
    free: Float64Array.from(lots, (lot) => Math.max(now, lot.release ?? now) + lagFrom(lot.steps, 0)),
    due: Float64Array.from(lots, ({ due }) => (due === null ? Infinity : dayNumber(due) - calendar.today)),
    weight: Float64Array.from(lots, ({ weight }) => weight),
    work: Float64Array.from(lots, (lot) => handsOf(lot, problem)),
    lags: Float64Array.from(lots, ({ steps }) => steps.reduce((sum, step) => sum + lagOf(step), 0)),
  };
  return {
    problem,
    calendar,
    tasks,
    ...lotNumbers,
    firstTask: firstTasks(tasks, lots.length),
    lotOf: Int32Array.from(tasks, ({ lot }) => lot),
    kindOf: Int32Array.from(tasks, ({ does }) => (isBake(does) ? -1 : kinds.numberOf(kindOf(does)))),
    recipeOf: Int32Array.from(tasks, ({ does }) => (isBake(does) ? recipes.numberOf(recipeOf(does)) : -1)),
    amount: Float64Array.from(tasks, ({ lot, does }) => amountOf(does, lots[lot]?.heads ?? 0)),
    after: Float64Array.from(tasks, ({ lot, step }) => lagFrom(lots[lot]?.steps ?? [], step + 1)),
    kinds: kinds.all,
    recipes: recipes.all,
    setup: Float64Array.from(kinds.all, (kind) => ms(problem.setup[kind.do] ?? 0)),
    cycle: Float64Array.from(recipes.all, ({ hold }) => ms(problem.oven.load) + ms(hold) + ms(problem.oven.unload)),
  };
}

/** Gives equal things one number each, in the order they were met. */
class Numbered<T> {
  readonly all: T[] = [];
  readonly #known = new Map<string, number>();

  numberOf(one: T): number {
    const key = JSON.stringify(one);
    const known = this.#known.get(key) ?? this.all.push(one) - 1;
    this.#known.set(key, known);
    return known;
  }
}

const ms = (minutes: Minutes): number => Math.round(minutes * MINUTE);

const amountOf = (does: HandsStep | BakeStep, heads: number): number => (isBake(does) ? heads : ms(does.minutes));

/** Steps with nothing to do (no minutes, no heads) are passed over; their lags still count. */
const tasksOf = (lot: PlanLot, index: number): Task[] =>
  lot.steps.flatMap((does, step) => (needsBench(does, lot) && !isWait(does) ? [{ lot: index, step, does }] : []));

const needsBench = (step: PlanStep, lot: PlanLot): boolean =>
  isHands(step) ? step.minutes > 0 : isBake(step) && lot.heads > 0;

/** The lag made by the waits from this step on, up to the next step with something to do. */
function lagFrom(steps: readonly PlanStep[], from: number): number {
  let lag = 0;
  for (const step of steps.slice(from)) {
    if (isWait(step)) lag += ms(step.wait);
    else if (isBake(step) || step.minutes > 0) break;
  }
  return lag;
}

const lagOf = (step: PlanStep): number => (isWait(step) ? step.wait : isBake(step) ? step.hold : 0) * MINUTE;

function handsOf(lot: PlanLot, { oven }: Problem): number {
  const minutes = lot.steps.map((step) =>
    isHands(step) ? step.minutes : isBake(step) ? (oven.load + oven.unload) * Math.ceil(lot.heads / oven.rack) : 0,
  );
  return minutes.reduce((sum, each) => sum + each, 0) * MINUTE;
}

function firstTasks(tasks: readonly Task[], lots: number): Int32Array {
  const first = new Int32Array(lots + 1);
  for (const { lot } of tasks) first[lot + 1] = (first[lot + 1] ?? 0) + 1;
  for (let lot = 0; lot < lots; lot++) first[lot + 1] = (first[lot + 1] ?? 0) + (first[lot] ?? 0);
  return first;
}

const kindOf = (step: HandsStep): Kind => ({ do: step.do, ...withOf(step) });
const recipeOf = (step: BakeStep): Recipe => ({ ...withOf(step), hold: step.hold });
const withOf = (step: HandsStep | BakeStep) => (step.with === undefined ? {} : { with: step.with });
