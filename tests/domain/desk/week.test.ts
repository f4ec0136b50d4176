import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { newLot, withStep } from '../../../src/domain/bench/lot.ts';
import {
  addDays,
  HOUR,
  instantOf,
  localClock,
  localDay,
  MINUTE,
  type Instant,
} from '../../../src/domain/craft/time.ts';
import { shipDays } from '../../../src/domain/desk/heading.ts';
import { planOf } from '../../../src/domain/desk/planning.ts';
import { emptyDesk, type Desk } from '../../../src/domain/desk/state.ts';
import { weekOf, type Week, type WeekDay } from '../../../src/domain/desk/week.ts';
import { isImpossible } from '../../../src/domain/plan/plan.ts';
import { cureMinutes } from '../../../src/domain/plan/routing.ts';
import type { Shop } from '../../../src/domain/shop/shop.ts';
import { SHOP, shopWith } from '../../demoShop.ts';
import { BALL, FOOTBALL, manyAccepted, openDesk } from './openDesk.ts';

const at = (day: string, clock: string): number => instantOf(day, clock, SHOP.zone);
const hoursOnly = (weekly: Shop['hours']['weekly']): Shop =>
  shopWith(() => ({ hours: { weekly, daysOff: [], extra: [] } }));
/** Twenty heads that are baking, with so many minutes to go. */
function inTheOven(now: Instant, minutes: number): Pick<Desk, 'lots' | 'timers'> {
  const poured = (['pour', 'trim', 'paint', 'clear-eyes'] as const).reduce(
    (lot, step) => withStep(lot, step, { state: 'done', doneAt: now }),
    newLot('K-1001-1', 'K-1001', BALL, 20, {}),
  );
  const baking = { ...withStep(poured, 'bake', { state: 'running', startedAt: now }), good: 20 };
  const dueAt = now + minutes * MINUTE;
  const told = { firstDueAt: dueAt, toldAt: null, course: null, told: 0 };
  return {
    lots: { [baking.id]: baking },
    timers: { T1: { id: 'T1', kind: 'bake', session: null, lots: [baking.id], dueAt, ...told } },
  };
}
function dayIn({ days }: Week, day: string): WeekDay {
  const found = days.find((one) => one.day === day);
  if (found === undefined) throw new Error(`${day} is not in the week.`);
  return found;
}

describe('the week', () => {
  test('is today and the six local days after it, also where that is a day of 23 or 25 hours', () => {
    for (const day of ['2026-03-07', '2026-10-31', '2026-12-29']) {
      const { days } = weekOf(SHOP, emptyDesk, at(day, '23:59'));
      expect(days.map((one) => one.day)).toEqual([0, 1, 2, 3, 4, 5, 6].map((more) => addDays(day, more)));
    }
  });

  test('has the hours of each day on the wall clock, and none on days off', () => {
    const { days } = weekOf(SHOP, { ...emptyDesk, daysOff: ['2026-11-30'] }, at('2026-11-25', '12:00'));
    expect(days.map(({ day, hours }) => [day, hours])).toEqual([
      ['2026-11-25', [{ from: at('2026-11-25', '18:30'), to: at('2026-11-25', '21:30') }]],
      ['2026-11-26', []],
      ['2026-11-27', []],
      ['2026-11-28', [{ from: at('2026-11-28', '08:00'), to: at('2026-11-28', '14:00') }]],
      ['2026-11-29', []],
      ['2026-11-30', []],
      ['2026-12-01', [{ from: at('2026-12-01', '18:30'), to: at('2026-12-01', '21:30') }]],
    ]);
  });

  test('extra hours make a day off a day of work', () => {
    const shop = shopWith(({ hours }) => ({
      hours: { ...hours, extra: [{ date: '2026-11-26', from: '09:00', to: '11:00' }] },
    }));
    const { days } = weekOf(shop, emptyDesk, at('2026-11-25', '12:00'));
    expect(days[1]?.hours).toEqual([{ from: at('2026-11-26', '09:00'), to: at('2026-11-26', '11:00') }]);
  });

  test('shows every session and load of the plan that begins in it, with its heads', () => {
    const now = at('2026-11-30', '17:00');
    const desk = openDesk([{ spec: FOOTBALL, heads: 30, ships: '2026-12-05' }], now);
    const week = weekOf(SHOP, desk, now);
    const [first] = week.days;
    // Two over for the usual scrap: the setup, then shot after shot.
    expect(first?.work[0]).toEqual({
      step: 'pour',
      family: 'football-3/8-lead',
      heads: 32,
      from: at('2026-11-30', '18:30'),
      begun: at('2026-11-30', '18:30'),
      to: at('2026-11-30', '18:30') + (12 + Math.ceil(32 * 0.8)) * MINUTE,
    });
    const plan = planOf(SHOP, desk, now);
    expect(isImpossible(plan)).toBe(false);
    if (isImpossible(plan)) return;
    const shown = week.days.flatMap(({ work }) => work);
    expect(shown).toHaveLength(plan.sessions.length + plan.loads.length);
    expect(new Set(shown.map(({ step }) => step))).toEqual(
      new Set(['pour', 'trim', 'paint', 'clear-eyes', 'bake', 'guard', 'pack']),
    );
  });

  test('a cure begins when the guards are set, runs through the night, and is over on the day it is over', () => {
    const now = at('2026-11-30', '17:00');
    const week = weekOf(SHOP, openDesk([{ spec: FOOTBALL, heads: 12, ships: '2026-12-05' }], now), now);
    const guard = week.days.flatMap(({ work }) => work).find(({ step }) => step === 'guard');
    const cures = week.days.flatMap((day) => day.cures);
    expect(cures.length).toBeGreaterThan(1);
    expect(cures[0]).toMatchObject({ heads: 13, from: guard?.to });
    for (const [place, cure] of cures.slice(1).entries()) expect(cure.from).toBe(cures[place]?.to);
    expect(cures.at(-1)?.to).toBe(cures[0]?.until);
    const pack = week.days.flatMap(({ work }) => work).find(({ step }) => step === 'pack');
    expect(pack?.from).toBeGreaterThanOrEqual(cures[0]?.until ?? Infinity);
  });

  test.each([
    ['spring, when the night is an hour short', '2026-03-07', 23],
    ['autumn, when it is an hour long', '2026-10-31', 25],
  ])('a cure through a night of %s is cut where the wall clock has midnight', (_title, day, hours) => {
    const now = at(day, '07:00');
    const next = addDays(day, 1);
    const week = weekOf(SHOP, openDesk([{ spec: FOOTBALL, heads: 6, ships: addDays(day, 9) }], now), now);
    const nights = [day, next, addDays(next, 1)].map((one) => at(one, '00:00'));
    const cures = [...dayIn(week, day).cures, ...dayIn(week, next).cures];
    const guard = dayIn(week, day).work.filter(({ step }) => step === 'guard');
    const until = (guard.at(-1)?.to ?? 0) + cureMinutes(SHOP, SHOP.garageCelsius) * MINUTE;
    expect((nights[2] ?? 0) - (nights[1] ?? 0)).toBe(hours * HOUR);
    expect(cures).toEqual([
      { heads: 7, from: guard.at(-1)?.to, to: nights[1], until },
      { heads: 7, from: nights[1], to: Math.min(until, nights[2] ?? 0), until },
    ]);
  });

  test('orders ship on the day the plan says, and are promised on theirs', () => {
    const now = at('2026-11-30', '17:00');
    const desk = openDesk(manyAccepted(6, '2026-11-30'), now);
    const week = weekOf(SHOP, desk, now);
    const days = shipDays(SHOP, desk, now);
    for (const { day, ships, promised } of week.days) {
      for (const order of ships) expect(days[order]).toBe(day);
      for (const { order, mark } of promised) {
        expect(desk.orders[order]?.promise.ships).toBe(day);
        expect(mark).toBe((days[order] ?? '') > day ? 'danger' : null);
      }
    }
    expect(week.days.flatMap(({ promised }) => promised)).toHaveLength(6);
  });

  test('a promise that is past stands on today, late', () => {
    const now = at('2026-11-30', '17:00');
    const { days } = weekOf(SHOP, openDesk([{ spec: BALL, heads: 6, ships: '2026-11-27' }], now), now);
    expect(days[0]?.promised).toEqual([{ order: 'K-1001', mark: 'late' }]);
  });

  test.each([
    ['19:00', ['19:00 to 19:25']],
    ['23:50', ['23:50 to 00:00', '00:00 to 00:15']],
  ])('a rack put into the oven at %s stands until its timer, cut at midnight', (clock, stretches) => {
    const now = at('2026-11-30', clock);
    const desk = openDesk([{ spec: BALL, heads: 20, ships: '2026-12-05' }], now);
    const { days } = weekOf(SHOP, { ...desk, ...inTheOven(now, 25) }, now);
    const baking = days.flatMap(({ work }) => work).filter(({ step, begun }) => step === 'bake' && begun === now);
    expect(baking.map(({ from, to }) => `${localClock(from, SHOP.zone)} to ${localClock(to, SHOP.zone)}`)).toEqual(
      stretches,
    );
    expect(days.filter(({ work }) => work.some(({ begun }) => begun === now)).map(({ day }) => day)).toEqual(
      ['2026-11-30', '2026-12-01'].slice(0, stretches.length),
    );
    for (const { heads } of baking) expect(heads).toBe(20);
  });

  test('says why there is no plan where none can be made, and what was promised all the same', () => {
    const now = at('2026-11-30', '17:00');
    const week = weekOf(hoursOnly({}), openDesk(manyAccepted(2, '2026-11-30'), now), now);
    expect(week.why).toEqual([{ code: 'no-hours' }]);
    expect(week.days.flatMap(({ work, cures, ships }) => [...work, ...cures, ...ships])).toEqual([]);
    expect(week.days[2]?.promised).toHaveLength(2);
  });

  test('everything lies within its own local day, whatever is on the bench', () => {
    fc.assert(
      fc.property(fc.nat(12), fc.nat(7 * 24 * 60), fc.constantFrom('2026-03-04', '2026-10-28'), (count, late, day) => {
        const now = at(day, '00:00') + late * MINUTE;
        const week = weekOf(SHOP, openDesk(manyAccepted(count, localDay(now, SHOP.zone)), now), now);
        for (const { day, work, cures } of week.days)
          for (const { from, to } of [...work, ...cures]) {
            expect(from).toBeLessThan(to);
            expect(localDay(from, SHOP.zone)).toBe(day);
            expect(localDay(to - 1, SHOP.zone)).toBe(day);
          }
        expect(JSON.parse(JSON.stringify(week))).toEqual(week);
      }),
      { numRuns: 25 },
    );
  });
});
