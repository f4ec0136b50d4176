import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  cureDone,
  cureLeft,
  cureTime,
  epoxySettings,
  gluePlan,
  guardsPerMix,
  potLife,
} from '../../../src/domain/craft/epoxy.ts';

const settings = epoxySettings.parse({});
const warmth = fc.double({ min: 10, max: 45, noNaN: true });

test('warmer never cures slower and never leaves more time in the cup', () =>
  fc.assert(
    fc.property(warmth, fc.double({ min: 0, max: 20, noNaN: true }), (celsius, more) => {
      const [cool, warm] = [cureTime(celsius, settings), cureTime(celsius + more, settings)];
      expect(cool.ok && warm.ok && warm.fullHours <= cool.fullHours).toBe(true);
      expect(potLife(celsius + more, settings)).toBeLessThanOrEqual(potLife(celsius, settings));
    }),
  ));

test('a garage colder than the glue stands is refused, with how warm it must be', () => {
  expect(cureTime(9.9, settings)).toEqual({ ok: false, code: 'epoxy-too-cold', celsius: 9.9, leastCelsius: 10 });
  expect(gluePlan(20, 5, settings)).toEqual({ ok: false, code: 'epoxy-too-cold', celsius: 5, leastCelsius: 10 });
  expect(cureTime(10, settings).ok).toBe(true);
});

test('overnight and full cure are two times, and only full cure waits longer in the cold', () => {
  expect(cureTime(23, settings)).toEqual({ ok: true, fullHours: 24, overnightHours: 10 });
  expect(cureTime(13, settings)).toEqual({ ok: true, fullHours: 48, overnightHours: 10 });
});

test('a hundred guards at 23 °C are eight mixes of thirteen', () =>
  expect(gluePlan(100, 23, settings)).toMatchObject({ ok: true, mixes: 8, guardsPerMix: 13, potLifeMinutes: 5 }));

test('no guards, no mix', () => expect(gluePlan(0, 23, settings)).toMatchObject({ ok: true, mixes: 0, cm3: 0 }));

test('even on the hottest day one mix sets one guard', () => expect(guardsPerMix(80, settings)).toBe(1));

test('mixes are enough for every guard, and one fewer would not be', () =>
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), warmth, (guards, celsius) => {
      const plan = gluePlan(guards, celsius, settings);
      if (!plan.ok) throw new Error('warm enough');
      expect(plan.mixes * plan.guardsPerMix).toBeGreaterThanOrEqual(guards);
      expect((plan.mixes - 1) * plan.guardsPerMix).toBeLessThan(guards);
    }),
  ));

test('six hours at 23 °C and twelve at 13 °C are each a quarter of a cure, an hour of frost is nothing', () => {
  expect(cureDone([{ hours: 6, celsius: 23 }], settings)).toBeCloseTo(0.25, 12);
  expect(
    cureDone(
      [
        { hours: 6, celsius: 23 },
        { hours: 12, celsius: 13 },
        { hours: 1, celsius: 0 },
      ],
      settings,
    ),
  ).toBeCloseTo(0.5, 12);
});

test('when the garage cools, what is left of a running cure is counted anew', () => {
  expect(cureLeft([{ hours: 12, celsius: 23 }], 13, settings)).toEqual({ ok: true, fullHours: 24, overnightHours: 0 });
  expect(cureLeft([{ hours: 4, celsius: 23 }], 23, settings)).toEqual({ ok: true, fullHours: 20, overnightHours: 6 });
  expect(cureLeft([{ hours: 12, celsius: 23 }], 5, settings).ok).toBe(false);
});

test('a cure that is done stays done', () =>
  expect(cureLeft([{ hours: 30, celsius: 23 }], 13, settings)).toEqual({ ok: true, fullHours: 0, overnightHours: 0 }));
