import {
  addDays,
  daysBetween,
  instantOf,
  localClock,
  localDay,
  MINUTE,
  weekdayOf,
} from '../../../src/domain/craft/time.ts';
import type { Plan } from '../../../src/domain/plan/plan.ts';
import type { PlanLot, Problem } from '../../../src/domain/plan/problem.ts';
import { isBake, isWait } from '../../../src/domain/plan/problem.ts';

type Stretch = { from: number; to: number };
type Done = { start: number; end: number; amount: number };

/** Everything that is wrong with a plan by the plan format's rules, worked out apart from the planner; empty when it can be done. */
export function faults(problem: Problem, plan: Plan): string[] {
  const open = openHours(problem, lastEnd(problem, plan));
  const inside = (from: number, to: number) => open.some((one) => one.from <= from && to <= one.to);
  const load = problem.oven.load * MINUTE;
  const hands = [
    ...plan.sessions.map(({ start, end }) => ({ from: start, to: end })),
    ...plan.loads.flatMap(({ start, out, end }) => [
      { from: start, to: start + load },
      { from: out, to: end },
    ]),
  ].sort((a, b) => a.from - b.from);
  const oven = plan.loads.map(({ start, end }) => ({ from: start, to: end })).sort((a, b) => a.from - b.from);
  return [
    ...plan.sessions
      .filter((one) => !inside(one.start, one.end))
      .map((one) => `${one.do} at ${one.start} outside hours`),
    ...plan.loads.filter((one) => !inside(one.start, one.end)).map((one) => `load at ${one.start} outside hours`),
    ...overlaps(hands).map((at) => `hands do two things at ${at}`),
    ...overlaps(oven).map((at) => `two loads at ${at}`),
    ...plan.sessions.flatMap((one) => brokenSession(problem, one)),
    ...plan.loads.flatMap((one) => brokenLoad(problem, one)),
    ...problem.lots.flatMap((lot) => brokenLot(problem, plan, lot)),
  ];
}

const lastEnd = ({ now }: Problem, { sessions, loads }: Plan): number =>
  Math.max(now, ...sessions.map(({ end }) => end), ...loads.map(({ end }) => end));

export function openHours({ hours, zone, now }: Problem, until: number): Stretch[] {
  const spans: Stretch[] = [];
  for (let day = localDay(now, zone); day <= localDay(until, zone); day = addDays(day, 1)) {
    const weekly = hours.daysOff.includes(day) ? [] : (hours.weekly[weekdayOf(day)] ?? []);
    const extra = hours.extra.filter(({ date }) => date === day).map(({ from, to }) => [from, to] as const);
    for (const [from, to] of [...weekly, ...extra]) {
      spans.push({ from: Math.max(now, clockOn(day, from, zone)), to: clockOn(day, to, zone) });
    }
  }
  return spans
    .filter(({ from, to }) => from < to)
    .sort((a, b) => a.from - b.from)
    .reduce<Stretch[]>((merged, one) => {
      const last = merged.at(-1);
      if (last === undefined || one.from > last.to) return [...merged, one];
      return [...merged.slice(0, -1), { from: last.from, to: Math.max(last.to, one.to) }];
    }, []);
}

const clockOn = (day: string, clock: string, zone: string): number =>
  clock === '24:00' ? instantOf(addDays(day, 1), '00:00', zone) : instantOf(day, clock, zone);

const overlaps = (sorted: readonly Stretch[]): number[] =>
  sorted.flatMap(({ from }, i) => (from < (sorted[i - 1]?.to ?? -Infinity) ? [from] : []));

function brokenSession(problem: Problem, session: Plan['sessions'][number]): string[] {
  let at = session.start + (problem.setup[session.do] ?? 0) * MINUTE;
  const gaps = session.parts.filter(({ start, end }) => {
    const follows = start === at && end > start;
    at = end;
    return !follows;
  });
  return gaps.length > 0 || at !== session.end ? [`${session.do} at ${session.start} has a gap`] : [];
}

function brokenLoad({ oven }: Problem, { start, out, end, hold, lots }: Plan['loads'][number]): string[] {
  const heads = Object.values(lots).reduce((sum, one) => sum + one, 0);
  const times = out === start + (oven.load + hold) * MINUTE && end === out + oven.unload * MINUTE;
  return [
    ...(times ? [] : [`load at ${start}: times`]),
    ...(heads <= oven.rack ? [] : [`load at ${start}: ${heads} heads`]),
  ];
}

function brokenLot(problem: Problem, plan: Plan, lot: PlanLot): string[] {
  const wrong: string[] = [];
  let free = Math.max(problem.now, lot.release ?? problem.now);
  for (const step of lot.steps) {
    if (isWait(step)) {
      free += step.wait * MINUTE;
      continue;
    }
    const done = isBake(step) ? bakesOf(plan, lot, step.with, step.hold) : partsOf(plan, lot, step.do, step.with);
    const want = isBake(step) ? lot.heads : step.minutes * MINUTE;
    const got = done.reduce((sum, { amount }) => sum + amount, 0);
    if (Math.abs(got - want) > 1) wrong.push(`${lot.id} ${step.do}: ${got} of ${want}`);
    if (done.some(({ start }) => start < free)) wrong.push(`${lot.id} ${step.do} begins too early`);
    free = Math.max(free, ...done.map(({ end }) => end));
  }
  return [...wrong, ...brokenDay(problem, plan, lot, free)];
}

function brokenDay(problem: Problem, plan: Plan, { id, due }: PlanLot, ready: number): string[] {
  const told = plan.lots.find((one) => one.id === id);
  const ships = shipDayByWall(problem, ready);
  const late = due === null ? 0 : Math.max(0, daysBetween(due, ships));
  return told?.ships === ships && told.late === late ? [] : [`${id} ships ${ships}, ${late} late, not ${told?.ships}`];
}

const partsOf = (plan: Plan, lot: PlanLot, what: string, using: string | undefined): Done[] =>
  plan.sessions
    .filter((session) => session.do === what && session.with === using)
    .flatMap(({ parts }) => parts.filter((part) => part.lot === lot.id))
    .map(({ start, end }) => ({ start, end, amount: end - start }));

const bakesOf = (plan: Plan, lot: PlanLot, using: string | undefined, hold: number): Done[] =>
  plan.loads
    .filter((load) => load.with === using && load.hold === hold && lot.id in load.lots)
    .map(({ start, end, lots }) => ({ start, end, amount: lots[lot.id] ?? 0 }));

/** The first postal day from an instant on, asked day by day of the wall. */
export function shipDayByWall({ post, zone }: Problem, ready: number): string {
  const day = localDay(ready, zone);
  let leaves = localClock(ready, zone) <= post.by ? day : addDays(day, 1);
  while (!post.days.includes(weekdayOf(leaves)) || post.closed.includes(leaves)) leaves = addDays(leaves, 1);
  return leaves;
}
