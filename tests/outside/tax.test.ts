import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  inclusiveTax,
  quarterDays,
  quarterOf,
  separateTax,
  worksheetFor,
  type ConstructiveShare,
} from '../../src/domain/quote/excise.ts';
import { decimal, minorDigits, centsIn } from '../../src/domain/craft/money.ts';

const SHARES: readonly ConstructiveShare[] = [100, 75, 60];

describe('the federal excise tax on fishing tackle', () => {
  // 10 % of the price: 26 U.S.C. §4161(a)(1). A price that includes the tax holds T = 0.1·f·P / (1 + 0.1·f), worked out from §4216(a),
  // by which the price is taken without the tax (from memory).
  test.each([
    [100, 91],
    [75, 70],
    [60, 57],
  ] as const)('in a price of $10.00, on %d %% of it: %d cents', (share, cents) =>
    expect(inclusiveTax(1000, share)).toBe(cents),
  );

  test.each([
    [100, 0.090909],
    [75, 0.069767],
    [60, 0.056604],
  ] as const)('on %d %% it is %d of a price that includes it', (share, factor) =>
    expect(inclusiveTax(1_000_000_00, share) / 1_000_000_00).toBeCloseTo(factor, 6),
  );

  // Retail only: 75 % of the actual price, Rev. Rul. 80-273, 1980-2 C.B. 315. For fishing articles 60 % is said to be in
  // Rev. Rul. 81-226, 1981-2 C.B. 213, which was not seen: the shop file's own choice.
  test('stated separately on $10.00: $1.00, 75 cents, 60 cents', () =>
    expect(SHARES.map((share) => separateTax(1000, share))).toEqual([100, 75, 60]));

  test('what is left of a price without its tax bears just that tax, to the cent', () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), fc.constantFrom(...SHARES), (price, share) => {
        const tax = inclusiveTax(price, share);
        expect(Math.abs(separateTax(price - tax, share) - tax)).toBeLessThanOrEqual(1);
      }),
    ));

  // The return rounds once: sums of rounded heads would drift.
  test('a quarter is summed before it is rounded', () => {
    const sales = Array.from({ length: 7 }, (_, at) => ({ order: `K-${at}`, day: '2026-11-25', cents: 105 }));
    expect(sales.reduce((sum, { cents }) => sum + inclusiveTax(cents, 100), 0)).toBe(70);
    expect(worksheetFor(sales, '2026-Q4', 100).tax).toBe(67);
  });

  test('only what left in the quarter is in it', () => {
    const sales = ['2026-09-30', '2026-10-01', '2026-12-31', '2027-01-01'].map((day) => ({
      order: day,
      day,
      cents: 1000,
    }));
    expect(worksheetFor(sales, '2026-Q4', 75)).toMatchObject({
      orders: 2,
      sales: 2000,
      tax: 140,
      onTop: 150,
      base: 1395,
    });
  });

  // Notice 2020-55: Form 720 for the first quarter is due April 30; the others by the same rule, from memory.
  test.each([
    ['2020-Q1', '2020-04-30'],
    ['2026-Q2', '2026-07-31'],
    // October 31, 2026 is a Saturday, January 31, 2027 a Sunday, and a last day on a Saturday, Sunday or legal holiday is the next business day: 26 U.S.C. §7503.
    ['2026-Q3', '2026-11-02'],
    ['2026-Q4', '2027-02-01'],
    ['2027-Q2', '2027-08-02'],
  ])('the return for %s is due %s', (quarter, due) => expect(quarterDays(quarter).due).toBe(due));

  test('a day belongs to the quarter it lies in', () => {
    for (const quarter of ['2026-Q1', '2026-Q2', '2026-Q3', '2026-Q4']) {
      const { from, to } = quarterDays(quarter);
      expect([quarterOf(from), quarterOf(to)]).toEqual([quarter, quarter]);
    }
  });
});

describe('minor units', () => {
  // ISO 4217, list one: two digits for the dollar, none for the yen, three for the Kuwaiti dinar.
  test.each([
    ['USD', 2, '12.05'],
    ['JPY', 0, '1205'],
    ['KWD', 3, '1.205'],
  ])('%s has %i digits: 1205 is %s', (currency, digits, text) => {
    expect(minorDigits(currency)).toBe(digits);
    expect(decimal(1205, currency)).toBe(text);
  });

  test('an amount is read back as it is written', () => {
    const cents = fc.integer({ min: -9_999_999, max: 9_999_999 });
    fc.assert(
      fc.property(cents, fc.constantFrom('USD', 'JPY', 'KWD'), (amount, currency) => {
        expect(centsIn(decimal(amount, currency), currency)).toBe(amount);
      }),
    );
  });

  test.each([
    ['20', 2000],
    ['$20.5', 2050],
    ['1,200', 120_000],
    ['-5', -500],
  ])('“%s” is %i cents', (text, cents) => expect(centsIn(text, 'USD')).toBe(cents));
  test.each(['', 'twenty', '20.555', '1e3', '--5'])('“%s” is no amount', (text) =>
    expect(centsIn(text, 'USD')).toBeUndefined(),
  );
});
