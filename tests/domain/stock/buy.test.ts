import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Shelf } from '../../../src/domain/stock/availability.ts';
import { deliveriesOf } from '../../../src/domain/stock/availability.ts';
import { toBuy } from '../../../src/domain/stock/buy.ts';
import { JOURNAL_MOST, journaled, type JournalRow } from '../../../src/domain/stock/journal.ts';
import { lessArrived, withOrdered } from '../../../src/domain/stock/ordered.ts';
import { demandOf, withUse, type Usage } from '../../../src/domain/stock/usage.ts';
import { SHOP } from '../../demoShop.ts';

const TODAY = '2026-11-30';
/** A book that began long ago. */
const OLD = '2026-01-05';
const HOOK = 'hook:60-flat-heavy:4/0';
const onHand = Object.fromEntries(SHOP.stock.map((row) => [row.item, row.onHand]));
const shelf: Shelf = { onHand, reserved: {}, arrived: [], ordered: [], today: TODAY };
/** Ten weeks of use that rise and fall around 70 a week. */
const usage: Usage = Array.from({ length: 10 }, (_, week) => 60 + 20 * (week % 2)).reduce<Usage>(
  (sum, amount, week) =>
    withUse(
      sum,
      HOOK,
      amount,
      `2026-${week < 4 ? '10' : '11'}-${String(week < 4 ? 3 + 7 * week : 1 + 4 * (week - 4)).padStart(2, '0')}`,
    ),
  {},
);

describe('what to buy', () => {
  test('nothing, while nothing is used and nothing waits', () =>
    expect(toBuy(SHOP, shelf, { usage: {}, began: OLD })).toEqual([]));

  test('what accepted orders wait for, in whole packs, first of all', () => {
    const short = { ...shelf, onHand: { ...onHand, [HOOK]: 0, bag: 0 }, reserved: { [HOOK]: 130, bag: 4 } };
    const [first] = toBuy(SHOP, short, { usage: {}, began: OLD });
    expect(first).toMatchObject({
      supplier: 'hook house',
      items: [{ item: HOOK, needed: 130, count: 200, cents: 2800 }],
    });
  });

  test('what falls to its reorder point, before anybody waits', () => {
    const low = { ...shelf, onHand: { ...onHand, [HOOK]: 90 } };
    const [basket] = toBuy(SHOP, low, { usage, began: null });
    expect(basket?.items[0]).toMatchObject({ item: HOOK, needed: 0 });
    expect(basket?.items[0]?.reorderAt).toBeGreaterThan(80);
    expect((basket?.items[0]?.count ?? 0) % 100).toBe(0);
  });

  test('after one evening’s pour of 300, only what orders wait for, and the pack that covers it', () => {
    const use = { usage: withUse({}, HOOK, 300, TODAY), began: '2026-11-28' };
    const short = { ...shelf, onHand: { ...onHand, [HOOK]: 20 }, reserved: { [HOOK]: 26 } };
    expect(toBuy(SHOP, short, use)).toMatchObject([{ items: [{ item: HOOK, needed: 6, count: 100, reorderAt: 0 }] }]);
    expect(toBuy(SHOP, { ...short, reserved: {} }, use)).toEqual([]);
  });

  test('an item that one week of twelve used is not bought for a year of such weeks', () => {
    const bought = (began: string): number =>
      toBuy(
        SHOP,
        { ...shelf, onHand: { ...onHand, [HOOK]: 0 } },
        { usage: withUse({}, HOOK, 300, '2026-11-26'), began },
      )[0]?.items[0]?.count ?? 0;
    const lately = bought('2026-11-02');
    const overall = bought('2026-09-07');
    expect(lately).toBeGreaterThan(overall);
    expect(overall).toBeLessThan(1300);
  });

  test('what is on its way is not bought twice', () => {
    const low = {
      ...shelf,
      onHand: { ...onHand, [HOOK]: 90 },
      ordered: [{ item: HOOK, day: '2026-12-08', count: 1000 }],
    };
    expect(toBuy(SHOP, low, { usage, began: null })).toEqual([]);
  });

  test('once all of the list is ordered, nothing is left on it', () =>
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 3, maxLength: 3 }),
        ([have = 0, put = 0, used = 0]) => {
          const now = { ...shelf, onHand: { ...onHand, [HOOK]: have }, reserved: { [HOOK]: put } };
          const use = { usage: withUse({}, HOOK, used, TODAY), began: OLD };
          const ordered = toBuy(SHOP, now, use).flatMap(({ items }) =>
            items.map(({ item, count }) => ({ item, count, day: '2026-12-09' })),
          );
          expect(toBuy(SHOP, { ...now, ordered }, use)).toEqual([]);
        },
      ),
      // What was ordered just up to the reorder point.
      { examples: [[[6, 202, 2]]] },
    ));
});

describe('deliveries on their way', () => {
  test('are seen beside those of the shop file, and two of a day are one', () => {
    const one = { item: 'bag', day: '2026-12-09', count: 500 };
    const ordered = withOrdered(withOrdered([], one), one);
    expect(deliveriesOf(SHOP, { ...shelf, ordered }, 'bag')).toEqual([
      { ...one, count: 1000, named: one.day, overdue: 0 },
    ]);
  });
  test('are counted off as they come, the earliest first', () => {
    const ordered = [
      { item: 'bag', day: '2026-12-09', count: 500 },
      { item: 'bag', day: '2026-12-05', count: 100 },
    ];
    expect(lessArrived(ordered, 'bag', 150)).toEqual([{ item: 'bag', day: '2026-12-09', count: 450 }]);
  });
});

describe('use by week', () => {
  test('a week without use counts as nothing used', () => {
    const use = withUse(withUse({}, 'bag', 70, '2026-11-02'), 'bag', 70, '2026-11-30');
    expect(demandOf(use, 'bag', null, TODAY).daily).toBeCloseTo(140 / 29, 9);
  });
  test('what is taken back was not used', () =>
    expect(demandOf(withUse(withUse({}, 'bag', 70, TODAY), 'bag', -70, TODAY), 'bag', null, TODAY).daily).toBe(0));
});

describe('the journal', () => {
  const cause = { at: 0, by: 7, why: 'said', ref: 'count bags 5' } as const;
  test('has a row for each item that changed, with what there is then', () =>
    expect(journaled([], { bag: 3, label: 2 }, { bag: 5, label: 2 }, cause)).toEqual([
      { at: 0, by: 7, item: 'bag', change: 2, onHand: 5, why: 'said', ref: 'count bags 5' },
    ]));
  test('adds at the end only, and keeps the last ones', () => {
    const long = Array.from({ length: JOURNAL_MOST + 5 }, (_, at) => at).reduce<readonly JournalRow[]>(
      (rows, at) => journaled(rows, { bag: at }, { bag: at + 1 }, cause),
      [],
    );
    expect(long).toHaveLength(JOURNAL_MOST);
    expect(long.at(-1)?.onHand).toBe(JOURNAL_MOST + 5);
  });
});
