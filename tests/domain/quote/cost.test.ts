import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { costOrder } from '../../../src/domain/quote/cost.ts';
import { costLine } from '../../../src/domain/quote/lineCost.ts';
import { moneyFor } from '../../../src/domain/quote/quote.ts';
import { SHOP, shopWith } from '../../demoShop.ts';

const spec = usualSpec(SHOP, { style: 'football', weight: '1/2', paint: 'black', guard: 'black' }) as Spec;
const bare = usualSpec(SHOP, { style: 'ball', weight: '1/8', paint: 'bare' }) as Spec;

describe('what a line costs', () => {
  test('its parts add up to the cent, and its steps to its minutes', () =>
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 500 }), fc.constantFrom(spec, bare), (quantity, one) => {
        const cost = costLine(SHOP, { spec: one, quantity });
        expect(cost.material + cost.packaging + cost.hands + cost.overhead).toBe(cost.total);
        expect(Math.round(cost.steps.reduce((sum, { minutes }) => sum + minutes, 0))).toBe(cost.minutes);
      }),
    ));

  test('the set-up is shared by all heads of the line, so more heads cost less each', () => {
    const each = [5, 25, 100].map((quantity) => costLine(SHOP, { spec, quantity }).total / quantity);
    expect(each).toEqual([...each].sort((a, b) => b - a));
    expect((each[0] ?? 0) / (each[2] ?? 1)).toBeGreaterThan(1.5);
  });

  test('ten bare balls by hand: 11 to cast in shots of two, then trimmed and packed', () => {
    // pour 12 + 6 × 0.8, trim 2 + 10 × 0.3, pack 5 + 10 × 0.05 minutes of the demo shop.
    expect(costLine(SHOP, { spec: bare, quantity: 10 }).steps).toEqual([
      { step: 'pour', minutes: 12 + 6 * 0.8 },
      { step: 'trim', minutes: 5 },
      { step: 'pack', minutes: 5.5 },
    ]);
  });
});

describe('what an order leaves over', () => {
  const lines = [{ spec, quantity: 30 }];
  const money = moneyFor(SHOP, lines, 'US-MN')!;

  test('postage and sales tax pass through it', () => {
    const cost = costOrder(SHOP, lines, money);
    expect(cost.price).toBe(money.total - money.tax - money.postage.cents);
    expect(cost.margin).toBe(cost.price - cost.cost);
  });

  test('below the floor it warns, and not above', () => {
    const { share } = costOrder(SHOP, lines, money);
    const floored = (marginFloor: number) =>
      costOrder(
        shopWith(({ costing }) => ({ costing: { ...costing, marginFloor } })),
        lines,
        money,
      ).thin;
    expect([floored(Math.max(0, share)), floored(Math.max(0, share) + 1)]).toEqual([false, true]);
  });

  test('a charge for haste is part of the price, and of what sales tax is on', () => {
    const rushed = moneyFor(SHOP, lines, 'US-MN', 20_000)!;
    const heads = money.lines[0]?.total ?? 0;
    expect(rushed.rush).toBe(Math.round(heads / 5));
    expect(rushed.total).toBe(heads + rushed.rush + rushed.postage.cents + rushed.tax);
    expect(rushed.tax).toBe(Math.round((heads + rushed.rush) * 0.06875));
  });

  test('an item without a cost is named, not hidden', () => {
    const shop = shopWith(({ stock }) => ({
      stock: stock.map((row) => (row.item === 'bag' ? { ...row, costPerThousand: undefined } : row)),
    }));
    expect(costOrder(shop, lines, money).uncosted).toEqual(['bag']);
  });
});
