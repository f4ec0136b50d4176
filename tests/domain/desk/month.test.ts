import { describe, expect, test } from 'vitest';
import { parted } from '../../../src/domain/craft/money.ts';
import { monthOf } from '../../../src/domain/desk/month.ts';
import type { Order } from '../../../src/domain/desk/order.ts';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { moneyFor } from '../../../src/domain/quote/quote.ts';
import { SHOP } from '../../demoShop.ts';
import { order as sample } from '../../wording/samples.ts';

const head = (style: string, weight: string, paint: string): Spec => usualSpec(SHOP, { style, weight, paint }) as Spec;
const shipped = (id: string, ledger: Order['ledger'], ...lines: Order['lines']): Order => ({
  ...sample,
  id,
  lines,
  money: moneyFor(SHOP, lines, 'US-MN', 10_000)!,
  ledger,
  state: 'shipped',
  shippedAt: sample.acceptedAt,
});
const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0);

describe('the styles of a month', () => {
  const facts = monthOf(
    SHOP,
    [
      shipped(
        'K-1',
        [],
        { spec: head('football', '1/2', 'black'), quantity: 7 },
        { spec: head('ball', '1/8', 'black'), quantity: 13 },
      ),
      shipped('K-2', [{ at: 0, kind: 'adjust', cents: -333, tax: -21, why: 'thin paint' }], {
        spec: head('ball', '1/8', 'black'),
        quantity: 3,
      }),
    ],
    '2026-11',
  );

  test('add up to what was sold and what was left over, haste, the least order, the tax in the price and a changed price shared', () => {
    expect(facts.styles.map(({ style }) => style).sort()).toEqual(['ball', 'football']);
    expect(sum(facts.styles.map(({ revenue }) => revenue))).toBe(facts.revenue);
    expect(sum(facts.styles.map(({ margin }) => margin))).toBe(facts.margin);
    expect(sum(facts.styles.map(({ heads }) => heads))).toBe(facts.heads);
  });

  test('a month of one style leaves over an hour what the month did', () => {
    const one = monthOf(SHOP, [shipped('K-3', [], { spec: head('ball', '1/8', 'black'), quantity: 40 })], '2026-11');
    expect(one.styles[0]?.marginAnHour).toBe(Math.round((one.margin * 60) / one.minutes));
  });
});

test('an amount is parted to the cent, whichever way it goes', () => {
  expect(parted(100, [1, 1, 1])).toEqual([33, 34, 33]);
  expect(sum(parted(-1001, [3, 0, 5]))).toBe(-1001);
  expect(sum(parted(7, [0, 0]))).toBe(7);
});
