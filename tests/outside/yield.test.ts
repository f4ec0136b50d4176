import { expect, test } from 'vitest';
import { castingSettings, headsToCast, meltFor } from '../../src/domain/craft/melt.ts';
import { rackPlaces } from '../../src/domain/craft/oven.ts';

const settings = castingSettings.parse({});

// Common practice, no source: sprue 15–40 % of what is poured for small heads, 8–15 % for large; dross 1–3 %;
// rejects 2–5 % from a warm mold. The magazine how-to "DIY Making and Painting Jigs" and the page "Tips when making
// sinkers" tell of several first shots, remelted; 3–6 is common practice.
test('the starting values lie in the ranges of the trade', () => {
  expect(settings.sprueShare).toBeGreaterThanOrEqual(0.15);
  expect(settings.sprueShare).toBeLessThanOrEqual(0.4);
  expect(settings.meltLoss).toBeGreaterThanOrEqual(0.01);
  expect(settings.meltLoss).toBeLessThanOrEqual(0.03);
  expect(settings.scrapShare).toBeGreaterThanOrEqual(0.02);
  expect(settings.scrapShare).toBeLessThanOrEqual(0.05);
  expect(settings.warmShots).toBeGreaterThanOrEqual(3);
  expect(settings.warmShots).toBeLessThanOrEqual(6);
});

// Worked by hand: 100 good of 10 g, 5 % scrap → 106 cast; 4 warming shots of 2 → 114 × 10 g = 1140 g in cavities;
// ÷ 0.75 = 1520 g poured; ÷ 0.98 = 1551.02 g melted. 1000 g leave in heads, 31.02 g as dross, 520 g go back.
test('a hundred heads of 10 g from a mold of two: 1551 g through the pot, 1031 g out of stock', () => {
  const melt = meltFor({ heads: 100, cavities: 2, metalGrams: 10 }, settings);
  expect(melt.castHeads).toBe(106);
  expect(melt.meltGrams).toBeCloseTo(1551.02, 2);
  expect(melt.returnedGrams).toBeCloseTo(520, 9);
  expect(melt.lostGrams).toBeCloseTo(31.02, 2);
  expect(melt.usedGrams).toBeCloseTo(1031.02, 2);
});

test('all sprue is remelted, so a thicker sprue melts more and uses only its dross', () => {
  const lot = { heads: 100, cavities: 1, metalGrams: 5 };
  const [thin, thick] = [0.15, 0.4].map((sprueShare) => meltFor(lot, { ...settings, sprueShare, meltLoss: 0 }));
  expect(thick?.meltGrams).toBeGreaterThan(thin?.meltGrams ?? Infinity);
  expect(thick?.usedGrams).toBeCloseTo(thin?.usedGrams ?? NaN, 9);
});

test('one in ten rejected from a new mold: a hundred good heads take 112 casts', () =>
  expect(headsToCast(100, 0.1)).toBe(112));

// 12 in ÷ 1 in × 4 rods, worked out on common practice.
test('a toaster oven 12 inches wide with four rods hangs 48 heads an inch apart', () => {
  expect(rackPlaces(12, 1, 4)).toBe(48);
  expect(rackPlaces(12.9, 1, 4)).toBe(48);
});
