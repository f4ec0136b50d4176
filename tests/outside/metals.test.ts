import { expect, test } from 'vitest';
import { headMass } from '../../src/domain/craft/mass.ts';
import { bakeable, bakeGuardSettings, solidus } from '../../src/domain/craft/melting.ts';
import {
  density,
  leastConductivity,
  PURE_LEAD,
  recast,
  specificHeat,
  type Composition,
} from '../../src/domain/craft/metals.ts';
import { celsiusOf, celsiusOfKelvin, kelvinOf } from '../../src/domain/craft/temperature.ts';

const BISMUTH_TIN: Composition = { Bi: 0.58, Sn: 0.42 };
const hard = (antimony: number): Composition => ({ Pb: 1 - antimony, Sb: antimony });
const within = (share: number, value: number, published: number): void =>
  expect(Math.abs(value / published - 1)).toBeLessThanOrEqual(share);

// Mechanical Engineers' Handbook vol. 4, "Heat-Transfer Fundamentals", Table 1, p. 150 (the same row is in Incropera
// & DeWitt, Appendix A, Table A.1): lead 11 340 kg/m³, 129 J/(kg·K), 35.3 W/(m·K), melting at 601 K.
test('lead is as the Mechanical Engineers’ Handbook prints it', () => {
  expect(density(PURE_LEAD)).toBeCloseTo(11.34, 10);
  expect(specificHeat(PURE_LEAD)).toBe(129);
  expect(leastConductivity(PURE_LEAD)).toBe(35.3);
  expect(kelvinOf(solidus(PURE_LEAD)).toFixed(0)).toBe('601');
});

// Encyclopedia lead data page: 600.61 K, 327.46 °C, 621.43 °F.
test('lead melts at one temperature in three scales', () => {
  expect(solidus(PURE_LEAD)).toBeCloseTo(celsiusOfKelvin(600.61), 6);
  expect(solidus(PURE_LEAD)).toBeCloseTo(celsiusOf(621.43), 1);
});

// Mechanical Engineers' Handbook, same table: tin 7310 kg/m³, 227, 66.6. The 7.287 used here is the CRC Handbook's, from memory.
test('tin is as the handbook prints it, and melts at 231.93 °C (element-properties page)', () => {
  within(0.004, density({ Sn: 1 }), 7.31);
  expect(specificHeat({ Sn: 1 })).toBe(227);
  expect(leastConductivity({ Sn: 1 })).toBe(66.6);
  expect(solidus({ Sn: 1 })).toBe(231.93);
});

// Element-properties page: 122 J/(kg·K). Density 9.79 and 271.4 °C from memory of the CRC Handbook.
test('bismuth', () => {
  expect(specificHeat({ Bi: 1 })).toBe(122);
  expect(density({ Bi: 1 })).toBeCloseTo(9.79, 10);
  expect(solidus({ Bi: 1 })).toBe(271.4);
});

// Die-casters' data pages "Zinc Properties" and "Alloy Specifications" (alloy no. 3, ASTM B86 AG40A): 6.6 g/cm³,
// 381–387 °C = 718–728 °F, 419 J/(kg·K).
test('die-casting zinc no. 3 is as die-casters print it', () => {
  expect(density({ Zn: 1 })).toBeCloseTo(6.6, 10);
  expect(specificHeat({ Zn: 1 })).toBe(419);
  expect(solidus({ Zn: 1 })).toBe(381);
  within(0.001, solidus({ Zn: 1 }), celsiusOf(718));
});

// ASM Handbook vol. 2, "4 % / 6 % antimonial lead": 11.04, 10.88 — from memory; the mixture rule must come within 0.1 %.
test.each([
  [0.04, 11.04],
  [0.06, 10.88],
])('the mixture rule finds the handbook density of lead with %d antimony (from memory)', (antimony, published) =>
  within(0.001, density(hard(antimony)), published),
);

// Worked out from 11.34, 6.697, 7.287 and 9.79 by 1/ρ = Σ w/ρ.
test.each([
  ['1 % antimony', hard(0.01), 11.26],
  ['2 % antimony', hard(0.02), 11.19],
  ['4 % antimony', hard(0.04), 11.034],
  ['6 % antimony', hard(0.06), 10.887],
  ['bismuth-tin', BISMUTH_TIN, 8.556],
])('density by mixture: %s', (_, alloy, published) => within(0.0005, density(alloy), published));

// Specific heats of the alloys, from memory of handbook tables, good to a few per cent.
test.each([
  ['1 % antimony', hard(0.01), 130],
  ['2 % antimony', hard(0.02), 131],
  ['4 % antimony', hard(0.04), 133],
  ['6 % antimony', hard(0.06), 135],
  ['bismuth-tin', BISMUTH_TIN, 167],
])('specific heat by mixture: %s (from memory)', (_, alloy, published) =>
  within(0.015, specificHeat(alloy), published),
);

// CRC Handbook of Chemistry and Physics, §15 p. 15-18, "Metals and Alloys with Low Melting Temperature".
// The table's composition of the bismuth-tin eutectic (70–30 by mass) disagrees with the phase diagram, which has
// 43 atom-% bismuth; only its temperature is used. The lead-antimony eutectic is the encyclopedia's "Hard lead" page.
test.each([
  ['bismuth-tin', BISMUTH_TIN, 138.5],
  ['bismuth-lead, as the table prints it', { Bi: 0.555, Pb: 0.445 }, 124],
  ['bismuth-lead-tin', { Bi: 0.525, Pb: 0.32, Sn: 0.155 }, 95],
  ['lead-tin, as the table prints it', { Pb: 0.381, Sn: 0.619 }, 183],
  ['lead with a piece of bismuth in it', { Pb: 0.97, Bi: 0.03 }, 124],
  ['lead with a bit of solder in it', { Pb: 0.99, Sn: 0.01 }, 183],
  ['hard lead with a bit of solder in it', { Pb: 0.95, Sb: 0.04, Sn: 0.01 }, 183],
  ['lead with 11.1 % antimony', hard(0.111), 252],
  ['lead with 4 % antimony (from memory, ASM Handbook vol. 2)', hard(0.04), 252],
  ['lead with 6 % antimony (from memory, ASM Handbook vol. 2)', hard(0.06), 252],
  ['lead with 1 % antimony (from memory, ASM Handbook vol. 2)', hard(0.01), 313],
])('begins to melt: %s', (_, alloy, celsius) => expect(solidus(alloy)).toBe(celsius));

test('43 atoms of bismuth in a hundred are 57 parts of it by mass, so the eutectic head is 58/42', () => {
  const atoms = 0.57 / 208.98 / (0.57 / 208.98 + 0.43 / 118.71);
  expect(atoms).toBeCloseTo(0.43, 2);
});

// From those temperatures: oven at 350 °F, its swing 15 °C and the margin 25 °C being common practice, no source.
test.each([
  ['soft lead', PURE_LEAD, true],
  ['hard lead', hard(0.04), true],
  ['tin', { Sn: 1 }, true],
  ['bismuth', { Bi: 1 }, true],
  ['zinc alloy no. 3', { Zn: 1 }, true],
  ['bismuth-tin', BISMUTH_TIN, false],
  ['lead with stray bismuth', { Pb: 0.97, Bi: 0.03 }, false],
  ['bismuth, lead and tin', { Bi: 0.5, Pb: 0.3, Sn: 0.2 }, false],
  ['lead with solder', { Pb: 0.9, Sn: 0.1 }, false],
])('%s may be baked at 350 °F: %s', (_, alloy: Composition, may) =>
  expect(bakeable(solidus(alloy), celsiusOf(350), bakeGuardSettings.parse({}))).toBe(may),
);

// Ratio of densities to lead's, worked out from the table above.
test.each([
  ['2 % antimony', hard(0.02), 0.986],
  ['4 % antimony', hard(0.04), 0.974],
  ['6 % antimony', hard(0.06), 0.959],
  ['bismuth', { Bi: 1 }, 0.863],
  ['bismuth-tin', BISMUTH_TIN, 0.755],
  ['tin', { Sn: 1 }, 0.643],
  ['zinc alloy no. 3', { Zn: 1 }, 0.582],
])('the same cavity in %s: of a gram of lead comes this much', (_, alloy: Composition, ratio) =>
  within(0.0015, recast(1, PURE_LEAD, alloy), ratio),
);

// Worked out from the densities; 13.80 uses the handbook's 11.04 for 4 % antimony, the mixture rule's 11.034 gives 13.79.
test.each([
  ['4 % antimony', hard(0.04), 13.8],
  ['bismuth-tin', BISMUTH_TIN, 10.7],
  ['tin', { Sn: 1 }, 9.11],
  ['zinc alloy no. 3', { Zn: 1 }, 8.25],
])('a half-ounce cavity poured in %s gives %s g', (_, composition: Composition, mass) =>
  expect(Math.abs(headMass({ weight: '1/2', composition }).metalGrams - mass)).toBeLessThanOrEqual(0.01),
);
