import { describe, expect, test } from 'vitest';
import { daysMeant, isSoonest } from '../../../src/domain/order/needBy.ts';
import { readerFor } from '../../../src/domain/order/reader/read.ts';
import { SHOP } from '../../demoShop.ts';

const reader = readerFor(SHOP);
const monday = Date.parse('2026-11-30T17:00:00-06:00');

describe('a day that was not said clearly', () => {
  test('next friday may be the coming one or the one after it', () => {
    expect(daysMeant('next friday', reader, monday)).toEqual(['2026-12-04', '2026-12-11']);
  });

  test('mid december names no day', () => {
    expect(daysMeant('mid december', reader, monday)).toEqual([]);
  });

  test.each(['asap', 'ASAP', 'as soon as possible', 'cuanto antes'])('%s is no day but the soonest', (said) => {
    expect(isSoonest(said)).toBe(true);
  });

  test('soon after the 5th is not simply soon', () => {
    expect(isSoonest('soon after the 5th')).toBe(false);
  });
});
