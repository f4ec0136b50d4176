import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shareOf } from '../../../src/domain/craft/money.ts';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { balanceOf, type Entry } from '../../../src/domain/quote/payment.ts';
import { moneyFor } from '../../../src/domain/quote/quote.ts';
import { closedFor, entered, mostOff, taxedBy } from '../../../src/domain/quote/taxed.ts';
import { SHOP } from '../../demoShop.ts';

const spec = usualSpec(SHOP, { style: 'ball', weight: '1/8', paint: 'black' }) as Spec;
const money = moneyFor(SHOP, [{ spec, quantity: 40 }], 'US-MN')!;
const RATE = 6875;

const run = (entries: readonly (readonly [Entry['kind'], number])[]): readonly Entry[] =>
  entries.reduce<readonly Entry[]>((ledger, [kind, cents]) => {
    const next = entered(money, ledger, { at: 0, kind, cents, why: '' });
    return next.ok ? next.ledger : ledger;
  }, []);

describe('the sales tax of an order whose price changed', () => {
  test('ten dollars off the heads take their sales tax off with them', () => {
    const { sold } = taxedBy(money, []);
    const ledger = run([['adjust', -1000]]);
    expect(taxedBy(money, ledger)).toEqual({ sold: sold - 1000, tax: shareOf(sold - 1000, RATE) });
    expect(balanceOf(money.total, ledger).asked).toBe(money.total - 1000 - (money.tax - shareOf(sold - 1000, RATE)));
  });

  test('five dollars given back and not asked for again are five dollars, the tax in them', () => {
    const ledger = run([
      ['paid', money.total],
      ['refund', 500],
    ]);
    const { sold, tax } = taxedBy(money, ledger);
    expect(balanceOf(money.total, ledger)).toMatchObject({ asked: money.total - 500, due: 0, over: 0 });
    expect(Math.abs(tax - shareOf(sold, RATE))).toBeLessThanOrEqual(1);
    expect(tax).toBeLessThan(money.tax);
  });

  test('all of it given back leaves no tax', () => {
    const ledger = run([
      ['paid', money.total],
      ['refund', money.total],
    ]);
    expect(taxedBy(money, ledger).tax).toBe(0);
  });

  test('whatever is entered, heads, tax and postage are the sum that is asked, and the tax is the rate’s on the heads', () =>
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.constantFrom('paid' as const, 'refund' as const, 'adjust' as const),
            fc.integer({ min: -900, max: 3000 }),
          ),
          { maxLength: 12 },
        ),
        (entries) => {
          const ledger = run(entries);
          const { sold, tax } = taxedBy(money, ledger);
          expect(sold + tax + money.postage.cents).toBe(balanceOf(money.total, ledger).asked);
          expect(tax).toBeGreaterThanOrEqual(0);
          expect(Math.abs(tax - shareOf(Math.max(0, sold), RATE))).toBeLessThanOrEqual(1);
        },
      ),
    ));

  test('all that the heads cost can be taken off, and not a cent more; postage stays', () => {
    const { sold } = taxedBy(money, []);
    expect(mostOff(money, [])).toBe(sold);
    const more = { at: 0, kind: 'adjust', cents: -sold - 1, why: '' } as const;
    expect(entered(money, [], more)).toEqual({ ok: false, why: 'below-nothing' });
    const ledger = run([['adjust', -sold]]);
    expect(taxedBy(money, ledger)).toEqual({ sold: 0, tax: 0 });
    expect(balanceOf(money.total, ledger).asked).toBe(money.postage.cents);
  });

  test('what is kept of an order that was given up can be lowered to nothing, and bears no sales tax', () => {
    const kept = closedFor(money, [], 1500, 0);
    const lower = (cents: number) => entered(money, kept, { at: 1, kind: 'adjust', cents, why: '' });
    expect(lower(-1501)).toEqual({ ok: false, why: 'below-nothing' });
    const done = lower(-500);
    expect(done.ok && balanceOf(money.total, done.ledger).asked).toBe(1000);
    expect(done.ok && taxedBy(money, done.ledger).tax).toBe(0);
  });

  test('an order from before the rate was written down is taxed as it was quoted', () => {
    const { taxRate: _, ...old } = money;
    const done = entered(old, [], { at: 0, kind: 'adjust', cents: -1000, why: '' });
    expect(done.ok && Math.abs(taxedBy(old, done.ledger).tax - shareOf(taxedBy(old, []).sold - 1000, RATE))).toBe(0);
  });
});
