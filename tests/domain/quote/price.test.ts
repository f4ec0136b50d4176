import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { postageFor } from '../../../src/domain/quote/postage.ts';
import { priceLine } from '../../../src/domain/quote/price.ts';
import { moneyFor } from '../../../src/domain/quote/quote.ts';
import { SHOP } from '../../demoShop.ts';

const FOOTBALL = usualSpec(SHOP, { style: 'football', weight: '1/2', paint: 'green-pumpkin', guard: 'black' }) as Spec;

describe('the price of a line', () => {
  test('a painted half-ounce football with a guard costs its head, its paint and its guard', () => {
    const price = priceLine(SHOP, { spec: FOOTBALL, quantity: 10 });
    expect(price.parts).toEqual([
      { part: 'head', cents: 120 },
      { part: 'paint', cents: 25 },
      { part: 'guard', cents: 30 },
    ]);
    expect(price).toMatchObject({ each: 175, off: 0, total: 1750 });
  });

  test('from 25 heads a twentieth comes off', () =>
    expect(priceLine(SHOP, { spec: FOOTBALL, quantity: 25 }).total).toBe(4156));

  test('24 heads never cost more than 25', () => {
    const [fewer, more] = [24, 25].map((quantity) => priceLine(SHOP, { spec: FOOTBALL, quantity }).total);
    expect(fewer).toBeLessThanOrEqual(more ?? 0);
  });

  test('more heads never cost less in total', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 499 }), (quantity) => {
        const [fewer, more] = [quantity, quantity + 1].map(
          (count) => priceLine(SHOP, { spec: FOOTBALL, quantity: count }).total,
        );
        expect(more).toBeGreaterThanOrEqual(fewer ?? 0);
      }),
    );
  });
});

describe('the money of an order', () => {
  test('its parts add up to the cent, and none is below nothing', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 5, max: 500 }), { minLength: 1, maxLength: 5 }),
        fc.constantFrom('US-MN', 'US-OH', 'CA-ON'),
        (counts, place) => {
          const money = moneyFor(
            SHOP,
            counts.map((quantity) => ({ spec: FOOTBALL, quantity })),
            place,
          );
          if (money === undefined) return;
          const lines = money.lines.reduce((sum, line) => sum + line.total, 0);
          expect(lines + money.topUp + money.postage.cents + money.tax).toBe(money.total);
          for (const line of money.lines) expect(line.each * line.quantity - line.off).toBe(line.total);
          expect(Math.min(money.topUp, money.tax, money.postage.cents)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test('sales tax is charged where the shop file says so and nowhere else', () => {
    const lines = [{ spec: FOOTBALL, quantity: 10 }];
    expect(moneyFor(SHOP, lines, 'US-MN')?.tax).toBe(120); // 6.875 % of 17.50
    expect(moneyFor(SHOP, lines, 'US-OH')?.tax).toBe(0);
  });

  test('a small order is brought up to the least order', () => {
    const ball = usualSpec(SHOP, { style: 'ball', weight: '1/16', paint: 'bare' }) as Spec;
    expect(moneyFor(SHOP, [{ spec: ball, quantity: 5 }], 'US-OH')?.topUp).toBe(1500 - 5 * 55);
  });

  test('a parcel too heavy for the table goes as several', () => {
    const heavy = usualSpec(SHOP, { style: 'flipping', weight: '1', paint: 'black' }) as Spec;
    const postage = postageFor(SHOP, [{ spec: heavy, quantity: 500 }], 'CA-MB');
    expect(postage?.parcels).toBe(6);
    expect(postage?.cents).toBe(6 * 3390);
  });

  test('a place that the table does not name has no postage', () =>
    expect(moneyFor(SHOP, [{ spec: FOOTBALL, quantity: 10 }], 'DK')).toBeUndefined());
});
