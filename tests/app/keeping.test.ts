import { expect, test } from 'vitest';
import type { Closed } from '../../src/app/book.ts';
import type { Archive } from '../../src/app/closing.ts';
import { purged, reduceArchive, type Reductions } from '../../src/app/keeping.ts';
import { queue } from '../../src/app/outbox.ts';
import { soldOnly, unaddressed } from '../../src/domain/desk/forgotten.ts';
import { memoryStore } from './memoryStore.ts';
import { emptyToy, letter } from './toyShop.ts';

const DAY = 86_400_000;
const SEPTEMBER = Date.UTC(2026, 8, 10);
const OCTOBER = Date.UTC(2026, 9, 10);
const RULES: Reductions = { forgotten: soldOnly, old: unaddressed };

const order = (id: string, buyer: number, shippedAt: number): Closed => ({
  id,
  month: new Date(shippedAt).toISOString().slice(0, 7),
  record: {
    id,
    buyer,
    shippedAt,
    address: '12 Shore Road',
    photos: [['p']],
    said: [['for Sam']],
    tracking: 'T',
    money: { total: 4200 },
  },
});

function archiveOf(rows: readonly Closed[]) {
  const at = { rows: [...rows], rewritten: [] as string[] };
  const archive: Archive = {
    append: async () => {},
    read: async (month) => at.rows.filter((row) => row.month === month),
    months: async () => [...new Set(at.rows.map(({ month }) => month))].toSorted(),
    rewrite: async (month, keep) => {
      at.rewritten.push(month);
      at.rows = at.rows.map((row) => (row.month === month ? keep(row) : row));
    },
  };
  return { at, archive };
}

const until = (instant: number) => ({ day: new Date(instant).toISOString().slice(0, 10), instant });
const records = (rows: readonly Closed[]) => rows.map(({ record }) => record as Record<string, unknown>);

test('the address of a shipped order goes when its days are over, and what was sold stays', async () => {
  const { at, archive } = archiveOf([order('K-1', 7, SEPTEMBER), order('K-2', 7, OCTOBER)]);
  await reduceArchive(memoryStore(emptyToy), archive, RULES, until(SEPTEMBER + DAY));
  expect(records(at.rows)).toMatchObject([
    { address: null, photos: [], said: [], tracking: null, buyer: 7, money: { total: 4200 } },
    { address: '12 Shore Road', tracking: 'T' },
  ]);
});

test('a day is looked at once, and a later look begins where the last one ended', async () => {
  const { at, archive } = archiveOf([order('K-1', 7, SEPTEMBER), order('K-2', 7, OCTOBER)]);
  const store = memoryStore(emptyToy);
  await reduceArchive(store, archive, RULES, until(OCTOBER - DAY));
  at.rewritten = [];
  await reduceArchive(store, archive, RULES, until(OCTOBER - DAY));
  expect(at.rewritten).toEqual([]);
  await reduceArchive(store, archive, RULES, until(OCTOBER + DAY));
  expect(at.rewritten).toEqual(['2026-10']);
  expect(records(at.rows).map(({ address }) => address)).toEqual([null, null]);
});

test('of somebody who is forgotten every finished order is reduced, of others none; and it is noted only afterwards', async () => {
  const { at, archive } = archiveOf([order('K-1', 7, SEPTEMBER), order('K-2', 8, OCTOBER)]);
  const book = { ...purged(emptyToy, [7]), addressesUntil: until(SEPTEMBER - DAY).day };
  const store = memoryStore(book);
  const broken: Archive = { ...archive, rewrite: () => Promise.reject(new Error('EIO')) };
  await expect(reduceArchive(store, broken, RULES, until(SEPTEMBER - DAY))).rejects.toThrow('EIO');
  expect(store.read().forgetting).toEqual([7]);
  await reduceArchive(store, archive, RULES, until(SEPTEMBER - DAY));
  expect(store.read().forgetting).toEqual([]);
  expect(records(at.rows)).toMatchObject([
    { buyer: 1, address: null, tracking: null, money: { total: 4200 } },
    { buyer: 8, address: '12 Shore Road' },
  ]);
});

test('letters, undelivered letters and cards of somebody who is forgotten are gone from the book', () => {
  const book = queue(queue(emptyToy, [letter(7, 'a')], '1', 1), [letter(8, 'b')], '2', 1);
  const card = { message: 1, picture: false, at: 1 };
  const full = {
    ...book,
    cards: { '7/draft': card, '8/draft': card },
    dead: book.outbox.map((one) => ({ letter: one, why: 'unreachable', at: 1 })),
  };
  const left = purged(full, [7]);
  expect(left.outbox.map(({ to }) => to)).toEqual([8]);
  expect(left.dead.map(({ letter: { to } }) => to)).toEqual([8]);
  expect(Object.keys(left.cards)).toEqual(['8/draft']);
});

test('what is no order comes back as it is', () => {
  for (const record of [null, 'x', {}, { buyer: 'x' }]) {
    expect(soldOnly(record, [7])).toBe(record);
    expect(unaddressed(record, OCTOBER)).toBe(record);
  }
});
