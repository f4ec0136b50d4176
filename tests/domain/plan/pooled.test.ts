import { describe, expect, test } from 'vitest';
import { isImpossible, type Plan } from '../../../src/domain/plan/plan.ts';
import type { PlanLot, Problem } from '../../../src/domain/plan/problem.ts';
import { promise, TERMS } from '../../../src/domain/plan/promise.ts';
import { schedule } from '../../../src/domain/plan/schedule.ts';

const NOW = Date.UTC(2026, 10, 30, 18);
const lot = (id: string, minutes: number, due: string | null = null): PlanLot => ({
  id,
  heads: 20,
  due,
  weight: 1,
  release: null,
  steps: [
    { do: 'pour', with: 'ball', minutes },
    { do: 'trim', minutes: 10 },
    { do: 'pack', minutes: 5 },
  ],
});
const bench = (lots: readonly PlanLot[], pooled: boolean): Problem => ({
  id: 'bench',
  zone: 'UTC',
  now: NOW,
  hours: {
    weekly: { mon: [['18:00', '21:00']], tue: [['18:00', '21:00']], wed: [['18:00', '21:00']] },
    daysOff: [],
    extra: [],
  },
  post: { days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'], by: '21:00', closed: [] },
  setup: { pour: 1, trim: 0, pack: 0 },
  oven: { rack: 48, load: 3, unload: 3 },
  lots,
  ...(pooled ? { pooled } : {}),
});
const planned = (problem: Problem): Plan => {
  const plan = schedule(problem);
  return isImpossible(plan) ? expect.fail('no plan') : plan;
};
const pours = (plan: Plan): readonly number[] =>
  plan.sessions.filter((one) => one.do === 'pour').map(({ parts }) => new Set(parts.map(({ lot }) => lot)).size);

describe('work that is started for all lots at a time', () => {
  const two = [lot('first', 120, '2026-11-30'), lot('second', 120)];

  test('is one session of all that is ready, where the plan alone would have made two', () => {
    expect(pours(planned(bench(two, false)))[0]).toBe(1);
    expect(Math.max(...pours(planned(bench(two, true))))).toBe(2);
  });

  test('does not push a promise: what is asked for is held back until it can be begun without doing so', () => {
    const terms = { ...TERMS, worlds: 20 };
    const made = promise(bench([lot('first', 120, '2026-11-30')], true), [lot('asked', 120)], terms);
    if (isImpossible(made)) return expect.fail('no plan');
    expect(made.from).not.toBeNull();
    expect(made.plan.lots.find(({ id }) => id === 'first')?.ships).toBe('2026-11-30');
  });
});
