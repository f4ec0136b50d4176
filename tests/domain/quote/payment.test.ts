import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keepsFor, workDone } from '../../../src/domain/quote/credit.ts';
import { balanceOf, mayBegin, posted, type Entry } from '../../../src/domain/quote/payment.ts';
import { closedFor, taxedBy } from '../../../src/domain/quote/taxed.ts';
import { moneyFor } from '../../../src/domain/quote/quote.ts';
import { PROGRESSES } from '../../../src/domain/shop/business.ts';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { SHOP, shopWith } from '../../demoShop.ts';

const entry = (kind: Entry['kind'], cents: number): Entry => ({ at: 0, kind, cents, why: '' });
const anyEntry = fc.record({
  at: fc.constant(0),
  kind: fc.constantFrom('paid' as const, 'refund' as const, 'adjust' as const),
  cents: fc.integer({ min: -5000, max: 20_000 }),
  why: fc.constant(''),
});

/** The account after a run of entries, those that cannot stand left out. */
const run = (total: number, entries: readonly Entry[]): readonly Entry[] =>
  entries.reduce<readonly Entry[]>((ledger, one) => {
    const next = posted(total, ledger, one);
    return next.ok ? next.ledger : ledger;
  }, []);

describe('an account', () => {
  test('whatever is entered, no sum is ever below nothing and no more goes back than came', () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 50_000 }), fc.array(anyEntry, { maxLength: 20 }), (total, entries) => {
        const balance = balanceOf(total, run(total, entries));
        for (const sum of Object.values(balance)) expect(sum).toBeGreaterThanOrEqual(0);
        expect(balance.refunded).toBeLessThanOrEqual(balance.paid);
        expect(balance.paid - balance.refunded).toBe(balance.asked - balance.due + balance.over);
        expect(Math.min(balance.due, balance.over)).toBe(0);
      }),
    ));

  test('entries are only ever added', () =>
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 12 }), anyEntry, (entries, more) => {
        const ledger = run(9000, entries);
        expect(run(9000, [...entries, more]).slice(0, ledger.length)).toEqual(ledger);
      }),
    ));

  test('giving money back never makes it due again', () =>
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 1, max: 9000 }), (paid, back) => {
        const before = run(9000, [entry('paid', paid)]);
        const after = posted(9000, before, entry('refund', back));
        if (after.ok) expect(balanceOf(9000, after.ledger).due).toBe(balanceOf(9000, before).due);
        else expect(back).toBeGreaterThan(paid);
      }),
    ));

  test('more than is due is not taken', () => {
    expect(posted(2000, [], entry('paid', 2001))).toEqual({ ok: false, why: 'more-than-due' });
    expect(posted(2000, [entry('paid', 500)], entry('refund', 501))).toEqual({ ok: false, why: 'more-than-kept' });
    expect(posted(2000, [], entry('adjust', -2001))).toEqual({ ok: false, why: 'below-nothing' });
    expect(posted(2000, [], entry('paid', 0))).toEqual({ ok: false, why: 'no-amount' });
  });
});

describe('the shop’s rule for the bench', () => {
  const shop = (startsWhen: 'accepted' | 'deposit' | 'paid') =>
    shopWith(({ payment }) => ({ payment: { ...payment, startsWhen, deposit: 30_000 } }));
  const after = (cents: number) => balanceOf(10_000, cents === 0 ? [] : [entry('paid', cents)]);

  test.each([
    ['accepted', [true, true, true, true]],
    ['deposit', [false, false, true, true]],
    ['paid', [false, false, false, true]],
  ] as const)('work begins when %s', (rule, begins) =>
    expect([0, 2999, 3000, 10_000].map((cents) => mayBegin(shop(rule), after(cents)))).toEqual(begins),
  );
});

describe('a cancelled order', () => {
  const spec = usualSpec(SHOP, { style: 'football', weight: '1/2', paint: 'black' }) as Spec;
  const money = moneyFor(SHOP, [{ spec, quantity: 20 }], 'US-MN')!;

  const { sold } = taxedBy(money, []);
  const keeps = (stage: (typeof PROGRESSES)[number]): number => keepsFor(SHOP, money, sold, [stage]);

  test('keeps nothing before the pour, the more the further the work is, and never postage or sales tax', () => {
    const all = PROGRESSES.map(keeps);
    expect(all[0]).toBe(0);
    expect(all).toEqual([...all].sort((a, b) => a - b));
    expect(all.at(-1)).toBe(money.total - money.tax - money.postage.cents);
  });

  test('keeps its share of what the heads are sold for, when the price was changed since', () =>
    expect(keepsFor(SHOP, money, sold - 1000, ['cast'])).toBe(Math.round((sold - 1000) / 2)));

  test('asks for what its work keeps, be it paid already or not, and gives back no more than was paid', () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: money.total }), fc.constantFrom(...PROGRESSES), (paid, stage) => {
        const ledger = paid === 0 ? [] : [entry('paid', paid)];
        const closing = closedFor(money, ledger, keeps(stage), 0);
        const closed = balanceOf(money.total, closing);
        expect(closed.asked).toBe(keeps(stage));
        expect(closed.due - closed.over).toBe(keeps(stage) - paid);
        expect(closed.over).toBeLessThanOrEqual(paid);
        expect(taxedBy(money, closing).tax).toBe(0);
      }),
    ));

  test('is as far as its furthest step', () => {
    const at = (step: 'pour' | 'paint' | 'pack', state: string) => ({ step, state });
    expect(workDone([at('pour', 'ready')])).toBe('waiting');
    expect(workDone([at('pour', 'done'), at('paint', 'ready')])).toBe('cast');
    expect(workDone([at('pour', 'done'), at('paint', 'running')])).toBe('painted');
    expect(workDone([at('pour', 'done'), at('paint', 'done'), at('pack', 'done')])).toBe('packed');
  });
});
