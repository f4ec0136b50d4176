import { describe, expect, test } from 'vitest';
import { addDays, instantOf } from '../../src/domain/craft/time.ts';
import { shipDayOf } from '../../src/domain/plan/cost.ts';
import { dispatch } from '../../src/domain/plan/dispatch.ts';
import { improve } from '../../src/domain/plan/improve.ts';
import { asPlanned } from '../../src/domain/plan/layout.ts';
import type { Model } from '../../src/domain/plan/model.ts';
import { modelOf } from '../../src/domain/plan/model.ts';
import { keysOf, RULE } from '../../src/domain/plan/order.ts';
import type { PlanLot, Problem } from '../../src/domain/plan/problem.ts';
import { construct } from '../../src/domain/plan/schedule.ts';

/* The bench as the textbook's machine: open day and night, one unit of work is one day, post leaves at every midnight. So a lot
 * that is done after 8 units ships on day 8, and is late by 8 less its due day. The planner's own rules are then held against
 * published rules and the numbers published with them; where an order is best, all orders are tried on the bench. */

const DAY = 24 * 60;
const START = '2026-06-01';
const ALWAYS = [['00:00', '24:00']] as const;
const WEEK = { mon: ALWAYS, tue: ALWAYS, wed: ALWAYS, thu: ALWAYS, fri: ALWAYS, sat: ALWAYS, sun: ALWAYS };

type Job = Readonly<{ work: number; due?: number; weight?: number; bake?: number; heads?: number }>;

const lotOf = ({ work, due, weight, bake, heads }: Job, index: number): PlanLot => ({
  id: String(index + 1),
  heads: heads ?? 1,
  due: due === undefined ? null : addDays(START, due),
  weight: weight ?? 1,
  release: null,
  steps: [
    { do: 'work', with: String(index), minutes: work * DAY },
    ...(bake === undefined ? [] : [{ do: 'bake' as const, with: 'one', hold: bake * DAY }]),
  ],
});

const machine = (jobs: readonly Job[], rack = 1): Model => {
  const problem: Problem = {
    id: 'machine',
    zone: 'UTC',
    now: instantOf(START, '00:00', 'UTC'),
    hours: { weekly: WEEK, daysOff: [], extra: [] },
    post: { days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'], by: '23:59', closed: [] },
    setup: {},
    oven: { rack, load: 0, unload: 0 },
    lots: jobs.map(lotOf),
  };
  return modelOf(problem);
};

/** The day each job is done when the bench works in this order. */
function doneIn(model: Model, order: readonly number[]): number[] {
  const rule = { ...RULE, keys: keysOf(model, order), grouping: 0, patience: 0, crumb: 0, ahead: order.length };
  return Array.from(dispatch(model, rule, asPlanned(model)).ready, (ready) => shipDayOf(model, ready));
}

const orders = (left: readonly number[]): number[][] =>
  left.length === 0 ? [[]] : left.flatMap((one) => orders(left.filter((x) => x !== one)).map((rest) => [one, ...rest]));

const all = (jobs: readonly Job[]): number[] => jobs.map((_, i) => i);
const lateness = (jobs: readonly Job[], done: readonly number[]): number[] =>
  done.map((day, i) => day - (jobs[i]?.due ?? 0));
const most = (values: readonly number[]): number => Math.max(...values);
const howManyLate = (jobs: readonly Job[], done: readonly number[]): number =>
  lateness(jobs, done).filter((late) => late > 0).length;
const byDue = (jobs: readonly Job[]): number[] => all(jobs).sort((a, b) => (jobs[a]?.due ?? 0) - (jobs[b]?.due ?? 0));

const jobsOf = (work: readonly number[], due: readonly number[]): Job[] =>
  work.map((w, i) => ({ work: w, due: due[i] ?? 0 }));

describe('earliest due date first makes the largest lateness smallest', () => {
  // J. R. Jackson, "Scheduling a production line to minimize maximum tardiness", 1955; jobs A to E of a textbook exercise page.
  const jobs = jobsOf([5, 10, 2, 8, 6], [10, 15, 5, 12, 8]);

  test('jobs A to E finish in the order C, E, A, D, B on days 2, 8, 13, 21, 31', () => {
    const done = doneIn(machine(jobs), byDue(jobs));
    expect([2, 4, 0, 3, 1].map((job) => done[job])).toEqual([2, 8, 13, 21, 31]);
    expect([2, 4, 0, 3, 1].map((job) => lateness(jobs, done)[job])).toEqual([-3, 0, 3, 9, 16]);
  });

  test('no other of the 120 orders has a largest lateness under 16', () => {
    const model = machine(jobs);
    expect(Math.min(...orders(all(jobs)).map((order) => most(lateness(jobs, doneIn(model, order)))))).toBe(16);
  });

  // Kleinberg and Tardos, Algorithm Design §4.2 (from memory).
  test('six jobs of another textbook have a largest lateness of 1', () => {
    const six = jobsOf([3, 2, 1, 4, 3, 2], [6, 8, 9, 9, 14, 15]);
    expect(most(lateness(six, doneIn(machine(six), byDue(six))))).toBe(1);
  });
});

describe('dropping the longest whenever one is late makes the fewest late', () => {
  /** J. M. Moore, "An n job, one machine sequencing algorithm for minimizing the number of late jobs", Management Science 1968, in
   *  the form T. J. Hodgson gave it. */
  function mooreHodgson(jobs: readonly Job[]): number[] {
    const kept: number[] = [];
    const dropped: number[] = [];
    let time = 0;
    for (const job of byDue(jobs)) {
      kept.push(job);
      time += jobs[job]?.work ?? 0;
      if (time <= (jobs[job]?.due ?? 0)) continue;
      const longest = kept.reduce((a, b) => ((jobs[b]?.work ?? 0) > (jobs[a]?.work ?? 0) ? b : a));
      dropped.push(...kept.splice(kept.indexOf(longest), 1));
      time -= jobs[longest]?.work ?? 0;
    }
    return [...kept, ...dropped];
  }

  // M. Pinedo, Scheduling, Example 3.3.3 (from memory).
  const pinedo = jobsOf([7, 8, 4, 6, 6], [9, 17, 18, 19, 21]);
  const exercise = jobsOf([5, 10, 2, 8, 6], [10, 15, 5, 12, 8]);
  test.each([
    ['Pinedo’s five jobs: two are late', pinedo, 2],
    ['jobs A to E: three are late', exercise, 3],
  ])('%s, and no order has fewer', (_, jobs, late) => {
    const model = machine(jobs);
    expect(howManyLate(jobs, doneIn(model, mooreHodgson(jobs)))).toBe(late);
    expect(Math.min(...orders(all(jobs)).map((order) => howManyLate(jobs, doneIn(model, order))))).toBe(late);
  });

  // Ten jobs of a university course's problem page.
  test('ten jobs: on time 1, 2, 10, 9, 3, 5, 4, 6 by day 147; 7 and 8 are late', () => {
    const ten = jobsOf([19, 23, 5, 31, 17, 8, 32, 41, 26, 18], [48, 75, 170, 215, 205, 240, 85, 67, 100, 95]);
    const order = mooreHodgson(ten);
    expect(order.slice(0, 8).map((job) => job + 1)).toEqual([1, 2, 10, 9, 3, 5, 4, 6]);
    const done = doneIn(machine(ten), order);
    expect(done[order[7] ?? -1]).toBe(147);
    expect(howManyLate(ten, done)).toBe(2);
  });
});

// W. E. Smith, "Various optimizers for single-stage production", 1956 (numbers from memory; enumerated here).
describe('most weight for the work first makes weighted waiting smallest', () => {
  const jobs: Job[] = [
    { work: 4, weight: 8 },
    { work: 2, weight: 6 },
    { work: 6, weight: 3 },
    { work: 3, weight: 9 },
  ];
  const waiting = (done: readonly number[]) => done.reduce((sum, day, i) => sum + day * (jobs[i]?.weight ?? 1), 0);

  test('the planner itself finds the order 4, 2, 1, 3', () => {
    const model = machine(jobs);
    const made = construct(model);
    if ('impossible' in made) throw new Error('all can be made');
    const { rule, cost } = improve(model, made, 1, (rounds) => rounds >= 200);
    expect(cost).toEqual({ late: 0, ship: 174, setup: 0 });
    const { ready } = dispatch(model, rule, asPlanned(model));
    expect(
      all(jobs)
        .sort((a, b) => (ready[a] ?? 0) - (ready[b] ?? 0))
        .map((job) => job + 1),
    ).toEqual([4, 2, 1, 3]);
  });

  test('174 is the least of all orders', () => {
    expect(Math.min(...orders(all(jobs)).map((order) => waiting(doneIn(machine(jobs), order))))).toBe(174);
  });
});

// S. M. Johnson, "Optimal two- and three-stage production schedules with setup times included", 1954 (numbers from memory).
describe('pouring then baking one at a time is Johnson’s two-machine flow', () => {
  const pours = [3, 5, 1, 6, 7];
  const bakes = [6, 2, 2, 6, 5];
  const jobs: Job[] = pours.map((work, i) => ({ work, bake: bakes[i] ?? 0 }));

  test('the order 3, 1, 4, 5, 2 is through on day 24, and no order sooner', () => {
    const model = machine(jobs);
    const [first, rest] = [
      all(jobs).filter((i) => (pours[i] ?? 0) < (bakes[i] ?? 0)),
      all(jobs).filter((i) => (pours[i] ?? 0) >= (bakes[i] ?? 0)),
    ];
    first.sort((a, b) => (pours[a] ?? 0) - (pours[b] ?? 0));
    rest.sort((a, b) => (bakes[b] ?? 0) - (bakes[a] ?? 0));
    // Jobs 4 (6 and 6) and 5 may stand either way; by the rule's letter ties keep their order.
    expect([...first, ...rest].map((job) => job + 1)).toEqual([3, 1, 4, 5, 2]);
    expect(most(doneIn(model, [...first, ...rest]))).toBe(24);
    expect(Math.min(...orders(all(jobs)).map((order) => most(doneIn(model, order))))).toBe(24);
  });
});

/* C.-Y. Lee, R. Uzsoy and L. A. Martin-Vega, "Efficient algorithms for scheduling semiconductor burn-in operations", Operations
 * Research 1992: with all there at once, full batches, longest first, are through soonest; R. Uzsoy, "Scheduling batch processing machines with incompatible
 * job families", 1995: families that cannot share a load take Σ ⌈n/B⌉·p (both from memory). Heads of one load share one
 * time here, so mixed times show as families. */
describe('the oven as a batch machine', () => {
  const ovenDays = (holds: readonly number[], rack: number): number => {
    const jobs = holds.map((bake): Job => ({ work: 0, bake }));
    return most(doneIn(machine(jobs, rack), all(jobs)));
  };

  test.each([
    ['five of one time, two at once: three full-as-can-be loads', [7, 7, 7, 7, 7], 2, 21],
    ['three of 8 and two of 5, two at once: 8 + 8 + 5', [8, 5, 8, 5, 8], 2, 21],
    ['all of one time in one load', [8, 8, 8], 3, 8],
    ['one at a time: the sum', [8, 6, 5, 3, 2], 1, 24],
  ])('%s', (_, holds, rack, days) => {
    expect(ovenDays(holds, rack)).toBe(days);
  });
});

// K. R. Baker and Z.-S. Su, "Sequencing with due-dates and early start times to minimize maximum tardiness", 1974 (from memory): with
// cutting allowed, working always on the earliest due of what is there bounds the largest lateness from below.
describe('work that comes later', () => {
  test('is cut for nobody, so the largest lateness is never under the preemptive bound', () => {
    const jobs = jobsOf([4, 2, 6, 5], [8, 12, 11, 10]);
    const released = [0, 1, 3, 5];
    const model = machine(jobs);
    const free = Float64Array.from(released, (day) => model.calendar.now + day * DAY * 60_000);
    const rule = { ...RULE, keys: keysOf(model, byDue(jobs)), grouping: 0, crumb: 0, ahead: 9 };
    const { ready } = dispatch(model, rule, { ...asPlanned(model), free });
    const done = Array.from(ready, (at) => shipDayOf(model, at));
    expect(most(lateness(jobs, done))).toBeGreaterThanOrEqual(preemptiveBound(jobs, released));
  });

  function preemptiveBound(jobs: readonly Job[], released: readonly number[]): number {
    const left = jobs.map(({ work }) => work);
    let worst = -Infinity;
    for (let day = 0; left.some((one) => one > 0); day++) {
      const job = byDue(jobs).find((i) => (left[i] ?? 0) > 0 && (released[i] ?? 0) <= day);
      if (job === undefined) continue;
      left[job] = (left[job] ?? 0) - 1;
      if (left[job] === 0) worst = Math.max(worst, day + 1 - (jobs[job]?.due ?? 0));
    }
    return worst;
  }
});
