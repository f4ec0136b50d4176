import { describe, expect, test } from 'vitest';
import { onHandOf } from '../../../src/domain/desk/shelves.ts';
import type { Desk } from '../../../src/domain/desk/state.ts';
import { addAmounts } from '../../../src/domain/stock/needs.ts';
import { SHOP } from '../../demoShop.ts';
import { walk, type Happened } from './walk.ts';

const SEEDS = [3, 14, 159];
const ACTS = 500;
const walks = SEEDS.map((seed) => [...walk(seed, ACTS)]);

const usedIn = (desk: Desk) => addAmounts(Object.values(desk.lots).map(({ used }) => used));
const changes = (before: Readonly<Record<string, number>>, after: Readonly<Record<string, number>>) =>
  Object.fromEntries(
    [...new Set([...Object.keys(before), ...Object.keys(after)])]
      .map((item) => [item, (after[item] ?? 0) - (before[item] ?? 0)] as const)
      .filter(([, change]) => change !== 0)
      .sort(),
  );
const shelf = (desk: Desk) => onHandOf(SHOP, desk);
const because = ({ command }: Happened): string => JSON.stringify(command).slice(0, 160);
/** Deliveries come from outside, and a lot that is shelved, split or joined hands over what it has. */
const isNoDelivery = ({ command }: Happened): boolean =>
  !/shelve|split|join/.test(JSON.stringify(command)) && (command.type !== 'tapped' || command.tap?.act !== 'arrived');
const sameOrders = ({ before, after }: Happened): boolean =>
  Object.keys(before.orders).join() === Object.keys(after.orders).join();

describe('over hundreds of acts at random, the material adds up to the gram and the piece', () => {
  test('what leaves the shelf is written down with a lot, and what is taken back is taken off it', () => {
    for (const one of walks.flat().filter(sameOrders).filter(isNoDelivery)) {
      const left = changes(shelf(one.after), shelf(one.before));
      expect(changes(usedIn(one.before), usedIn(one.after)), because(one)).toEqual(left);
    }
  });

  test('the journal has every change, and its sum is what the shelf has changed by', () => {
    for (const happened of walks) {
      const last = happened.at(-1)?.after;
      if (last === undefined) continue;
      const rows = happened.flatMap(({ before, after }) =>
        after.journal === before.journal ? [] : after.journal.filter((row) => !before.journal.includes(row)),
      );
      const sums = addAll(rows.map(({ item, change }) => ({ [item]: change })));
      expect(changes({}, sums)).toEqual(changes(shelf(happened[0]?.before ?? last), shelf(last)));
      for (const row of rows) expect(Number.isInteger(row.change) && row.change !== 0).toBe(true);
    }
  });

  test('what orders in the making still need is what is put aside, and never below nothing', () => {
    for (const { after } of walks.flat())
      for (const { reserved, used } of Object.values(after.lots))
        for (const amount of [...Object.values(reserved), ...Object.values(used)])
          expect(amount).toBeGreaterThanOrEqual(0);
  });

  test('the walks use up material and take it back, so that the rest says something', () => {
    const whys = new Set(walks.flat().flatMap(({ after }) => after.journal.map(({ why }) => why)));
    expect([...whys]).toEqual(expect.arrayContaining(['used', 'taken-back']));
  });
});

const addAll = (all: readonly Readonly<Record<string, number>>[]): Record<string, number> =>
  all.reduce<Record<string, number>>((sum, one) => {
    for (const [item, change] of Object.entries(one)) sum[item] = (sum[item] ?? 0) + change;
    return sum;
  }, {});
