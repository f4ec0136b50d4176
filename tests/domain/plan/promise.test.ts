import { assert, integer, nat, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/domain/craft/time.ts';
import type { Plan } from '../../../src/domain/plan/plan.ts';
import { isImpossible } from '../../../src/domain/plan/plan.ts';
import type { PlanLot, Problem } from '../../../src/domain/plan/problem.ts';
import type { Promised, Terms } from '../../../src/domain/plan/promise.ts';
import { dayFor, promise, risks, TERMS } from '../../../src/domain/plan/promise.ts';
import { follow, schedule } from '../../../src/domain/plan/schedule.ts';
import { faults } from './feasible.ts';
import { someProblem } from './problems.ts';

const QUICK: Terms = { ...TERMS, worlds: 60 };

function must<Made extends object>(made: Made): Exclude<Made, { impossible: unknown }> {
  if (isImpossible(made)) throw new Error(JSON.stringify(made));
  return made as Exclude<Made, { impossible: unknown }>;
}

const planOf = (problem: Problem): Plan => must(schedule(problem));
const shipsOf = ({ lots }: Plan): ReadonlyMap<string, string> => new Map(lots.map(({ id, ships }) => [id, ships]));

/** A lot nobody has promised yet. */
const asked = (seed: number, heads?: number): PlanLot => {
  const [lot] = someProblem(seed, 1).lots;
  if (lot === undefined) throw new Error('one lot was asked for');
  return { ...lot, id: 'asked', due: null, release: null, heads: heads ?? lot.heads };
};

/** A bench whose lots are promised for the day they are planned and some days more. */
function promisedBench(seed: number, lots: number, spare: number): { problem: Problem; plan: Plan } {
  const made = someProblem(seed, lots);
  const problem = { ...made, lots: made.lots.map((lot) => ({ ...lot, due: null })) };
  const plan = planOf(problem);
  const days = shipsOf(plan);
  const due = (id: string) => addDays(days.get(id) ?? '', spare);
  return { problem: { ...problem, lots: problem.lots.map((lot) => ({ ...lot, due: due(lot.id) })) }, plan };
}

describe('a promise', () => {
  test('has a chance near the confidence, and the plan behind it can be done', () => {
    const { problem, plan } = promisedBench(4, 8, 3);
    const lots = [asked(9)];
    const made = must(promise(problem, lots, { ...TERMS, before: plan.order }));
    expect(Math.abs(made.chance - 0.9)).toBeLessThan(0.15);
    expect(made.day >= made.planned).toBe(true);
    expect(faults({ ...problem, lots: [...problem.lots, ...lots] }, made.plan)).toEqual([]);
  });

  test('is the same for the same bench and seed', () => {
    const { problem, plan } = promisedBench(4, 8, 3);
    const once = () => promise(problem, [asked(9)], { ...QUICK, before: plan.order });
    expect(once()).toEqual(once());
  });

  test('asked for with more confidence is never an earlier day', () => {
    assert(
      property(nat(1000), (seed) => {
        const { problem } = promisedBench(seed, 5, 3);
        const { outlook } = must(promise(problem, [asked(seed + 1)], QUICK));
        const days = [0.5, 0.8, 0.9, 0.99].map((confidence) => dayFor(outlook, confidence).day);
        expect(days).toEqual([...days].sort());
      }),
      { numRuns: 20 },
    );
  }, 60_000);

  test('of an order with two lots is for the day both have left', () => {
    const { problem } = promisedBench(3, 4, 3);
    const [one, two] = [asked(5), { ...asked(6), id: 'second' }];
    const both = must(promise(problem, [one, two], QUICK)).planned;
    const days = shipsOf(must(promise(problem, [one, two], QUICK)).plan);
    expect(both).toBe([days.get('asked') ?? '', days.get('second') ?? ''].sort().at(-1));
  });

  test('takes the day nearest to the confidence', () => {
    const outlook = [
      { day: '2026-05-12', chance: 0.6 },
      { day: '2026-05-13', chance: 0.88 },
      { day: '2026-05-14', chance: 0.97 },
    ];
    expect(dayFor(outlook, 0.9)).toEqual({ day: '2026-05-13', chance: 0.88 });
    expect(dayFor(outlook, 0.95).day).toBe('2026-05-14');
  });

  test('for what can never be made says which lot and why', () => {
    const { problem } = promisedBench(3, 2, 3);
    const tooLong = { ...asked(5), steps: [{ do: 'bake', hold: 100_000 } as const] };
    expect(promise(problem, [tooLong], QUICK)).toMatchObject({
      impossible: [{ lot: 'asked', why: { code: 'bake-too-long' } }],
    });
  });
});

describe('accepted promises', () => {
  test('do not move by a day when an order is added in turn', () => {
    assert(
      property(nat(5000), integer({ min: 1, max: 12 }), (seed, lots) => {
        const { problem, plan } = promisedBench(seed, lots, 2);
        const made = must(promise(problem, [asked(seed + 7)], { ...QUICK, worlds: 1, before: plan.order }));
        const before = shipsOf(plan);
        const moved = made.plan.lots.filter(({ id, ships }) => id !== 'asked' && ships > (before.get(id) ?? ''));
        expect(moved).toEqual([]);
      }),
      { numRuns: 80 },
    );
  }, 60_000);

  test('are kept when an order is rushed, and it never ships later than in turn', () => {
    assert(
      property(nat(5000), integer({ min: 2, max: 12 }), (seed, lots) => {
        const { problem, plan } = promisedBench(seed, lots, 6);
        const terms = { ...QUICK, worlds: 1, before: plan.order };
        const [turn, rush] = (['turn', 'rush'] as const).map((place) =>
          must(promise(problem, [asked(seed + 7)], { ...terms, place })),
        ) as [Promised, Promised];
        expect(rush.plan.lots.filter(({ id, late }) => id !== 'asked' && late > 0)).toEqual([]);
        expect(rush.planned <= turn.planned).toBe(true);
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  test('run a risk between 0 and 1 that falls with the days to spare', () => {
    const chances = [0, 2, 5, 12].map((spare) => {
      const { problem, plan } = promisedBench(6, 8, spare);
      const each = risks(problem, { ...TERMS, before: plan.order }).map(({ late }) => late);
      expect(each.every((late) => late >= 0 && late <= 1)).toBe(true);
      return each.reduce((sum, late) => sum + late, 0) / each.length;
    });
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    expect(chances[3]).toBeLessThan(0.1);
  });

  test('stay where they were when the plan is followed and nothing happened', () => {
    const { problem, plan } = promisedBench(8, 10, 3);
    expect(must(follow(problem, plan.order)).sessions).toEqual(plan.sessions);
  });
});

describe('a new lot that would push an accepted one', () => {
  test('is held back, and following the plan with its release keeps everybody’s day', () => {
    const { problem, plan } = promisedBench(116, 5, 0);
    const lot = asked(123);
    const made = must(promise(problem, [lot], { ...QUICK, before: plan.order }));
    expect(made.from).not.toBeNull();
    const lots = [...problem.lots, { ...lot, release: made.from }];
    expect(must(follow({ ...problem, lots }, made.plan.order)).sessions).toEqual(made.plan.sessions);
    expect(made.plan.cost.late).toBe(0);
  });
});
