import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { coverage, headArea, powderFor, powderOn, powderSettings } from '../../../src/domain/craft/powder.ts';
import { PURE_LEAD } from '../../../src/domain/craft/metals.ts';
import { grams } from '../../../src/domain/craft/weight.ts';

const settings = powderSettings.parse({});
const head = { grams: grams('1/2'), composition: PURE_LEAD };

test('the powder on heads is their surface over what a kilogram covers', () => {
  const squareMetres = (headArea(head, settings) / 10_000) * 100;
  expect(powderFor(head, 100, settings)).toBeCloseTo((squareMetres / coverage(settings)) * 1000, 9);
});

test('a hundred half-ounce heads take 8.3 g on them and a tenth more from the bed', () => {
  expect(powderOn(head, settings) * 100).toBeCloseTo(8.34, 2);
  expect(powderFor(head, 100, settings)).toBeCloseTo(9.26, 2);
});

test('a head of tin out of the same cavity takes the same powder', () =>
  expect(powderOn({ grams: (head.grams * 7.287) / 11.34, composition: { Sn: 1 } }, settings)).toBeCloseTo(
    powderOn(head, settings),
    9,
  ));

test('a bigger head never takes less powder', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      (light, more) =>
        void expect(powderOn({ grams: light + more, composition: PURE_LEAD }, settings)).toBeGreaterThanOrEqual(
          powderOn({ grams: light, composition: PURE_LEAD }, settings),
        ),
    ),
  ));
