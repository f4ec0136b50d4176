import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { postageFor } from '../../../src/domain/quote/postage.ts';
import { priceLine, sameFor } from '../../../src/domain/quote/price.ts';
import { moneyFor } from '../../../src/domain/quote/quote.ts';
import { inclusiveTax } from '../../../src/domain/quote/excise.ts';
import { costLine } from '../../../src/domain/quote/lineCost.ts';
import { SHOP, shopWith } from '../../demoShop.ts';

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

  test('just below a break more heads are free, and elsewhere none', () => {
    const spec = usualSpec(SHOP, { style: 'football', weight: '1/2', paint: 'black' }) as Spec;
    expect([20, 24, 25, 49, 99].map((quantity) => sameFor(SHOP, { spec, quantity }))).toEqual([
      undefined,
      25,
      undefined,
      50,
      100,
    ]);
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

describe('a price by margin on cost', () => {
  const shop = shopWith(({ prices }) => ({ prices: { ...prices, rule: 'margin', margin: 40_000, breaks: [] } }));
  const anyHead = fc
    .constantFrom('1/16', '1/8', '1/4', '3/8', '1/2')
    .map((weight) => SHOP.styles.flatMap(({ id }) => usualSpec(SHOP, { style: id, weight }) ?? []))
    .chain((specs) => fc.constantFrom(...specs));

  test('leaves the margin over once the line is made and the excise tax is paid, to the cent', () =>
    fc.assert(
      fc.property(
        anyHead,
        fc.integer({ min: 5, max: 500 }),
        fc.constantFrom(null, 100, 75, 60),
        (spec, quantity, share) => {
          const priced = { ...shop, excise: share === null ? null : { share } } as const;
          const { total } = priceLine(priced, { spec, quantity });
          const left = (at: number): number =>
            at - costLine(priced, { spec, quantity }).total - (share === null ? 0 : inclusiveTax(at, share)) - 0.4 * at;
          expect(left(total)).toBeGreaterThanOrEqual(-0.5);
          expect(left(total - 2)).toBeLessThan(0.5);
        },
      ),
    ));

  test('more heads never cost less in total, with breaks or without', () =>
    fc.assert(
      fc.property(anyHead, fc.integer({ min: 5, max: 499 }), fc.boolean(), (spec, quantity, broken) => {
        const priced = broken ? { ...shop, prices: { ...shop.prices, breaks: SHOP.prices.breaks } } : shop;
        const [fewer, more] = [quantity, quantity + 1].map((count) => priceLine(priced, { spec, quantity: count }));
        expect(more?.total).toBeGreaterThanOrEqual(fewer?.total ?? Infinity);
        expect((fewer?.each ?? 0) * quantity - (fewer?.off ?? 0)).toBe(fewer?.total);
        expect(fewer?.off).toBeGreaterThanOrEqual(0);
      }),
    ));

  test('a head of a longer line is cheaper, for the set-ups are shared', () => {
    const each = [5, 25, 100].map((quantity) => priceLine(shop, { spec: FOOTBALL, quantity }).each);
    expect(each).toEqual([...each].sort((a, b) => b - a));
    expect(new Set(each).size).toBe(3);
  });

  test('what the maker asks more for a wish comes on top', () => {
    const [plain, wished] = [0, 50].map((extra) => priceLine(shop, { spec: FOOTBALL, quantity: 25, extra }));
    expect((wished?.total ?? 0) - (plain?.total ?? 0)).toBe(25 * 50);
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
