import { describe, expect, test } from 'vitest';
import {
  ENOUGH,
  factorOf,
  learnedSchema,
  learnFrom,
  NOTHING_LEARNED,
  scrapShareOf,
  taught,
  timesOf,
  type Learned,
} from '../../../src/domain/bench/learned.ts';
import { newLot } from '../../../src/domain/bench/lot.ts';
import type { Session } from '../../../src/domain/bench/session.ts';
import { MINUTE } from '../../../src/domain/craft/time.ts';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { headsToPour } from '../../../src/domain/plan/routing.ts';
import { SHOP } from '../../demoShop.ts';

const spec = usualSpec(SHOP, { style: 'football', weight: '1/4', paint: 'black' }) as Spec;
const lots = { 'K-1-1': newLot('K-1-1', 'K-1', spec, 30, {}) };

/** A session of 30 heads that ends so many minutes after it began, with so many bad. */
function did(learned: Learned, step: Session['step'], minutes: number, bad = 0): Learned {
  const shares = [{ lot: 'K-1-1', heads: 30 }];
  const session: Session = { id: 'S1', step, family: '-', shares, startedAt: 0, scrap: { 'K-1-1': bad } };
  return learnFrom(taught(SHOP, learned), learned, session, lots, minutes * MINUTE);
}

const times = (count: number, step: Session['step'], minutes: number, bad = 0, from = NOTHING_LEARNED): Learned =>
  Array.from({ length: count }).reduce<Learned>((learned) => did(learned, step, minutes, bad), from);

/** Trimming 30 heads by the shop file: 2 minutes and 0.3 a head. */
const FILE_TRIM = 2 + 30 * 0.3;

describe('heads counted', () => {
  test('are told as they were, also of a batch that was spoiled whole and of the oven', () => {
    const poured = did(did(NOTHING_LEARNED, 'pour', 30, 2), 'trim', 10, 28);
    expect(poured.counted).toEqual({ poured: 30, bad: 30 });
    expect(poured.scrap.hits).toBeLessThan(30);
    expect(did(poured, 'bake', 30, 3).counted).toEqual({ poured: 30, bad: 33 });
  });
});

describe('the pace of the bench', () => {
  test('is the shop file’s until a step was timed often enough', () => {
    expect(factorOf(times(ENOUGH.times - 1, 'trim', 2 * FILE_TRIM), 'trim')).toBe(1);
    expect(factorOf(times(ENOUGH.times + 2, 'trim', 2 * FILE_TRIM), 'trim')).toBeGreaterThan(1.5);
  });

  test('settles at the true minutes and stays there, although it is reckoned with meanwhile', () => {
    const learned = times(40, 'trim', 2 * FILE_TRIM);
    expect(factorOf(learned, 'trim')).toBeGreaterThan(1.85);
    expect(factorOf(times(200, 'trim', 2 * FILE_TRIM), 'trim')).toBeGreaterThan(1.95);
    expect(taught(SHOP, learned).steps.trim.each).toBeCloseTo(0.3 * factorOf(learned, 'trim'), 9);
    expect(taught(SHOP, learned).steps.paint).toEqual(SHOP.steps.paint);
    expect(SHOP.steps.trim.each).toBe(0.3);
  });

  test('is not spoiled by taps forgotten overnight or done at once', () => {
    const known = times(20, 'trim', FILE_TRIM);
    const forgotten = times(2, 'trim', 22 * 60, 0, known);
    expect(factorOf(forgotten, 'trim') / factorOf(known, 'trim')).toBeLessThan(1.1);
    const slipped = times(2, 'trim', 0.05, 0, known);
    expect(factorOf(slipped, 'trim') / factorOf(known, 'trim')).toBeGreaterThan(0.9);
    expect(timesOf(did(known, 'trim', 0), 'trim')).toBeCloseTo(timesOf(known, 'trim'), 9);
  });

  test('never counts the oven’s time for hands', () =>
    expect(did(NOTHING_LEARNED, 'bake', 45)).toEqual(NOTHING_LEARNED));

  test('is kept in the same few numbers after a thousand sessions', () => {
    const learned = times(1000, 'pour', 40, 1);
    expect(learnedSchema.parse(learned)).toEqual(learned);
    expect(JSON.stringify(learned).length).toBeLessThan(300);
  });
});

describe('scrap', () => {
  test('is the shop file’s until a hundred heads were poured, then what is counted, and a few more are poured over', () => {
    expect(scrapShareOf(SHOP, times(3, 'pour', 40, 6))).toBe(SHOP.casting.scrapShare);
    const learned = times(20, 'pour', 40, 6);
    expect(scrapShareOf(SHOP, learned)).toBeGreaterThan(0.17);
    expect(headsToPour(taught(SHOP, learned), spec, 30)).toBeGreaterThan(headsToPour(SHOP, spec, 30));
  });

  test('found at a later step counts against the heads that were poured', () => {
    const learned = times(10, 'trim', 11, 1, times(10, 'pour', 40));
    expect(learned.scrap).toEqual({ hits: 10, misses: 290 });
  });

  test('of one spoiled batch does not make the share', () => {
    const learned = did(times(10, 'pour', 40), 'pour', 40, 30);
    expect(scrapShareOf(SHOP, learned)).toBeLessThan(0.06);
  });
});
