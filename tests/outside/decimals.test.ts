import { Big } from 'big.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { centsIn, decimal, shareOf } from '../../src/domain/craft/money.ts';
import { usualSpec } from '../../src/domain/order/choices.ts';
import { inclusiveTax, separateTax, type ConstructiveShare } from '../../src/domain/quote/excise.ts';
import { costLine } from '../../src/domain/quote/lineCost.ts';
import { marginPrice } from '../../src/domain/quote/price.ts';
import { moneyFor } from '../../src/domain/quote/quote.ts';
import { SHOP, shopWith } from '../demoShop.ts';

/** The same arithmetic by a general-purpose decimal library (big.js), exact and rounded half up where ours is. */
const cents = fc.integer({ min: 0, max: 9_999_999 });
const rate = fc.integer({ min: 0, max: 100_000 });
const share = fc.constantFrom<ConstructiveShare>(100, 75, 60);
const halfUp = (amount: Big): number => amount.round(0, Big.roundHalfUp).toNumber();
Big.DP = 40;

describe('money as a decimal library reckons it', () => {
  test('a share of an amount', () =>
    fc.assert(
      fc.property(cents, rate, (amount, of) => {
        expect(shareOf(amount, of)).toBe(halfUp(new Big(amount).times(of).div(100_000)));
      }),
    ));

  test('the excise tax in a price, and on top of one', () =>
    fc.assert(
      fc.property(cents, share, (price, of) => {
        const f = new Big(of).div(100);
        const tenth = f.times('0.1');
        expect(inclusiveTax(price, of)).toBe(halfUp(tenth.times(price).div(tenth.plus(1))));
        expect(separateTax(price, of)).toBe(halfUp(tenth.times(price)));
      }),
    ));

  test('an amount written and read', () =>
    fc.assert(
      fc.property(cents, (amount) => {
        expect(decimal(amount, 'USD')).toBe(new Big(amount).div(100).toFixed(2));
        expect(centsIn(new Big(amount).div(100).toFixed(2), 'USD')).toBe(amount);
      }),
    ));

  const spec = usualSpec(SHOP, { style: 'football', weight: '1/2', paint: 'black' }) ?? expect.fail();

  test('the total of an order: the lines, what is added, the tax on it, the postage', () =>
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 500 }), fc.constantFrom('US-MN', 'US-OH'), (quantity, place) => {
        const money = moneyFor(SHOP, [{ spec, quantity }], place) ?? expect.fail();
        const heads = money.lines.reduce((sum, line) => sum.plus(line.total), new Big(0)).plus(money.topUp);
        const tax = SHOP.salesTax.find((row) => row.place === place)?.rate ?? 0;
        expect(money.tax).toBe(halfUp(heads.times(tax).div(100_000)));
        expect(money.total).toBe(heads.plus(money.tax).plus(money.postage.cents).toNumber());
      }),
    ));

  test('the least price that leaves the margin over', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 500 }),
        fc.integer({ min: 0, max: 90_000 }),
        share,
        (quantity, margin, of) => {
          const shop = shopWith(({ prices }) => ({ excise: { share: of }, prices: { ...prices, margin } }));
          const cost = costLine(shop, { spec, quantity }).total;
          const tenth = new Big(of).div(1000);
          const kept = new Big(1).minus(new Big(margin).div(100_000)).times(tenth.plus(1)).minus(tenth);
          const price = marginPrice(shop, { spec, quantity });
          expect(new Big(cost).times(tenth.plus(1)).div(kept).round(0, Big.roundUp).toNumber()).toBe(price);
        },
      ),
    ));
});
