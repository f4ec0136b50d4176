import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sayFault } from '../../../src/domain/shop/fault.ts';
import { parseShop } from '../../../src/domain/shop/faults.ts';
import { rushFor } from '../../../src/domain/quote/rush.ts';
import { shopWith } from '../../demoShop.ts';

const file = JSON.parse(readFileSync(join(import.meta.dirname, '../../../data/demo-shop.json'), 'utf8')) as Record<
  string,
  object
>;
const faultsOf = (change: Record<string, unknown>): readonly string[] => {
  const read = parseShop({ ...file, ...change });
  return read.ok ? [] : read.faults.map(sayFault);
};

describe('what the shop file says of money', () => {
  test('may be left out whole, as in a file from before', () => {
    const { costing: _costing, buying: _buying, excise: _excise, rush: _rush, ...rest } = file;
    const read = parseShop({ ...rest, payment: { words: 'Cash.', dueDays: 7 } });
    expect(read.ok && read.shop).toMatchObject({
      excise: null,
      rush: null,
      costing: { hourCents: 0, marginFloor: 0 },
      payment: { deposit: 0, startsWhen: 'accepted', credit: { waiting: 100_000, packed: 0 } },
    });
  });

  test('a bench that waits for a deposit of nothing is a fault', () =>
    expect(faultsOf({ payment: { ...file['payment'], startsWhen: 'deposit', deposit: 0 } })).toEqual([
      'payment.deposit: found 0; allowed: more than 0, for the bench waits for it (startsWhen)',
    ]));

  test('paying back more for further work is a fault', () =>
    expect(
      faultsOf({
        payment: { ...file['payment'], credit: { waiting: 50_000, cast: 60_000, painted: 10_000, packed: 0 } },
      }),
    ).toEqual(['payment.credit.cast: found 60000; allowed: at most the 50000 of the stage before it']));

  test.each([90, 0, 'all'])('an excise share of %s is none of the three', (share) =>
    expect(faultsOf({ excise: { share } })[0]).toContain('excise.share'),
  );
});

describe('a charge for haste', () => {
  const shop = shopWith(() => ({ rush: { withinDays: 5, rate: 15_000 } }));
  test('is the shop’s, for what is needed within its days', () =>
    expect(['2026-11-30', '2026-12-05', '2026-12-06', null].map((day) => rushFor(shop, day, '2026-11-30'))).toEqual([
      15_000, 15_000, 0, 0,
    ]));
  test('is nothing where the shop has none', () =>
    expect(
      rushFor(
        shopWith(() => ({ rush: null })),
        '2026-11-30',
        '2026-11-30',
      ),
    ).toBe(0));
});
