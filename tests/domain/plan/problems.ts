import { addDays, instantOf, localDay, MINUTE } from '../../../src/domain/craft/time.ts';
import type { PlanLot, PlanStep, Problem } from '../../../src/domain/plan/problem.ts';
import type { Random } from '../../../src/domain/plan/random.ts';
import { pick, randomOf } from '../../../src/domain/plan/random.ts';

const MOLDS = ['ball-1/8', 'ball-1/4', 'football-1/4', 'football-3/8', 'football-1/2', 'swim-3/8', 'mushroom-1/8'];
const COLOURS = ['black', 'white', 'chartreuse', 'green-pumpkin', 'orange'];
const EVENINGS: Problem['hours']['weekly'] = {
  mon: [['18:30', '21:30']],
  tue: [['18:30', '21:30']],
  wed: [['18:30', '21:30']],
  thu: [['18:30', '21:30']],
  sat: [['08:00', '14:00']],
};

/** A made-up shop's week with so many lots; the same seed gives the same problem. */
export function someProblem(seed: number, lots: number): Problem {
  const random = randomOf(seed * 7919 + lots);
  for (let i = 0; i < 5; i++) random();
  const zone = of(random, ['America/Chicago', 'America/Chicago', 'Europe/Berlin', 'Australia/Lord_Howe']);
  const now = instantOf(addDays('2026-01-05', pick(random, 360)), '07:00', zone) + pick(random, 900) * MINUTE;
  const today = localDay(now, zone);
  return {
    id: `made-${seed}-${lots}`,
    zone,
    now,
    hours: {
      weekly: EVENINGS,
      daysOff: random() < 0.3 ? [addDays(today, 3)] : [],
      extra: random() < 0.3 ? [{ date: addDays(today, 2), from: '13:00', to: '16:00' }] : [],
    },
    post: {
      days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'],
      by: '12:00',
      closed: random() < 0.3 ? [addDays(today, 4)] : [],
    },
    setup: { pour: 12, paint: 6, guard: 4 },
    oven: { rack: 48, load: 3, unload: 3 },
    lots: Array.from({ length: lots }, (_, i) => someLot(random, `L${i + 1}`, today, now, lots)),
  };
}

function someLot(random: Random, id: string, today: string, now: number, lots: number): PlanLot {
  const heads = 5 + pick(random, random() < 0.1 ? 150 : 50);
  const steps: PlanStep[] = [
    { do: 'pour', with: of(random, MOLDS), minutes: Math.ceil(heads * 0.9) },
    { do: 'trim', minutes: Math.ceil(heads * 0.5) },
  ];
  if (random() < 0.75) {
    steps.push({ do: 'paint', with: of(random, COLOURS), minutes: Math.ceil(heads * 0.75) });
    steps.push({ do: 'bake', with: of(random, ['177C', '177C', '190C']), hold: 27 }, { do: 'cool', wait: 30 });
  }
  if (random() < 0.5) steps.push({ do: 'guard', minutes: Math.ceil(heads * 0.35) }, { do: 'cure', wait: 1440 });
  steps.push({ do: 'pack', minutes: 3 + Math.ceil(heads * 0.1) });
  return {
    id,
    heads,
    steps,
    due: random() < 0.85 ? addDays(today, 2 + pick(random, 6 + Math.ceil(lots * 1.1))) : null,
    weight: of(random, [1, 1, 1, 2, 3]),
    release: random() < 0.2 ? now + pick(random, 7 * 24 * 60) * MINUTE : null,
  };
}

const of = <T>(random: Random, all: readonly T[]): T => all[pick(random, all.length)] as T;

/** The problem as the plan format writes it. */
export const asRow = ({ hours, now, lots, ...rest }: Problem, budgetMs = 50) => ({
  ...rest,
  now: new Date(now).toISOString(),
  hours: hours.weekly,
  daysOff: hours.daysOff,
  extra: hours.extra,
  budgetMs,
  seed: 1,
  lots: lots.map((lot) => ({ ...lot, release: lot.release === null ? null : new Date(lot.release).toISOString() })),
});
