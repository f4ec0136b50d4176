import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  density,
  ELEMENTS,
  elementsIn,
  leadShare,
  leastConductivity,
  PURE_LEAD,
  recast,
  specificHeat,
  volumetricHeat,
  type Composition,
} from '../../../src/domain/craft/metals.ts';

const anyAlloy: fc.Arbitrary<Composition> = fc
  .uniqueArray(fc.constantFrom(...ELEMENTS), { minLength: 1 })
  .chain((elements) =>
    fc
      .array(fc.integer({ min: 1, max: 1000 }), { minLength: elements.length, maxLength: elements.length })
      .map((parts) => {
        const sum = parts.reduce((a, b) => a + b, 0);
        return Object.fromEntries(elements.map((element, at) => [element, (parts[at] ?? 0) / sum]));
      }),
  );

test('an alloy is no lighter than its lightest metal and no heavier than its heaviest', () =>
  fc.assert(
    fc.property(anyAlloy, (alloy) => {
      const pure = elementsIn(alloy).map((element) => density({ [element]: 1 }));
      expect(density(alloy)).toBeGreaterThanOrEqual(Math.min(...pure) * (1 - 1e-12));
      expect(density(alloy)).toBeLessThanOrEqual(Math.max(...pure) * (1 + 1e-12));
    }),
  ));

test('pouring a head of another metal and back again gives the weight it began with', () =>
  fc.assert(
    fc.property(
      anyAlloy,
      fc.double({ min: 0.1, max: 500, noNaN: true }),
      (alloy, grams) => void expect(recast(recast(grams, PURE_LEAD, alloy), alloy, PURE_LEAD)).toBeCloseTo(grams, 9),
    ),
  ));

test('a share of nothing is not in the metal', () => expect(elementsIn({ Sn: 0, Pb: 1 })).toEqual(['Pb']));

test('bismuth-tin has no lead, hard lead has what is left by the antimony', () => {
  expect(leadShare({ Bi: 0.58, Sn: 0.42 })).toBe(0);
  expect(leadShare({ Pb: 0.96, Sb: 0.04 })).toBe(0.96);
});

test('the heat an alloy holds is its density times its specific heat', () => {
  expect(specificHeat({ Pb: 0.5, Sn: 0.5 })).toBeCloseTo(178, 10);
  expect(volumetricHeat(PURE_LEAD)).toBeCloseTo(1_462_860, 5);
});

test('the poorest conductor in it stands for an alloy', () =>
  expect(leastConductivity({ Bi: 0.58, Sn: 0.42 })).toBe(7.97));
