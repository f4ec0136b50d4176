import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  biot,
  bodyOf,
  constantsToReach,
  garageFactor,
  headFactor,
  heatCount,
  heatSettings,
  isLumped,
  secondsToReach,
  temperatureAfter,
} from '../../../src/domain/craft/heat.ts';
import { PURE_LEAD } from '../../../src/domain/craft/metals.ts';
import { grams } from '../../../src/domain/craft/weight.ts';

const settings = heatSettings.parse({});
const usual = { paintFactor: 1, garageCelsius: 20 };
const lead = (weight: string) => ({ grams: grams(weight), composition: PURE_LEAD });

test("the maker's own head gets the maker's own count", () =>
  expect(heatCount(lead('3/8'), usual, settings)).toEqual({ from: 20, to: 25 }));

test('a head of eight times the metal wants twice the count', () =>
  expect(heatCount({ grams: 8 * grams('3/8'), composition: PURE_LEAD }, usual, settings)).toEqual({
    from: 40,
    to: 50,
  }));

test('black wants about 15 % more', () =>
  expect(heatCount(lead('3/8'), { ...usual, paintFactor: 1.15 }, settings)).toEqual({ from: 23, to: 29 }));

test('a tin head out of the same cavity is lighter but holds more heat, so it wants a longer count', () => {
  const tin = { grams: (grams('3/8') * 7.287) / 11.34, composition: { Sn: 1 } };
  expect(headFactor(tin, settings)).toBeCloseTo((7287 * 227) / (11340 * 129), 9);
});

test('heavier never needs less heat', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0.2, max: 0.7, noNaN: true }),
      (light, more, exponent) => {
        const how = { ...settings, exponent };
        const at = (mass: number) => heatCount({ grams: mass, composition: PURE_LEAD }, usual, how)?.to;
        expect(at(light + more)).toBeGreaterThanOrEqual(at(light) ?? Infinity);
      },
    ),
  ));

test('a colder garage never makes the count shorter', () =>
  fc.assert(
    fc.property(
      fc.double({ min: -20, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      (warm, less) =>
        void expect(garageFactor(warm - less, settings)).toBeGreaterThanOrEqual(
          garageFactor(warm, settings) ?? Infinity,
        ),
    ),
  ));

test('air that is no hotter than the head must get never heats it', () =>
  expect(heatCount(lead('3/8'), usual, { ...settings, airCelsius: 116 })).toBeUndefined());

test('a head already there needs no time, and one the air draws away from it never gets there', () => {
  expect(constantsToReach({ start: 120, air: 300, target: 116 })).toBe(0);
  expect(constantsToReach({ start: 100, air: 20, target: 10 })).toBeUndefined();
  expect(constantsToReach({ start: 20, air: 20, target: 20 })).toBe(0);
});

test('heating for the time it takes to reach a temperature reaches it', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.integer({ min: -20, max: 60 }),
      fc.integer({ min: 61, max: 180 }),
      fc.integer({ min: 181, max: 500 }),
      (tau, start, target, air) => {
        const seconds = secondsToReach(tau, { start, air, target }) ?? NaN;
        expect(temperatureAfter(tau, { start, air }, seconds)).toBeCloseTo(target, 6);
      },
    ),
  ));

test('a two-ounce head is at one temperature throughout, a lead cannonball is not', () => {
  expect(isLumped(bodyOf(lead('2')), 150)).toBe(true);
  expect(biot(bodyOf({ grams: 100_000, composition: PURE_LEAD }), 150)).toBeGreaterThan(0.1);
  expect(isLumped(bodyOf({ grams: 100_000, composition: PURE_LEAD }), 150)).toBe(false);
});

test('a reference that ends before it begins is refused, as is a weight that is not in lowest terms', () => {
  expect(heatSettings.safeParse({ reference: { weight: '3/8', from: 25, to: 20 } }).success).toBe(false);
  expect(heatSettings.safeParse({ reference: { weight: '6/16', from: 20, to: 25 } }).success).toBe(false);
});
