import highs from 'highs';
import { addDays, daysBetween, HOUR, instantOf, localDay, MINUTE } from '../../src/domain/craft/time.ts';
import type { PlanLot, Problem } from '../../src/domain/plan/problem.ts';
import { isHands } from '../../src/domain/plan/problem.ts';
import type { Random } from '../../src/domain/plan/random.ts';
import { pick, randomOf } from '../../src/domain/plan/random.ts';
import { openHours, shipDayByWall } from '../domain/plan/feasible.ts';

/* Small problems whose least weighted lateness is known exactly: `laggedProblem` by a mixed-integer program, `familyProblem` by
 * trying every order. */

const ZONE = 'America/Chicago';
const EVENING = [['18:30', '21:30']] as const;
const SHOP: Omit<Problem, 'id' | 'now' | 'lots' | 'setup'> = {
  zone: ZONE,
  hours: {
    weekly: { mon: EVENING, tue: EVENING, wed: EVENING, thu: EVENING, sat: [['08:00', '14:00']] },
    daysOff: [],
    extra: [],
  },
  post: { days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'], by: '12:00', closed: [] },
  oven: { rack: 48, load: 3, unload: 3 },
};
const SLOT = 30 * MINUTE;

/** Two to three steps a lot on a half-hour grid, with lags and releases, no setups: hands may go to and fro freely. */
export function laggedProblem(seed: number): Problem {
  const random = begun(seed);
  const now = instantOf(addDays('2026-02-02', pick(random, 5)), '08:00', ZONE);
  const lots = Array.from({ length: 4 + pick(random, 3) }, (_, i): PlanLot => ({
    ...anyLot(random, i, now),
    release: random() < 0.3 ? instantOf(addDays(localDay(now, ZONE), 1 + pick(random, 2)), '18:30', ZONE) : null,
    steps: [
      { do: 'pour', with: `mold ${i}`, minutes: 30 * (1 + pick(random, 4)) },
      { do: 'cure', wait: [0, 60, 720, 1440][pick(random, 4)] ?? 0 },
      { do: 'pack', with: `lot ${i}`, minutes: 30 * (1 + pick(random, 2)) },
    ],
  }));
  return { ...SHOP, id: `lagged-${seed}`, now, setup: {}, lots };
}

/** One step a lot, three molds, a setup whenever the mold changes or the evening ends. */
export function familyProblem(seed: number): Problem {
  const random = begun(seed + 500);
  const now = instantOf(addDays('2026-02-02', pick(random, 5)), '08:00', ZONE);
  const lots = Array.from({ length: 5 + pick(random, 2) }, (_, i): PlanLot => ({
    ...anyLot(random, i, now),
    release: null,
    steps: [{ do: 'pour', with: `mold ${pick(random, 3)}`, minutes: 40 + pick(random, 110) }],
  }));
  return { ...SHOP, id: `family-${seed}`, now, setup: { pour: 25 }, lots };
}

function begun(seed: number): Random {
  const random = randomOf(seed * 7919 + 3);
  for (let i = 0; i < 5; i++) random();
  return random;
}

const anyLot = (random: Random, i: number, now: number) => ({
  id: `L${i}`,
  heads: 10,
  due: addDays(localDay(now, ZONE), 1 + pick(random, 4)),
  weight: 1 + pick(random, 3),
});

/** The least weighted days late over every order of the lots: with one step each, all there from the start, work is never better
 *  put off, and a lot cut by the end of an evening goes on next time. */
export function leastByOrders(problem: Problem): number {
  const open = openHours(problem, problem.now + 40 * 24 * HOUR);
  return Math.min(...orders(problem.lots).map((order) => lateInOrder(problem, open, order)));
}

type Stretch = Readonly<{ from: number; to: number }>;
/** Where the bench stands: in which stretch of hours, at what instant, with which mold hot. */
type Stand = { window: number; at: number; mold: string };

function lateInOrder(problem: Problem, open: readonly Stretch[], order: readonly PlanLot[]): number {
  const stand: Stand = { window: 0, at: open[0]?.from ?? 0, mold: '' };
  let late = 0;
  for (const lot of order) {
    pourThrough(problem, open, stand, lot);
    late += lot.weight * Math.max(0, daysBetween(lot.due ?? '', shipDayByWall(problem, stand.at)));
  }
  return late;
}

function pourThrough(problem: Problem, open: readonly Stretch[], stand: Stand, { steps: [step] }: PlanLot): void {
  if (step === undefined || !isHands(step)) throw new Error('one hands step a lot');
  const { minutes, with: mold = '' } = step;
  for (let left = minutes * MINUTE; left > 0;) {
    const setup = stand.mold === mold ? 0 : (problem.setup[step.do] ?? 0) * MINUTE;
    const room = (open[stand.window]?.to ?? 0) - stand.at - setup;
    if (room > 0) {
      const done = Math.min(room, left);
      Object.assign(stand, { at: stand.at + setup + done, mold });
      left -= done;
    }
    if (left > 0) Object.assign(stand, { window: stand.window + 1, at: open[stand.window + 1]?.from ?? 0, mold: '' });
  }
}

const orders = <T>(left: readonly T[]): T[][] =>
  left.length === 0 ? [[]] : left.flatMap((one) => orders(left.filter((x) => x !== one)).map((rest) => [one, ...rest]));

/** The least weighted days late by a time-indexed mixed-integer program, exact on the half-hour grid all its data lies on. */
export async function leastByProgram(problem: Problem): Promise<number> {
  const solver = await (highs as unknown as typeof highs.default)();
  const { ObjectiveValue, Status } = solver.solve(programOf(problem), { mip_rel_gap: 0, time_limit: 60 });
  if (Status !== 'Optimal') throw new Error(`${problem.id}: ${Status}`);
  return Math.round(ObjectiveValue * 1e6) / 1e6;
}

const DAYS = 14;

function programOf(problem: Problem): string {
  const slots = openHours(problem, problem.now + DAYS * 24 * HOUR).flatMap(({ from, to }) =>
    Array.from({ length: (to - from) / SLOT }, (_, i) => from + i * SLOT),
  );
  const rows: string[] = slots.map(
    (_, s) => `${problem.lots.flatMap((_, j) => [`x${j}a${s}`, `x${j}b${s}`]).join(' + ')} <= 1`,
  );
  const binaries = problem.lots.flatMap((_, j) => slots.flatMap((_, s) => [`x${j}a${s}`, `x${j}b${s}`, `d${j}s${s}`]));
  const cost: string[] = [];
  let paid = 0;
  for (const [j, lot] of problem.lots.entries()) {
    rows.push(...lotRows(lot, j, slots));
    for (let day = lot.due ?? ''; day <= addDays(localDay(problem.now, problem.zone), DAYS); day = addDays(day, 1)) {
      const inTime = slots.flatMap((at, s) => (shipDayByWall(problem, at + SLOT) <= day ? [`x${j}b${s}`] : []));
      const name = `z${j}_${day.replaceAll('-', '')}`;
      binaries.push(name);
      rows.push(`${pack(lot)} ${name}${inTime.map((x) => ` - ${x}`).join('')} <= 0`);
      cost.push(`- ${lot.weight} ${name}`);
      paid += lot.weight;
    }
  }
  return `Minimize\n obj: ${cost.join(' ')} + ${paid} one\nSubject To\n${rows.map((row, i) => ` c${i}: ${row}`).join('\n')}\nBounds\n one = 1\nBinary\n ${binaries.join(' ')}\nEnd`;
}

/** All of both steps is done; nothing before the release; packing only where pouring is done and cured. */
function lotRows(lot: PlanLot, j: number, slots: readonly number[]): string[] {
  const all = (step: string) => slots.map((_, s) => `x${j}${step}${s}`).join(' + ');
  const rows = [`${all('a')} = ${pour(lot)}`, `${all('b')} = ${pack(lot)}`];
  for (const [s, at] of slots.entries()) {
    if (at < (lot.release ?? 0)) rows.push(`x${j}a${s} = 0`);
    const cured = slots.flatMap((begun, i) => (begun + SLOT + wait(lot) * MINUTE <= at ? [`x${j}a${i}`] : []));
    rows.push(`${pour(lot)} d${j}s${s}${cured.map((x) => ` - ${x}`).join('')} <= 0`);
    rows.push(`x${j}b${s} - d${j}s${s} <= 0`);
  }
  return rows;
}

const slotsOf = (lot: PlanLot, step: number): number => {
  const does = lot.steps[step];
  return does !== undefined && 'minutes' in does ? does.minutes / 30 : 0;
};
const pour = (lot: PlanLot): number => slotsOf(lot, 0);
const pack = (lot: PlanLot): number => slotsOf(lot, 2);
const wait = ({ steps: [, cure] }: PlanLot): number => (cure !== undefined && 'wait' in cure ? cure.wait : 0);
