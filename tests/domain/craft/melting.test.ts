import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { bakeable, bakeGuardSettings, hottestBake, solidus, TRACE } from '../../../src/domain/craft/melting.ts';

const guard = bakeGuardSettings.parse({});

test('a trace of tin in lead changes nothing, a little more makes it melt at the solder point', () => {
  expect(solidus({ Pb: 1 - TRACE, Sn: TRACE })).toBe(327.46);
  expect(solidus({ Pb: 0.998, Sn: 0.002 })).toBe(183);
});

test('antimony between two rows of the table takes the lower melting point', () => {
  expect(solidus({ Pb: 0.99, Sb: 0.01 })).toBe(313);
  expect(solidus({ Pb: 0.98, Sb: 0.02 })).toBe(252);
});

test('adding a metal to the pot never raises the point where melting begins', () =>
  fc.assert(
    fc.property(
      fc.constantFrom('Sb', 'Sn', 'Bi', 'Zn'),
      fc.double({ min: 0.0001, max: 0.9, noNaN: true }),
      fc.double({ min: 0, max: 0.09, noNaN: true }),
      (element, much, little) =>
        void expect(solidus({ Pb: 1 - much - little, [element]: much + little })).toBeLessThanOrEqual(
          solidus({ Pb: 1 - much, [element]: much }),
        ),
    ),
  ));

test('a metal of nothing cannot have a melting point', () => expect(() => solidus({})).toThrow('at least one metal'));

test('the oven may be set just as hot as the guard allows and no hotter', () => {
  expect(hottestBake(231.93, guard)).toBeCloseTo(191.93, 9);
  expect(bakeable(217, 177, guard)).toBe(true);
  expect(bakeable(216.9, 177, guard)).toBe(false);
});
