import { describe, expect, test } from 'vitest';
import { hasBegun, type Lot } from '../../../src/domain/bench/lot.ts';
import type { Command } from '../../../src/domain/desk/command.ts';
import { onHandOf } from '../../../src/domain/desk/shelves.ts';
import type { Desk } from '../../../src/domain/desk/state.ts';
import { addAmounts } from '../../../src/domain/stock/needs.ts';
import { SHOP } from '../../demoShop.ts';
import { oneOf, said, tapped, walk, type Aside, type Happened } from './walk.ts';

const SEEDS = [3, 14, 159];
const ACTS = 800;

/** Now and then a lot is split, joined, made again or shelved, an order cancelled, or the shelf counted wrong. */
const tinkering: Aside = (random, desk) => {
  if (random() > 0.1) return undefined;
  const fresh = Object.values(desk.lots).filter((lot) => !hasBegun(lot));
  const begun = Object.values(desk.lots).filter((lot) => hasBegun(lot));
  const change = (what: string, { id }: Lot, ...more: readonly string[]): Command =>
    tapped('apply', '-', [what, id, ...more].join(' '));
  return oneOf(random, [
    ...fresh.flatMap((lot) => [change('split', lot, '1', `${lot.heads}`), change('split', lot, '3', `${lot.heads}`)]),
    ...fresh
      .filter((lot) => fresh.filter(({ order }) => order === lot.order).length > 1)
      .flatMap((lot) => [change('join', lot), change('join', lot), change('join', lot)]),
    ...begun.flatMap((lot) => [change('remake', lot), change('shelve', lot), change('shelve', lot)]),
    ...begun.flatMap((lot) => [change('split', lot, '2', `${lot.heads}`), change('join', lot)]),
    ...begun.slice(0, 1).map(({ order }) => tapped('grant-cancel', order, '-')),
    ...['count size 1 90 degree hooks 2', 'got 60 size 1 90 degree hooks', 'count lead 20', 'got 5 kg lead'].map(said),
    ...['undo', '1 bad', '3 bad', '9 bad'].map(said),
  ]);
};

const walks = SEEDS.flatMap((seed) => [[...walk(seed, ACTS, tinkering)], [...walk(seed, ACTS)]]);

type Sums = Readonly<Record<string, number>>;

const usedIn = (desk: Desk): Sums => addAmounts(Object.values(desk.lots).map(({ used }) => used));
const shelf = (desk: Desk): Sums => onHandOf(SHOP, desk);
const newRows = ({ before, after }: Happened): Desk['journal'] => {
  const known = new Set(before.journal);
  return after.journal.filter((row) => !known.has(row));
};
const because = ({ command }: Happened): string => JSON.stringify(command).slice(0, 160);

describe('over thousands of acts at random, the material adds up to the gram and the piece', () => {
  test('material that came in is on hand, in work, or in what left: split, joined, made again, shelved, cancelled, taken back or used beyond the count', () => {
    for (const happened of walks) {
      let came = shelf(happened[0]?.before ?? expect.fail());
      // An order that left with money open is written down again when that is settled.
      const left = new Map<string, Sums>();
      for (const one of happened) {
        const rows = newRows(one).filter(({ why }) => why !== 'used' && why !== 'taken-back');
        came = sum([came, ...rows.map(({ item, change }) => ({ [item]: change }))]);
        for (const { id, used } of one.closed) left.set(id, used);
        const gone = sum([...left.values()]);
        expect(nonZero(sum([shelf(one.after), usedIn(one.after), gone])), because(one)).toEqual(nonZero(came));
      }
    }
  });

  test('the journal has every change, and its sum is what the shelf has changed by', () => {
    for (const happened of walks) {
      for (const one of happened) {
        const rows = newRows(one);
        const left = sum([shelf(one.before), ...rows.map(({ item, change }) => ({ [item]: change }))]);
        expect(nonZero(left), because(one)).toEqual(nonZero(shelf(one.after)));
        for (const row of rows) expect(Number.isInteger(row.change) && row.change !== 0).toBe(true);
      }
    }
  });

  test('what is on hand, put aside or used is never below nothing', () => {
    for (const { after } of walks.flat()) {
      const lots = Object.values(after.lots);
      const all = [after.onHand, ...lots.map(({ reserved }) => reserved), ...lots.map(({ used }) => used)];
      expect(all.flatMap((one) => Object.values(one)).every((amount) => amount >= 0)).toBe(true);
    }
  });

  test('the walks do all of it, so that the rest says something', () => {
    const whys = new Set(walks.flat().flatMap((one) => newRows(one).map(({ why }) => why)));
    expect([...whys].sort()).toEqual(['arrived', 'said', 'taken-back', 'uncounted', 'used']);
    const applied = walks.flat().flatMap(({ command, before, after }) => {
      const tap = command.type === 'tapped' ? command.tap : null;
      return tap?.act === 'apply' && before.lots !== after.lots ? [tap.arg.split(' ')[0]] : [];
    });
    expect(applied).toEqual(expect.arrayContaining(['split', 'join', 'remake', 'shelve']));
    expect(walks.flat().some(({ closed }) => closed.some(({ state }) => state === 'cancelled'))).toBe(true);
    expect(walks.flat().some(({ closed }) => closed.some(({ state }) => state === 'shipped'))).toBe(true);
  });
});

const sum = (all: readonly Sums[]): Sums =>
  all.reduce<Record<string, number>>((total, one) => {
    for (const [item, amount] of Object.entries(one)) total[item] = (total[item] ?? 0) + amount;
    return total;
  }, {});

const nonZero = (sums: Sums): Sums =>
  Object.fromEntries(
    Object.entries(sums)
      .filter(([, amount]) => amount !== 0)
      .sort(),
  );
