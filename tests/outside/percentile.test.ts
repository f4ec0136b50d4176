import { describe, expect, test } from 'vitest';
import { quantile } from '../../src/domain/plan/quantile.ts';

// R. J. Hyndman and Y. Fan, "Sample Quantiles in Statistical Packages", The American Statistician 50(4), 1996: type 7,
// h = (n − 1)p + 1, the default of R and the "inclusive" method of database manuals, from which the rows of 0…999 are.
describe('percentiles of type 7', () => {
  const thousand = Array.from({ length: 1000 }, (_, i) => i);

  test.each([
    [0.25, 249.75],
    [0.5, 499.5],
    [0.9, 899.1],
    [0.95, 949.05],
    [0.99, 989.01],
    [0.999, 998.001],
  ])('of 0 to 999 at %d is %d', (p, value) => {
    expect(quantile(thousand, p)).toBeCloseTo(value, 9);
  });

  test('of 15, 20, 35, 40, 50 at 0.4 is 29, in any order', () => {
    expect(quantile([40, 15, 50, 20, 35], 0.4)).toBeCloseTo(29, 9);
  });

  test('at 0 is the smallest and at 1 the largest', () => {
    expect([quantile([3, 1, 2], 0), quantile([3, 1, 2], 1)]).toEqual([1, 3]);
  });
});
