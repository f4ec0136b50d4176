import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { PURE_LEAD } from '../../../src/domain/craft/metals.ts';
import {
  activationOf,
  bakeOf,
  checkCure,
  comeUp,
  equivalentMinutes,
  ovenSettings,
} from '../../../src/domain/craft/oven.ts';
import { grams } from '../../../src/domain/craft/weight.ts';

const settings = ovenSettings.parse({});
const lead = (weight: string) => ({ grams: grams(weight), composition: PURE_LEAD });

test('the heaviest head on the rack decides when the hold begins', () => {
  const bake = bakeOf([lead('1/8'), lead('1'), lead('1/4')], settings);
  expect(bake?.comeUpMinutes).toBe(comeUp(lead('1'), settings));
  expect(bake?.holdMinutes).toBe(20);
});

test('the lightest head gets the hold and the wait for the heaviest', () => {
  const bake = bakeOf([lead('1/8'), lead('2')], settings);
  expect(bake?.longestHoldMinutes).toBeCloseTo(20 + comeUp(lead('2'), settings) - comeUp(lead('1/8'), settings), 9);
  expect(bake?.verdict).toBe('even');
});

test('a hold shorter than the wait for the heaviest bakes the lightest more than twice', () =>
  expect(bakeOf([lead('1/16'), lead('2')], { ...settings, holdMinutes: 5 })?.verdict).toBe('overbaked'));

test('an empty rack has no bake', () => expect(bakeOf([], settings)).toBeUndefined());

test('heads that go in as hot as they must get need no time to come up', () => {
  expect(comeUp(lead('1'), { ...settings, loadedCelsius: 172 })).toBe(0);
  expect(comeUp(lead('1'), { ...settings, loadedCelsius: 190 })).toBe(0);
});

test('heavier never comes up sooner', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      (light, more) =>
        void expect(comeUp({ grams: light + more, composition: PURE_LEAD }, settings)).toBeGreaterThanOrEqual(
          comeUp({ grams: light, composition: PURE_LEAD }, settings),
        ),
    ),
  ));

test('a hotter oven never asks for more minutes, and going there and back changes nothing', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 120, max: 230, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      fc.double({ min: 40, max: 100, noNaN: true }),
      (celsius, more, activation) => {
        const there = equivalentMinutes({ minutes: 20, celsius }, celsius + more, activation);
        expect(there).toBeLessThanOrEqual(20);
        expect(equivalentMinutes({ minutes: there, celsius: celsius + more }, celsius, activation)).toBeCloseTo(20, 8);
      },
    ),
  ));

test('the activation energy found from two windows carries one into the other', () => {
  const [one, other] = [
    { minutes: 10, celsius: 200 },
    { minutes: 20, celsius: 180 },
  ];
  expect(equivalentMinutes(one, 180, activationOf(one, other))).toBeCloseTo(20, 9);
});

test('a bake that was too cool is short, one just as the sheet says is enough, one that went on is long', () => {
  const sheet = { minutes: 20, celsius: 177 };
  expect(checkCure({ minutes: 20, celsius: 165 }, sheet, settings).verdict).toBe('short');
  expect(checkCure(sheet, sheet, settings)).toEqual({ equivalentMinutes: 20, verdict: 'enough' });
  expect(checkCure({ minutes: 20, celsius: 204 }, sheet, settings).verdict).toBe('long');
});
