import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { fraction, grams, GRAMS_PER_OUNCE, ounces, parseWeight } from '../../src/domain/craft/weight.ts';

// 1 lb avoirdupois = 453.592 37 g exactly: published unit definition, "pound to ounce" (NIST Handbook 44 App. C and
// SP 811 App. B say the same, from memory). 1 lb = 16 oz = 7000 grains.
const GRAMS_PER_POUND = 453.59237;

test('sixteen ounces are the pound of NIST Handbook 44, to the last digit', () =>
  expect(GRAMS_PER_OUNCE * 16).toBe(GRAMS_PER_POUND));

test('an ounce is 437.5 grains of 64.798 91 mg', () => expect(437.5 * 0.06479891).toBeCloseTo(GRAMS_PER_OUNCE, 12));

// The list of weights is common practice, no source; the grams follow from the definition above.
test.each([
  ['1/16', 1.7718],
  ['1/8', 3.5437],
  ['3/16', 5.3155],
  ['1/4', 7.0874],
  ['5/16', 8.8592],
  ['3/8', 10.6311],
  ['7/16', 12.4029],
  ['1/2', 14.1748],
  ['5/8', 17.7185],
  ['3/4', 21.2621],
  ['1', 28.3495],
  ['3/2', 42.5243],
  ['2', 56.699],
])('%s oz is %d g', (weight, mass) => {
  expect(Math.abs(grams(weight) - mass)).toBeLessThan(0.00005 + 1e-12);
  expect(parseWeight(weight)).toBe(weight);
});

test('one and a half ounces is 3/2, however it is written', () => {
  expect(parseWeight('1 1/2')).toBe('3/2');
  expect(parseWeight('24/16')).toBe('3/2');
});

test('a weight is kept exact: reading what was written gives the same weight, and twice over is twice as heavy', () =>
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 64 }), fc.integer({ min: 1, max: 64 }), (over, under) => {
      const weight = fraction(over, under) ?? '';
      expect(parseWeight(weight)).toBe(weight);
      expect(ounces(weight)).toBeCloseTo(over / under, 12);
      expect(grams(fraction(2 * over, under) ?? '')).toBeCloseTo(2 * grams(weight), 9);
    }),
  ));
