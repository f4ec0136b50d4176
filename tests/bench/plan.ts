import { pathToFileURL } from 'node:url';
import { improve } from '../../src/domain/plan/improve.ts';
import { layOut } from '../../src/domain/plan/layout.ts';
import type { Model } from '../../src/domain/plan/model.ts';
import { modelOf } from '../../src/domain/plan/model.ts';
import { isImpossible } from '../../src/domain/plan/plan.ts';
import type { Cost } from '../../src/domain/plan/plan.ts';
import type { Problem } from '../../src/domain/plan/problem.ts';
import { promise, TERMS } from '../../src/domain/plan/promise.ts';
import type { Candidate } from '../../src/domain/plan/schedule.ts';
import { construct, schedule } from '../../src/domain/plan/schedule.ts';
import { cutOff } from '../../src/domain/plan/calendar.ts';
import { openHours } from '../domain/plan/feasible.ts';
import { someProblem } from '../domain/plan/problems.ts';
import { judged, liveThrough, USUAL } from '../simulator/year.ts';
import { familyProblem, laggedProblem, leastByOrders, leastByProgram } from './exact.ts';

/** Prints how fast the planner is, how near to the best, and how well its promises hold. Some minutes. */
export async function benchPlan(): Promise<void> {
  print('Planning, ms (median of 15 after warming up)', [10, 50, 200, 500].map(speedOf));
  print('Improvement at a budget of 50 ms, and what ten times as long would give', [4, 10, 50, 200].map(gainOf));
  print('Distance from the least weighted days late', [
    await gapsOf('hands, lags, releases (mixed-integer program)', laggedProblem, leastByProgram),
    await gapsOf('molds with setups (every order)', familyProblem, async (problem) => leastByOrders(problem)),
  ]);
  print(
    'Largest lateness in days beside a lower bound (preemptive earliest due date, hands alone)',
    [50, 200, 500].map(boundOf),
  );
  print('Promises over six made-up years', [5.5, 7, 8.5].flatMap(promisesAt));
  print('Promises of the shop whose minutes are wrong by a factor of two', [2, 0.5].flatMap(learningAt));
}

function speedOf(lots: number) {
  const problem = someProblem(3, lots);
  const order = { ...must(schedule(problem)).order };
  const asked = someProblem(4, 1).lots.map((lot) => ({ ...lot, id: 'asked', due: null, release: null }));
  const first = timed(() => schedule(problem));
  const quote = timed(() => promise(problem, asked, { ...TERMS, before: order }));
  const target = { 10: 1, 50: 5, 200: 25, 500: 100 }[lots];
  const perLog = first / (lots * Math.log(lots));
  return { lots, 'first plan': first, target, 'first / (n log n), µs': perLog * 1000, 'quote with promise': quote };
}

function gainOf(lots: number) {
  const models = [1, 2, 3].map((seed) => modelOf(someProblem(seed, lots)));
  const start = models.map(startOf);
  const within = (ms: number) =>
    models.map((model, i) => {
      const begin = performance.now();
      return improve(model, start[i] as Candidate, 1, () => performance.now() - begin >= ms).cost;
    });
  return {
    lots,
    first: written(start.map(({ cost }) => cost)),
    '50 ms': written(within(50)),
    '500 ms': written(within(500)),
  };
}

const written = (costs: readonly Cost[]): string =>
  costs.map(({ late, ship, setup }) => `${late}/${ship}/${setup}`).join('  ');

async function gapsOf(
  name: string,
  problemOf: (seed: number) => Problem,
  least: (problem: Problem) => Promise<number>,
) {
  const gaps: number[] = [];
  let [ours, best] = [0, 0];
  for (let seed = 1; seed <= 24; seed++) {
    const problem = problemOf(seed);
    const exact = await least(problem);
    const model = modelOf(problem);
    const { late } = improve(model, startOf(model), 1, (rounds) => rounds >= 5000).cost;
    [ours, best] = [ours + late, best + exact];
    if (late < exact - 1e-6) throw new Error(`${problem.id}: ${late} is less than the least ${exact}`);
    gaps.push(exact === 0 ? (late === 0 ? 0 : 1) : late / exact - 1);
  }
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  return {
    name,
    problems: gaps.length,
    'sum, ours': ours,
    'sum, least': best,
    'mean gap': percent(mean),
    worst: percent(Math.max(...gaps)),
  };
}

/** Jackson's bound: hands alone, no setups, lags taken off the due day; its lateness counts in days of the wall. */
function boundOf(lots: number) {
  const model = modelOf(someProblem(5, lots));
  const dues = Array.from(model.due, (due, lot) => ({ due, lot })).filter(({ due }) => Number.isFinite(due));
  dues.sort((a, b) => a.due - b.due);
  const open = openHours(model.problem, model.calendar.now + 600 * 86_400_000);
  let [spent, bound] = [0, -Infinity];
  for (const { due, lot } of dues) {
    spent += model.work[lot] ?? 0;
    bound = Math.max(bound, Math.ceil((endAfter(open, spent) - cutOff(model.calendar, Math.max(0, due))) / 86_400_000));
  }
  const begin = performance.now();
  const { rule } = improve(model, startOf(model), 1, () => performance.now() - begin > 50);
  const late = layOut(model, rule).lots.map((lot) => lot.late);
  return {
    lots,
    'largest lateness': Math.max(...late),
    'lower bound': Math.max(0, bound),
    'lots late': late.filter(Boolean).length,
  };
}

function endAfter(open: readonly Readonly<{ from: number; to: number }>[], spent: number): number {
  let left = spent;
  for (const { from, to } of open) {
    if (left <= to - from) return from + left;
    left -= to - from;
  }
  return Infinity;
}

function promisesAt(ordersPerWeek: number) {
  const kept = [1, 2, 3, 4, 5, 6].flatMap((seed) => [...liveThrough({ ...USUAL, seed, ordersPerWeek })]);
  return [0.5, 0.8, 0.9].map((confidence) => ({ 'orders a week': ordersPerWeek, ...promisesRow(kept, confidence) }));
}

function learningAt(factor: number) {
  const bias = Object.fromEntries(['pour', 'trim', 'paint', 'guard', 'pack'].map((step) => [step, factor]));
  const years = [1, 2, 3, 4, 5, 6].map((seed) =>
    [...liveThrough({ ...USUAL, seed, bias, ordersPerWeek: factor > 1 ? 3.5 : 7 })].sort((a, b) =>
      a.asked < b.asked ? -1 : 1,
    ),
  );
  return [
    [0, 15],
    [15, 30],
    [30, 60],
    [60, 9999],
  ].map(([from, to]) => ({
    'true minutes': `${factor} ×`,
    'orders from': from,
    ...promisesRow(
      years.flatMap((year) => year.slice(from, to)),
      0.9,
    ),
  }));
}

function promisesRow(kept: Parameters<typeof judged>[0], confidence: number) {
  const { orders, kept: share, said, promised, actual, longer, between } = judged(kept, confidence);
  return {
    confidence,
    orders,
    kept: percent(share),
    said: percent(said),
    'kept between days': percent(between),
    'days promised': promised,
    'days taken': actual,
    longer: percent(longer),
  };
}

function startOf(model: Model): Candidate {
  const made = construct(model);
  if ('impossible' in made) throw new Error(JSON.stringify(made));
  return made;
}

function must<Made extends object>(made: Made): Exclude<Made, { impossible: unknown }> {
  if (isImpossible(made)) throw new Error(JSON.stringify(made));
  return made as Exclude<Made, { impossible: unknown }>;
}

function timed(run: () => unknown): number {
  for (let i = 0; i < 40; i++) run();
  const took = Array.from({ length: 15 }, () => {
    const begin = performance.now();
    run();
    return performance.now() - begin;
  });
  return took.sort((a, b) => a - b)[7] ?? 0;
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

function print(title: string, rows: readonly object[]): void {
  console.log(`\n${title}`);
  console.table(
    rows.map((row) =>
      Object.fromEntries(
        Object.entries(row).map(([key, value]) => [
          key,
          typeof value === 'number' ? Math.round(value * 100) / 100 : value,
        ]),
      ),
    ),
  );
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await benchPlan();
