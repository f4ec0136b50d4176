import { expect, test } from 'vitest';
import { PURE_LEAD } from '../../src/domain/craft/metals.ts';
import { coverage, headArea, powderOn, powderSettings } from '../../src/domain/craft/powder.ts';
import { grams } from '../../src/domain/craft/weight.ts';

/** Exact by definition: 1 lb, 1 ft. */
const KG_PER_POUND = 0.45359237;
const M2_PER_FT2 = 0.3048 ** 2;
const inFeetPerPound = (m2PerKg: number): number => (m2PerKg / M2_PER_FT2) * KG_PER_POUND;

// A gram a cubic centimetre thick by a mil: 1000 cm³ over 0.00254 cm. The pages print 192.3, 192.4 and 39.8.
test('a kilogram of density 1 covers 39.37 m² a mil thick, a pound 192.2 ft²', () => {
  const one = coverage({ filmMils: 1, specificGravity: 1, utilisation: 1 });
  expect(one).toBeCloseTo(39.37, 2);
  expect(inFeetPerPound(one)).toBeCloseTo(192.2, 1);
});

// Finishing trade magazine, Q&A "Coverage of Powder": 39.8 × 0.95 / (1.5 × 3) = 8.4 m²/kg. Its 39.8 is 1 % above the
// exact constant, which gives 8.31: hence 1.5 %, and no more.
test('the magazine’s worked check is met within the rounding of its constant', () => {
  const exact = coverage({ filmMils: 3, specificGravity: 1.5, utilisation: 0.95 });
  expect(exact).toBeCloseTo(8.31, 2);
  expect(Math.abs(exact / 8.4 - 1)).toBeLessThan(0.015);
  expect(Math.abs(exact / ((39.8 * 0.95) / 4.5) - 1)).toBeLessThan(0.015);
});

// "Powder Coating Coverage Chart": density 1.6, 2 mil, all of it used: 60.1 ft²/lb.
test('the coverage chart has 60.1 ft² a pound for density 1.6 at 2 mil', () =>
  expect(inFeetPerPound(coverage({ filmMils: 2, specificGravity: 1.6, utilisation: 1 }))).toBeCloseTo(60.1, 1));

// Worked out by area × film × density; the factor 1.3 for keeper, eye and shape and the density 1.5 are common practice, no source.
test.each([
  ['1/8', 2.9, 0.022, 0.033, 0.044],
  ['1/4', 4.6, 0.035, 0.053, 0.07],
  ['3/8', 6.02, 0.046, 0.069, 0.092],
  ['1/2', 7.3, 0.056, 0.083, 0.111],
  ['1', 11.6, 0.088, 0.132, 0.176],
])('a head of %s oz takes the powder of the table at 2, 3 and 4 mil', (weight, cm2, two, three, four) => {
  const head = { grams: grams(weight), composition: PURE_LEAD };
  expect(Math.abs(headArea(head, powderSettings.parse({})) / cm2 - 1)).toBeLessThan(0.002);
  [two, three, four].forEach((printed, at) =>
    expect(Math.abs(powderOn(head, powderSettings.parse({ filmMils: at + 2 })) - printed)).toBeLessThanOrEqual(0.0009),
  );
});

test('a hundred half-ounce heads at 3 mil carry about 8.3 g', () =>
  expect(
    100 * powderOn({ grams: grams('1/2'), composition: PURE_LEAD }, powderSettings.parse({ filmMils: 3 })),
  ).toBeCloseTo(8.34, 1));
