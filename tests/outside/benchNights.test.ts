import { describe, expect, test } from 'vitest';
import { newLot, type Lot } from '../../src/domain/bench/lot.ts';
import { readyWork } from '../../src/domain/bench/session.ts';
import {
  addDays,
  instantOf,
  localClock,
  localDay,
  MINUTE,
  type Instant,
  type Zone,
} from '../../src/domain/craft/time.ts';
import { begin } from '../../src/domain/desk/bench.ts';
import type { Card } from '../../src/domain/desk/card.ts';
import { decide } from '../../src/domain/desk/decide.ts';
import { emptyDesk, type Desk } from '../../src/domain/desk/state.ts';
import { usualSpec } from '../../src/domain/order/choices.ts';
import { readerFor } from '../../src/domain/order/reader/read.ts';
import type { Spec } from '../../src/domain/order/spec.ts';
import type { Shop } from '../../src/domain/shop/shop.ts';
import { LAW, SHOP, shopWith } from '../demoShop.ts';

/** The two nights of a year, worked out from the rules named, each with the true length of its local day in hours. */
const NIGHTS: readonly (readonly [Zone, string, number])[] = [
  // 15 U.S.C. §260a(a): from 2 a.m. on the second Sunday of March to 2 a.m. on the first Sunday of November.
  ['America/Chicago', '2026-11-01', 25],
  ['America/Chicago', '2027-03-14', 23],
  // New Zealand Daylight Time Order 2007 (SR 2007/185): from 2 a.m. standard time on the last Sunday of September to 2 a.m. standard
  // time on the first Sunday of April; IANA tz database, Rule NZ.
  ['Pacific/Auckland', '2026-09-27', 23],
  ['Pacific/Auckland', '2027-04-04', 25],
];

/** The clock reads no words. */
const READER = readerFor(SHOP);

const worldOf = (zone: Zone, change: Partial<Shop> = {}) => {
  const shop = shopWith(() => ({ zone, ...change }));
  return { shop, rules: decide({ shop, law: LAW, reader: READER, makers: [101] }) };
};

const spec = usualSpec(
  shopWith(() => ({})),
  { style: 'football', weight: '1/4', paint: 'black' },
) as Spec;

/** A lot whose next step is the oven. */
const cleared = (lot: Lot): Lot => ({
  ...lot,
  good: 20,
  steps: lot.steps.map((one) =>
    ['pour', 'trim', 'paint', 'clear-eyes'].includes(one.step)
      ? { ...one, state: 'done', through: 20, doneAt: 1 }
      : one.step === 'bake'
        ? { ...one, state: 'ready' }
        : one,
  ),
});

type Said = Readonly<{ at: Instant; card: Card }>;

/** Ticks every so many minutes from one instant to another, and all that is said meanwhile. */
function lived(
  zone: Zone,
  desk: Desk,
  span: Readonly<{ from: Instant; to: Instant; every: number }>,
  change: Partial<Shop> = {},
) {
  const { rules } = worldOf(zone, change);
  const said: Said[] = [];
  let now = desk;
  for (let at = span.from; at <= span.to; at += span.every * MINUTE) {
    const { desk: next, cards } = rules(now, { type: 'tick' }, at);
    said.push(...cards.map((card) => ({ at, card })));
    now = next;
  }
  return { said, desk: now };
}

describe.each(NIGHTS)('in %s, the night of %s, whose day has %d hours', (zone, day, hours) => {
  const midnight = instantOf(day, '00:00', zone);

  test('has that many hours by the rule', () =>
    expect((instantOf(addDays(day, 1), '00:00', zone) - midnight) / (60 * MINUTE)).toBe(hours));

  test('an oven put on at half past one holds its true minutes and then reminds every five true minutes', () => {
    const { shop } = worldOf(zone);
    const desk: Desk = { ...emptyDesk, lots: { 'K-1-1': cleared(newLot('K-1-1', 'K-1', spec, 20, {})) } };
    const [load] = readyWork(shop, Object.values(desk.lots));
    const start = instantOf(day, '01:30', zone);
    const { desk: baking } = begin(shop, { ...desk, tickedAt: start }, load as NonNullable<typeof load>, start);
    const due = Object.values(baking.timers).find(({ kind }) => kind === 'bake')?.dueAt ?? 0;
    expect(due - start).toBeGreaterThan(shop.oven.holdMinutes * MINUTE);
    expect(due - start).toBeLessThan((shop.oven.holdMinutes + 20) * MINUTE);
    const { said } = lived(zone, baking, { from: start, to: start + 150 * MINUTE, every: 1 });
    const told = said.flatMap(({ at, card: { say } }) =>
      say.code === 'timer-due' && say.facts.timer.kind === 'bake' ? [at] : [],
    );
    expect((told[0] ?? 0) - due).toBeLessThan(MINUTE);
    for (const [at, one] of told.slice(1).entries()) expect(one - (told[at] ?? 0)).toBe(5 * MINUTE);
    expect(told.length).toBe(1 + Math.floor((start + 150 * MINUTE - (told[0] ?? 0)) / (5 * MINUTE)));
  });

  test.each(['00:30', '01:30', '02:30', '03:30', '07:00'])(
    'a digest for %s comes once on each local day, also when that hour is there twice or not at all',
    (digestAt) => {
      const [from, to] = [instantOf(addDays(day, -1), '12:00', zone), instantOf(addDays(day, 1), '12:00', zone)];
      const { said } = lived(zone, { ...emptyDesk, tickedAt: from }, { from, to, every: 10 }, { digestAt });
      const days = said.flatMap(({ at, card }) => (card.say.code === 'digest' ? [localDay(at, zone)] : []));
      expect(days).toEqual([addDays(day, -1), day, addDays(day, 1)]);
      const first = said.find(({ at, card }) => card.say.code === 'digest' && localDay(at, zone) === day);
      const clock = localClock(first?.at ?? 0, zone);
      expect(clock >= digestAt && clock < (digestAt === '02:30' && hours === 23 ? '03:10' : '24')).toBe(true);
    },
  );

  test('the end of the bench hours is told once on each local day that has hours, at its wall-clock end', () => {
    const always = {
      weekly: { sat: [['08:00', '21:30']], sun: [['08:00', '21:30']], mon: [['08:00', '21:30']] },
      daysOff: [],
      extra: [],
    };
    const from = instantOf(addDays(day, -1), '20:00', zone);
    const desk: Desk = { ...emptyDesk, tickedAt: from, lots: { 'K-1-1': newLot('K-1-1', 'K-1', spec, 20, {}) } };
    const { said } = lived(
      zone,
      desk,
      { from, to: from + 51 * 60 * MINUTE, every: 5 },
      { hours: always as unknown as Shop['hours'] },
    );
    const closed = said.flatMap(({ at, card }) =>
      card.say.code === 'close-down' ? [`${localDay(at, zone)} ${localClock(at, zone)}`] : [],
    );
    expect(closed).toEqual([-1, 0, 1].map((days) => `${addDays(day, days)} 21:30`));
  });
});
