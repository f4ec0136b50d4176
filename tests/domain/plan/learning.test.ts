import { describe, expect, test } from 'vitest';
import { count, learn, SCRAP, shareOf, SHOP_FILE, spreadOf, tempoOf } from '../../../src/domain/plan/learning.ts';
import type { Belief } from '../../../src/domain/plan/learning.ts';
import { gauss, randomOf } from '../../../src/domain/plan/random.ts';

/** What is believed after so many steps that truly take `factor` times the expected, give or take `sigma`. */
function after(times: number, factor: number, sigma = 0.25, start: Belief = SHOP_FILE): Belief {
  const random = randomOf(5);
  let belief = start;
  for (let i = 0; i < times; i++) belief = learn(belief, 30, 30 * factor * Math.exp(sigma * gauss(random)));
  return belief;
}

describe('minutes learned from the bench', () => {
  test('start as the shop file says', () => {
    expect(tempoOf(SHOP_FILE).factor).toBe(1);
  });

  test.each([0.5, 2])('wrong by a factor of %d are right within 15 in 100 after 30 steps', (factor) => {
    expect(tempoOf(after(30, factor)).factor / factor).toBeGreaterThan(0.85);
    expect(tempoOf(after(30, factor)).factor / factor).toBeLessThan(1.15);
  });

  test('grow surer when the hand is steady, and less sure when it is not', () => {
    const [steady, wild] = [tempoOf(after(40, 1, 0.1)).sigma, tempoOf(after(40, 1, 0.6)).sigma];
    expect(steady).toBeLessThan(tempoOf(SHOP_FILE).sigma);
    expect(wild).toBeGreaterThan(tempoOf(SHOP_FILE).sigma);
  });

  test('hardly move for one forgotten tap', () => {
    const known = after(20, 1);
    const forgotten = tempoOf(learn(known, 30, 30 * 20)).factor / tempoOf(known).factor;
    expect(Math.abs(forgotten - 1)).toBeLessThan(0.05);
  });

  test('are learned again when the hand changes for good', () => {
    expect(tempoOf(after(120, 0.6, 0.2, after(200, 1, 0.2))).factor).toBeLessThan(0.75);
  });

  test('learn nothing from a step that took no time', () => {
    expect(learn(SHOP_FILE, 30, 0)).toBe(SHOP_FILE);
    expect(learn(SHOP_FILE, 0, 10)).toBe(SHOP_FILE);
  });
});

describe('shares learned from the bench', () => {
  test('scrap starts at 3 in 100 and goes to what is counted', () => {
    expect(shareOf(SCRAP)).toBeCloseTo(0.03, 9);
    expect(shareOf(count(SCRAP, { hits: 100, misses: 900 }))).toBeCloseTo(0.0967, 3);
  });

  test('the spread the promise uses is made of them', () => {
    const spread = spreadOf({ pour: after(30, 2) }, SCRAP, { hits: 1, misses: 9 });
    expect(spread.minutes['pour']?.factor).toBeGreaterThan(1.7);
    expect(spread).toMatchObject({ scrap: 0.03, missed: 0.1 });
    const unsure = spreadOf({ pour: SHOP_FILE }, SCRAP, { hits: 1, misses: 9 });
    expect(unsure.pace).toBeGreaterThan(spread.pace);
  });
});
