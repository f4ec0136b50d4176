import { describe, expect, test } from 'vitest';
import { judged, liveThrough, USUAL } from './year.ts';

/* Years of a made-up shop whose truth is drawn from other laws than the planner believes in. The long table over more years and
 * rates is `npm run bench`. */
describe('a year of promises', () => {
  const years = [1, 2].flatMap((seed) => [...liveThrough({ ...USUAL, seed })]);

  test('made at 9 in 10 are kept 88 to 92 times in 100', () => {
    const { kept, orders } = judged(years, 0.9);
    expect(orders).toBeGreaterThan(400);
    expect(kept).toBeGreaterThanOrEqual(0.88);
    expect(kept).toBeLessThanOrEqual(0.92);
  });

  test('stand at most 15 in 100 longer than the work takes', () => {
    expect(judged(years, 0.9).longer).toBeLessThanOrEqual(0.15);
  });

  test.each([0.5, 0.8, 0.9])('made at %d are kept as often as was said, give or take 4 in 100', (confidence) => {
    const { kept, said } = judged(years, confidence);
    expect(Math.abs(kept - said)).toBeLessThan(0.04);
  });

  test.each([0.5, 0.8, 0.9])('on days as fine as the confidence, %d are kept give or take 3 in 100', (confidence) => {
    expect(Math.abs(judged(years, confidence).between - confidence)).toBeLessThan(0.03);
  });

  test('are right again by the 30th order when all minutes in the shop file were half the true ones', () => {
    const bias = { pour: 2, trim: 2, paint: 2, guard: 2, pack: 2 };
    const late = [1, 2, 3].flatMap((seed) =>
      [...liveThrough({ ...USUAL, seed, bias, ordersPerWeek: 3.5, days: 300 })]
        .sort((a, b) => (a.asked < b.asked ? -1 : 1))
        .slice(30),
    );
    const { kept, said } = judged(late, 0.9);
    expect(Math.abs(kept - said)).toBeLessThan(0.05);
  }, 60_000);
});
