import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planRow } from '../../../src/adapters/doors/plan.ts';
import { parseProblem } from '../../../src/domain/plan/parse.ts';
import { asRow, someProblem } from './problems.ts';

const CHECKER = join(import.meta.dirname, '../../../../shared/plan/check.mjs');
/** Every look at it takes a hundredth of a millisecond, so that a plan is the same on a slow machine. */
const clock = (
  (looks) => () =>
    looks++ / 100
)(0);

const EXAMPLE = {
  id: 'two-colours',
  zone: 'America/Chicago',
  now: '2026-05-12T18:00:00-05:00',
  hours: { mon: [['18:30', '21:30']], tue: [['18:30', '21:30']], sat: [['08:00', '14:00']] },
  daysOff: ['2026-05-25'],
  extra: [{ date: '2026-05-17', from: '13:00', to: '15:00' }],
  post: { days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'], by: '12:00', closed: ['2026-05-25'] },
  setup: { pour: 12, paint: 6, guard: 4 },
  oven: { rack: 48, load: 3, unload: 3 },
  lots: [
    {
      id: 'A',
      heads: 40,
      due: '2026-05-20',
      weight: 1,
      release: null,
      steps: [
        { do: 'pour', with: 'football-1/4', minutes: 36 },
        { do: 'trim', minutes: 20 },
        { do: 'paint', with: 'black', minutes: 30 },
        { do: 'bake', with: '177C', hold: 27 },
        { do: 'cool', wait: 30 },
        { do: 'guard', minutes: 14 },
        { do: 'cure', wait: 1440 },
        { do: 'pack', minutes: 8 },
      ],
    },
  ],
  budgetMs: 20,
  seed: 1,
};

describe('one JSON problem in, one JSON plan out', () => {
  test('times are written with the shop’s offset and reasons in words', () => {
    expect(planRow(EXAMPLE, clock)).toMatchObject({
      id: 'two-colours',
      sessions: [
        { do: 'pour', with: 'football-1/4', start: '2026-05-12T18:30:00-05:00', end: '2026-05-12T19:18:00-05:00' },
        { do: 'trim', end: '2026-05-12T19:38:00-05:00' },
        { do: 'paint', end: '2026-05-12T20:14:00-05:00' },
        { do: 'guard', start: '2026-05-16T08:00:00-05:00', parts: [{ lot: 'A', start: '2026-05-16T08:04:00-05:00' }] },
        { do: 'pack', end: '2026-05-17T13:08:00-05:00' },
      ],
      loads: [{ with: '177C', hold: 27, start: '2026-05-12T20:14:00-05:00', lots: { A: 40 } }],
      lots: [
        {
          id: 'A',
          ready: '2026-05-17T13:08:00-05:00',
          ships: '2026-05-18',
          late: 0,
          because: [
            'no hours until Tue 18:30',
            'cool runs to Tue 21:17',
            'no hours until Sat 08:00',
            'cure runs to Sun 08:18',
            'no hours until Sun 13:00',
            'pack is done Sun 13:08',
            'post leaves Mon 12:00',
          ],
        },
      ],
      cost: { late: 0, ship: 6, setup: 22 },
    });
  });

  test('a row that is no problem is answered with what is wrong in it, by field', () => {
    expect(planRow({ ...EXAMPLE, zone: 'Kettle/Bay', now: 'yesterday' }, clock)).toEqual({
      id: 'two-colours',
      impossible: [
        { lot: null, why: expect.stringContaining('zone: ') },
        { lot: null, why: expect.stringContaining('now: ') },
      ],
    });
  });

  test('the same problem gives the same plan on a fast machine and on a slower one', () => {
    const row = asRow(someProblem(7, 12), 50);
    const planOn = (lookMs: number) => {
      let looks = 0;
      return { ...(planRow(row, () => lookMs * looks++) as object), tookMs: 0 };
    };
    expect(planOn(0.02)).toEqual(planOn(0.001));
  });

  test('an impossible problem says which lot and why', () => {
    expect(planRow({ ...EXAMPLE, hours: {}, extra: [] }, clock)).toMatchObject({
      impossible: [{ lot: 'A', why: 'there are no working hours at all' }],
    });
  });

  test('a problem survives being written and read', () => {
    for (const seed of [1, 2, 3, 4]) {
      const problem = someProblem(seed, 5);
      expect(parseProblem(JSON.parse(JSON.stringify(asRow(problem))))).toMatchObject({ ok: true, asked: { problem } });
    }
  });
});

describe.skipIf(!existsSync(CHECKER))(
  'the checker that came with the plan format (skipped when it is not beside the project)',
  () => {
    test('finds nothing broken in 60 plans and the costs they tell', () => {
      const rows = Array.from({ length: 60 }, (_, seed) => asRow(someProblem(seed, 1 + (seed % 20)), 5));
      const plans = rows.map((row) => planRow(row, clock));
      const folder = mkdtempSync(join(tmpdir(), 'plans-'));
      const [problemFile, planFile] = [join(folder, 'problems.jsonl'), join(folder, 'plans.jsonl')];
      writeFileSync(problemFile, rows.map((row) => JSON.stringify(row)).join('\n'));
      writeFileSync(planFile, plans.map((plan) => JSON.stringify(plan)).join('\n'));
      const { stdout, status } = spawnSync('node', [CHECKER, problemFile, planFile], { encoding: 'utf8' });
      expect(stdout.split('\n').filter((line) => line.includes('BROKEN'))).toEqual([]);
      expect(status).toBe(0);
      const told = plans.map((plan) => JSON.stringify((plan as { cost: unknown }).cost));
      expect(
        stdout
          .split('\n')
          .slice(0, 60)
          .map((line) => /\{.*\}/.exec(line)?.[0]),
      ).toEqual(told);
    }, 30_000);
  },
);
