import { expect, test } from 'vitest';
import { headMass, hookRoom, reweigh } from '../../../src/domain/craft/mass.ts';
import { PURE_LEAD } from '../../../src/domain/craft/metals.ts';
import { GRAMS_PER_OUNCE } from '../../../src/domain/craft/weight.ts';

const tin = { Sn: 1 };

test('a lead head weighs what its cavity is rated, and the hook comes on top', () => {
  const head = headMass({ weight: '1', composition: PURE_LEAD, hook: { grams: 1.2 } });
  expect(head.metalGrams).toBeCloseTo(GRAMS_PER_OUNCE, 12);
  expect(head.totalGrams).toBeCloseTo(GRAMS_PER_OUNCE + 1.2, 12);
  expect(head.by).toBe('arithmetic');
});

test('the room the hook takes is left unfilled by metal', () => {
  const bare = headMass({ weight: '1/4', composition: tin });
  const hooked = headMass({ weight: '1/4', composition: tin, hook: { grams: 0.785, insideCm3: hookRoom(0.785, 0.5) } });
  expect(hookRoom(0.785, 0.5)).toBeCloseTo(0.05, 12);
  expect(bare.metalGrams - hooked.metalGrams).toBeCloseTo(0.05 * 7.287, 9);
});

test('a hook that would fill the cavity leaves no metal, never less than none', () =>
  expect(headMass({ weight: '1/16', composition: tin, hook: { grams: 9, insideCm3: 1 } })).toMatchObject({
    metalGrams: 0,
    totalGrams: 9,
  }));

test("the maker's own weighing wins over arithmetic", () =>
  expect(headMass({ weight: '1/2', composition: tin, hook: { grams: 1 }, measuredGrams: 10.4 })).toEqual({
    metalGrams: 9.4,
    totalGrams: 10.4,
    by: 'weighing',
  }));

test('a weighing in lead tells what the same head weighs in tin, hook unchanged', () => {
  expect(reweigh(12.34, 1, PURE_LEAD, tin)).toBeCloseTo(1 + 7.287, 9);
  expect(reweigh(reweigh(12.34, 1, PURE_LEAD, tin), 1, tin, PURE_LEAD)).toBeCloseTo(12.34, 9);
});
