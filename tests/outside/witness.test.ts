import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import {
  bodyOf,
  constantsToReach,
  secondsToReach,
  temperatureAfter,
  timeConstant,
} from '../../src/domain/craft/heat.ts';
import { celsiusOf, fahrenheitOf, kelvinOf } from '../../src/domain/craft/temperature.ts';
import { GRAMS_PER_OUNCE, grams } from '../../src/domain/craft/weight.ts';

/** Second witnesses from the registry, neither of them made for this trade: ODEX (E. Hairer's extrapolation code for ordinary differential
 *  equations, in JavaScript) and js-quantities (units of measurement). */
type Solver = {
  denseOutput: boolean;
  absoluteTolerance: number;
  relativeTolerance: number;
  solve: (f: (x: number, y: number[]) => number[], x0: number, y0: number[], xEnd: number) => { y: number[] };
};
type Quantities = (text: string) => { to: (unit: string) => { scalar: number } };
const load = createRequire(import.meta.url);
const { Solver: Odex } = load('odex') as { Solver: new (dimensions: number) => Solver };
const Qty = load('js-quantities') as Quantities;

describe('the cooling equation, integrated by a solver that knows nothing of its solution', () => {
  test.each([
    ['a quarter ounce of lead in 300 °C air', { grams: 7.0874, composition: { Pb: 1 } }, 50, { start: 20, air: 300 }],
    ['half an ounce of tin in 250 °C air', { grams: 9.11, composition: { Sn: 1 } }, 71, { start: 10, air: 250 }],
    [
      'two ounces of hard lead in the oven',
      { grams: 55.2, composition: { Pb: 0.96, Sb: 0.04 } },
      25,
      { start: 25, air: 177 },
    ],
  ])('%s', (_, casting, film, course) => {
    const tau = timeConstant(bodyOf(casting), film);
    const solver = new Odex(1);
    solver.absoluteTolerance = solver.relativeTolerance = 1e-10;
    for (const seconds of [tau / 4, tau, 3 * tau]) {
      const { y } = solver.solve((_x, [t = 0]) => [(course.air - t) / tau], 0, [course.start], seconds);
      expect(temperatureAfter(tau, course, seconds)).toBeCloseTo(y[0] ?? NaN, 6);
      // And the way back: the time to reach what the solver reached.
      const target = y[0] ?? NaN;
      expect(secondsToReach(tau, { ...course, target }) ?? NaN).toBeCloseTo(seconds, 4);
      expect((constantsToReach({ ...course, target }) ?? NaN) * tau).toBeCloseTo(seconds, 4);
    }
  });
});

describe('units, by a library of units', () => {
  test('an ounce', () => expect(GRAMS_PER_OUNCE).toBeCloseTo(Qty('1 oz').to('g').scalar, 6));
  test.each([['1/16'], ['3/32'], ['1/4'], ['3/8'], ['1'], ['3/2']])('%s oz', (weight) => {
    const [over = 0, under = 1] = weight.split('/').map(Number);
    expect(grams(weight)).toBeCloseTo(Qty(`${over / under} oz`).to('g').scalar, 5);
  });
  test.each([250, 325, 350, 375, 400])('%d °F', (degrees) => {
    const celsius = Qty(`${degrees} tempF`).to('tempC').scalar;
    expect(celsiusOf(degrees)).toBeCloseTo(celsius, 6);
    expect(fahrenheitOf(celsius)).toBeCloseTo(degrees, 6);
    expect(kelvinOf(celsius)).toBeCloseTo(Qty(`${degrees} tempF`).to('tempK').scalar, 6);
  });
});
