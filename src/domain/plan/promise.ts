import type { Day, Instant } from '../craft/time.ts';
import { dayAfter } from './calendar.ts';
import { shipDayOf } from './cost.ts';
import { dispatch } from './dispatch.ts';
import { hindrances, unfinished } from './impossible.ts';
import { asPlanned, layOut } from './layout.ts';
import type { Model } from './model.ts';
import { modelOf } from './model.ts';
import type { Placed, Placing } from './placing.ts';
import { lastDay, placed } from './placing.ts';
import type { Impossible, Plan } from './plan.ts';
import type { PlanLot, Problem } from './problem.ts';
import type { Rule } from './run.ts';
import type { Spread } from './world.ts';
import { UNKNOWN, worldsOf } from './world.ts';

/** What a promise rests on. */
export type Terms = Readonly<{
  /** How sure the ship day is to hold, between 0 and 1. */
  confidence: number;
  /** Imagined courses of the weeks at most; more are slower and smoother, so a very full bench gets fewer. */
  worlds: number;
  seed: number;
  spread: Spread;
}> &
  Placing;

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
  /** The asked lots may begin no earlier, or they would push an accepted one: it is to become their release. Null when they may begin. */
  from: Instant | null;
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
  const whole = modelOf({ ...problem, lots: [...problem.lots, ...asked] });
  const never = hindrances(whole);
  if (never.length > 0) return { id: problem.id, impossible: never };
  const { model, rule, from } = pooledOr(placed(whole, problem, terms), whole, problem, terms);
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
    from,
    outlook,
    risks: risksOf(model, courses, first),
    plan: layOut(model, rule),
  };
}

/** Where lots were held back because they share sessions with accepted work: sharing them all the same, if all of that then still keeps
 *  its promises as surely as it should. */
function pooledOr(held: Placed, whole: Model, problem: Problem, terms: Terms): Placed {
  if (!problem.pooled || held.from === null || terms.place !== 'turn') return held;
  const place = placed(whole, problem, { ...terms, place: 'pool' });
  if (place.from !== null) return held;
  const courses = imagine(place.model, place.rule, terms);
  const sure = risksOf(place.model, courses, problem.lots.length).every(({ late }) => late <= 1 - terms.confidence);
  return sure ? place : held;
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

/** The accepted lots' chances of being late as the bench stands, and of having left by each day; no day for what can never be made. */
export function risks(problem: Problem, terms: Terms): readonly (Risk & Readonly<{ outlook: readonly Chance[] }>)[] {
  const model = modelOf(problem);
  if (hindrances(model).length > 0) return problem.lots.map(({ id }) => ({ lot: id, late: 1, outlook: [] }));
  const { rule } = placed(model, problem, terms);
  const courses = imagine(model, rule, terms);
  return risksOf(model, courses, problem.lots.length).map((risk, lot) => {
    const days = courses.map((ready) => shipDayOf(model, ready[lot] ?? Infinity));
    return { ...risk, outlook: outlookOf(model, days) };
  });
}

/** Courses that can be imagined while a buyer waits (about 40 ms); 60 still tell 9 in 10. */
const fewEnough = ({ tasks }: Model): number => Math.max(60, Math.round(80_000 / Math.max(1, tasks.length)));

/** When each lot is ready in each imagined course of the weeks. */
const imagine = (model: Model, rule: Rule, { spread, worlds, seed }: Terms): Float64Array[] =>
  worldsOf(model, spread, Math.min(worlds, fewEnough(model)), seed).map((world) => dispatch(model, rule, world).ready);

const risksOf = (model: Model, courses: readonly Float64Array[], lots: number): Risk[] =>
  model.problem.lots.slice(0, lots).map(({ id }, lot) => {
    const due = model.due[lot] ?? Infinity;
    const late = courses.filter((ready) => shipDayOf(model, ready[lot] ?? Infinity) > due).length;
    return { lot: id, late: late / courses.length };
  });
