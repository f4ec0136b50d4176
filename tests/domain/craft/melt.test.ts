import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { castingSettings, headsToCast, meltFor } from '../../../src/domain/craft/melt.ts';

const share = (most: number) => fc.double({ min: 0, max: most, noNaN: true });
const settings = fc.record({
  sprueShare: share(0.9),
  scrapShare: share(0.9),
  meltLoss: share(0.5),
  warmShots: fc.integer({ min: 0, max: 20 }),
});
const lots = fc.record({
  heads: fc.integer({ min: 1, max: 500 }),
  cavities: fc.integer({ min: 1, max: 8 }),
  metalGrams: fc.double({ min: 0.5, max: 120, noNaN: true }),
});

test('no gram is lost: what is melted is kept, returned to the pot, or dross', () =>
  fc.assert(
    fc.property(lots, settings, (lot, how) => {
      const melt = meltFor(lot, how);
      expect(melt.keptGrams + melt.returnedGrams + melt.lostGrams).toBeCloseTo(melt.meltGrams, 5);
      expect(melt.usedGrams).toBeCloseTo(melt.meltGrams - melt.returnedGrams, 5);
      expect(melt.returnedGrams).toBeGreaterThanOrEqual(-1e-6);
    }),
  ));

test('more heads never need less metal', () =>
  fc.assert(
    fc.property(
      lots,
      settings,
      (lot, how) =>
        void expect(meltFor({ ...lot, heads: lot.heads + 1 }, how).meltGrams).toBeGreaterThanOrEqual(
          meltFor(lot, how).meltGrams,
        ),
    ),
  ));

test('forty heads of 10 g with a fifth in sprue, two hundredths in dross, one scrap in five and one warming shot of two', () => {
  const melt = meltFor(
    { heads: 40, cavities: 2, metalGrams: 10 },
    { sprueShare: 0.2, scrapShare: 0.2, meltLoss: 0.02, warmShots: 1 },
  );
  // 50 cast + 2 warming = 520 g in cavities, 650 g poured, 663.27 g melted
  expect(melt.castHeads).toBe(50);
  expect(melt.keptGrams).toBe(400);
  expect(melt.returnedGrams).toBeCloseTo(250, 9);
  expect(melt.meltGrams).toBeCloseTo(663.2653, 4);
  expect(melt.usedGrams).toBeCloseTo(413.2653, 4);
});

test('five scrap in a hundred: 95 good heads take exactly 100 casts, 96 take 102', () => {
  expect(headsToCast(95, 0.05)).toBe(100);
  expect(headsToCast(96, 0.05)).toBe(102);
  expect(headsToCast(7, 0)).toBe(7);
});

test('a shop file that says nothing of casting gets the usual starting values', () =>
  expect(castingSettings.parse({})).toEqual({ sprueShare: 0.25, scrapShare: 0.05, meltLoss: 0.02, warmShots: 4 }));
