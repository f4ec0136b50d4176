import { describe, expect, test } from 'vitest';
import { normalQuantile, orderQuantity, reorderPoint, safetyStock } from '../../src/domain/stock/reorder.ts';

/** Worked examples of inventory control as they are printed in textbooks and course pages. */
const noSpread = { sigma: 0, leadSigma: 0 };

describe('the economic order quantity', () => {
  // A course page, "Q. 12.EX.3 Finding the optimal order size", and slides "E O Q calculations";
  // attributed, from memory, to Heizer & Render, Operations Management, chapter 12, example 3.
  test('1000 a year at 10 an order and 0.50 to keep one: 200 at a time', () =>
    expect(orderQuantity({ yearly: 1000, perOrder: 10, keeping: 0.5 })).toBe(200));
  test('1200 a year instead: 219', () =>
    expect(Math.round(orderQuantity({ yearly: 1200, perOrder: 10, keeping: 0.5 }))).toBe(219));
  test('then ordering and keeping cost the same, 50 a year each', () => {
    const lot = orderQuantity({ yearly: 1000, perOrder: 10, keeping: 0.5 });
    expect([(1000 / lot) * 10, (lot / 2) * 0.5]).toEqual([50, 50]);
  });
  // The problem as on slides to Nahmias, Production and Operations Analysis, example 4.1; the answer worked out.
  test('60 a week at 0.02 each, 12 an order, a quarter of its price a year to keep: 3870, enough for 1.24 years', () => {
    const lot = orderQuantity({ yearly: 60 * 52, perOrder: 12, keeping: 0.02 * 0.25 });
    expect(Math.round(lot)).toBe(3870);
    expect(lot / (60 * 52)).toBeCloseTo(1.24, 2);
  });
  test('what is never used is never ordered', () =>
    expect(orderQuantity({ yearly: 0, perOrder: 10, keeping: 0.5 })).toBe(0));
});

describe('the reorder point', () => {
  // A scanned page, "Chapter 12 Managing Inventory, p. 543, Solution" (equation 12-16).
  test('60 a week, six weeks give or take two, nine times in ten: 513.6', () =>
    expect(reorderPoint({ demand: 60, sigma: 0, lead: 6, leadSigma: 2, z: 1.28 })).toBeCloseTo(513.6, 6));
  // An exercise page after Render & Stair; the answer worked out.
  test('5 a day with a deviation of 2, three days, 95 %: 20.72', () => {
    const terms = { demand: 5, sigma: 2, lead: 3, leadSigma: 0, z: 1.65 };
    expect(safetyStock(terms)).toBeCloseTo(5.716, 3);
    expect(reorderPoint(terms)).toBeCloseTo(20.72, 2);
  });
  // From memory, Heizer & Render.
  test('15 a day with a deviation of 5, two days, 90 %: 39', () =>
    expect(reorderPoint({ demand: 15, sigma: 5, lead: 2, leadSigma: 0, z: 1.28 })).toBeCloseTo(39.05, 2));
  test('350 in a lead time with a deviation of 10, 5 % stock-outs: 16.5 in reserve, 366.5', () => {
    const terms = { demand: 350, sigma: 10, lead: 1, leadSigma: 0, z: 1.65 };
    expect(safetyStock(terms)).toBeCloseTo(16.5, 9);
    expect(reorderPoint(terms)).toBeCloseTo(366.5, 9);
  });
  // From memory, Chopra & Meindl: a policy of 6000 at 2500 a week and two weeks has 1000 in reserve.
  test('a steady demand needs no reserve: 2500 a week for two weeks is 5000, so 6000 is 1000 more than that', () =>
    expect(6000 - reorderPoint({ demand: 2500, lead: 2, z: 1.65, ...noSpread })).toBe(1000));
});

describe('how far out a share of likely courses lies', () => {
  // Any table of the standard normal distribution.
  test.each([
    [0.5, 0],
    [0.9, 1.2816],
    [0.95, 1.6449],
    [0.975, 1.96],
    [0.99, 2.3263],
  ])('%d of all chances lie below %d deviations', (probability, deviations) =>
    expect(Math.abs(normalQuantile(probability) - deviations)).toBeLessThan(0.0005),
  );
});
