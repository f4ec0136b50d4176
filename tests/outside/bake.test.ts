import { expect, test } from 'vitest';
import { PURE_LEAD } from '../../src/domain/craft/metals.ts';
import { activationOf, bakeOf, comeUp, equivalentMinutes, ovenSettings } from '../../src/domain/craft/oven.ts';
import { celsiusOf, fahrenheitOf, kelvinOf } from '../../src/domain/craft/temperature.ts';
import { grams } from '../../src/domain/craft/weight.ts';

// °C = (°F − 32)/1.8, exact by definition of the scale.
test.each([
  [350, 176.67],
  [400, 204.44],
  [325, 162.78],
  [375, 190.56],
  [250, 121.11],
])('%d °F is %d °C', (fahrenheit, celsius) => expect(celsiusOf(fahrenheit)).toBeCloseTo(celsius, 2));

test('200 °C is 392 °F, the freezing point is 273.15 K', () => {
  expect(fahrenheitOf(200)).toBe(392);
  expect(kelvinOf(0)).toBe(273.15);
});

// Coatings trade magazine, Sept 2022, "Low Temperature Cure Powder Coating Technology Concepts": 350–400 °F at metal
// temperature for 5–20 minutes; "How to Cure Powder Coating Properly": 200 °C for 10 minutes.
test('the usual setting lies in the published window of 350 to 400 °F and 5 to 20 minutes at metal temperature', () => {
  const { celsius, holdMinutes } = ovenSettings.parse({});
  expect(celsius).toBeGreaterThanOrEqual(celsiusOf(350));
  expect(celsius).toBeLessThanOrEqual(celsiusOf(400));
  expect(holdMinutes).toBeGreaterThanOrEqual(5);
  expect(holdMinutes).toBeLessThanOrEqual(20);
});

// Worked out from Arrhenius with R = 8.314 462 618 J/(mol·K) (CODATA) on two windows of one powder sheet.
test.each([
  ['10 min at 200 °C and 20 at 180 °C', { minutes: 10, celsius: 200 }, { minutes: 20, celsius: 180 }, 61.8],
  [
    '10 min at 400 °F and 20 at 350 °F',
    { minutes: 10, celsius: celsiusOf(400) },
    { minutes: 20, celsius: celsiusOf(350) },
    44.6,
  ],
])('%s fix the activation energy', (_, one, other, kilojoules) => {
  expect(activationOf(one, other)).toBeCloseTo(kilojoules, 1);
  expect(activationOf(other, one)).toBeCloseTo(kilojoules, 1);
});

// Worked out from 20 min at 350 °F. Energies of 60–90 kJ/mol for these powders are from memory.
test.each([
  [50, 300, 48.2],
  [50, 325, 30.6],
  [50, 375, 13.4],
  [50, 400, 9.2],
  [62, 300, 59.6],
  [62, 325, 33.9],
  [62, 375, 12.2],
  [62, 400, 7.6],
  [80, 300, 81.7],
  [80, 325, 39.5],
  [80, 375, 10.5],
  [80, 400, 5.8],
])('with %d kJ/mol, 20 min at 350 °F cure as far as, at %d °F, %d min', (energy, fahrenheit, minutes) =>
  expect(
    Math.abs(equivalentMinutes({ minutes: 20, celsius: celsiusOf(350) }, celsiusOf(fahrenheit), energy) - minutes),
  ).toBeLessThanOrEqual(0.051),
);

// Worked out for lead spheres in an oven at 177 °C until 172 °C, from 25 °C and loaded hot at 120 °C, with 25 (fan) and 15 (still) W/(m²·K).
test.each([
  ['1/8', 4.7, 7.8, 3.3, 5.6],
  ['3/8', 6.7, 11.2, 4.8, 8.0],
  ['1/2', 7.4, 12.4, 5.3, 8.8],
  ['1', 9.3, 15.6, 6.7, 11.1],
  ['2', 11.8, 19.6, 8.4, 14.0],
])('%s oz comes up to heat in the minutes of the table', (weight, fan, still, hotFan, hotStill) => {
  const lead = { grams: grams(weight), composition: PURE_LEAD };
  const minutes = (filmCoefficient: number, loadedCelsius: number) =>
    comeUp(lead, ovenSettings.parse({ filmCoefficient, loadedCelsius }));
  const got = [minutes(25, 25), minutes(15, 25), minutes(25, 120), minutes(15, 120)];
  [fan, still, hotFan, hotStill].forEach((printed, at) =>
    expect(Math.abs((got[at] ?? NaN) - printed)).toBeLessThanOrEqual(0.06),
  );
});

// So the usual 20–25 minutes from door-close leave a two-ounce head only about 8–13 minutes at heat in a fan oven.
test('twenty to twenty-five minutes from closing the door are not a bake for two ounces', () => {
  const up = comeUp({ grams: grams('2'), composition: PURE_LEAD }, ovenSettings.parse({}));
  expect(20 - up).toBeCloseTo(8.2, 1);
  expect(25 - up).toBeCloseTo(13.2, 1);
});

// A powder maker's page, "Powder Coating Cure Time and Temperature": many powders stand 50–100 % overbake.
test('an eighth beside two ounces stays within twice the hold', () => {
  const rack = ['1/8', '2'].map((weight) => ({ grams: grams(weight), composition: PURE_LEAD }));
  const bake = bakeOf(rack, ovenSettings.parse({}));
  expect(bake?.overbake).toBeCloseTo((20 + 11.8 - 4.7) / 20, 1);
  expect(bake?.overbake).toBeLessThanOrEqual(2);
});
