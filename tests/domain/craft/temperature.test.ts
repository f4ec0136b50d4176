import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { celsiusOf, celsiusOfKelvin, fahrenheitOf, kelvinOf } from '../../../src/domain/craft/temperature.ts';

const any = fc.double({ min: -273, max: 2000, noNaN: true });

test('a temperature survives the way to Fahrenheit or kelvin and back', () =>
  fc.assert(
    fc.property(any, (celsius) => {
      expect(celsiusOf(fahrenheitOf(celsius))).toBeCloseTo(celsius, 9);
      expect(celsiusOfKelvin(kelvinOf(celsius))).toBeCloseTo(celsius, 9);
    }),
  ));

test('hotter in one scale is hotter in the other', () =>
  fc.assert(
    fc.property(
      any,
      any,
      (a, b) => void expect(fahrenheitOf(a) < fahrenheitOf(b) || a >= b || b - a < 1e-9).toBe(true),
    ),
  ));
