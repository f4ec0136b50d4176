import { readFileSync, readdirSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { bundled, unbundled } from '../../../src/adapters/lowdb/backup.ts';
import { check } from '../../../src/adapters/lowdb/check.ts';
import { openLowdb } from '../../../src/adapters/lowdb/open.ts';
import { restore } from '../../../src/adapters/lowdb/restore.ts';
import { newFolder } from './folder.ts';
import { COUNTING, NOON, add } from './counting.ts';

const HEX = 'ab'.repeat(32);
const parts = (root: string, hex = HEX) => ({
  folder: join(root, 'live'),
  key: { hex },
  versions: COUNTING,
  empty: { count: 0 },
  clock: () => NOON,
  say: () => {},
});

/** A book with a count of 3 and two finished orders, and its backup. */
async function shop() {
  const root = newFolder();
  const book = await openLowdb(parts(root));
  for (let turn = 0; turn < 3; turn += 1) await book.store.change(add);
  await book.archive.append([{ id: 'K-1', month: '2026-10', record: { name: 'Ann Möller' } }]);
  await book.archive.append([{ id: 'K-2', month: '2026-11', record: null }]);
  const bytes = await book.backup();
  await book.close();
  return { root, bytes };
}

test('what was backed up is there again on another computer with the same key', async () => {
  const { bytes } = await shop();
  expect(bytes.toString('latin1')).not.toMatch(/Ann M|"count"/);
  const elsewhere = newFolder();
  expect(await restore(parts(elsewhere), bytes)).toBe(2);
  const book = await openLowdb(parts(elsewhere));
  expect(book.store.read()).toEqual({ count: 3 });
  expect(await book.archive.read('2026-10')).toEqual([{ id: 'K-1', month: '2026-10', record: { name: 'Ann Möller' } }]);
  await book.store.change(add);
  await book.close();
});

test('an order that is put away while the backup is made is in it all the same', async () => {
  const shelf = { closing: ['K-1'], archived: [] as { id: string; month: string; record: null }[] };
  const book = { current: { closing: shelf.closing } };
  const putAway = (): void => {
    shelf.archived = [{ id: 'K-1', month: '2026-11', record: null }];
    book.current = { closing: [] };
  };
  const archive = {
    append: async () => {},
    rewrite: async () => {},
    months: async () => ['2026-11'],
    read: async () => {
      const rows = shelf.archived;
      putAway();
      return rows;
    },
  };
  const versions = { steps: [], schema: z.strictObject({ closing: z.array(z.string()) }) };
  const key = Buffer.alloc(32, 7);
  const bytes = await bundled({ store: { read: () => book.current }, archive, versions, key, clock: () => NOON });
  const found = unbundled(bytes, key, versions);
  expect([...found.book.closing, ...found.archive.map(({ id }) => id)]).toContain('K-1');
});

test('a backup is never put over a book that is there', async () => {
  const { root, bytes } = await shop();
  const before = readdirSync(join(root, 'live'));
  await expect(restore(parts(root), bytes)).rejects.toThrow(/already.*nothing was changed/);
  expect(readdirSync(join(root, 'live'))).toEqual(before);
});

test.each([
  ['with another key', (bytes: Buffer) => bytes, 'cd'.repeat(32), /another key/],
  ['cut off', (bytes: Buffer) => bytes.subarray(0, 100), HEX, /damaged/],
  ['that is some other file', () => Buffer.from('hello'), HEX, /damaged or no backup/],
])('a backup %s is refused, and nothing is left behind', async (_, bytesOf, hex, says) => {
  const { bytes } = await shop();
  const elsewhere = newFolder();
  await expect(restore(parts(elsewhere, hex), bytesOf(bytes))).rejects.toThrow(says);
  expect(readdirSync(elsewhere)).toEqual([]);
});

test('a file of the book itself is not taken for a backup', async () => {
  const { root } = await shop();
  const bytes = readFileSync(join(root, 'live', 'book-0000000003.sealed'));
  await expect(restore(parts(newFolder()), bytes)).rejects.toThrow(/not a backup/);
});

test('a look at the book names every file, and what is wrong with it, and changes nothing', async () => {
  const { root } = await shop();
  const live = join(root, 'live');
  expect(await check(parts(root))).toMatchObject({ good: 4, faults: [] });
  truncateSync(join(live, 'book-0000000003.sealed'), 30);
  writeFileSync(join(live, 'archive-2026-10.sealed'), 'AAAA\n', { flag: 'a' });
  const before = readdirSync(live);
  const found = await check(parts(root));
  expect(found.good).toBe(3);
  expect(found.lines).toContainEqual('2026-11: 1 finished orders');
  expect(found.faults).toEqual([
    'book-0000000003.sealed: damaged',
    expect.stringMatching(/archive-2026-10\.sealed, line 2 is damaged/),
  ]);
  expect(readdirSync(live)).toEqual(before);
});

test('a look runs beside the program', async () => {
  const { root } = await shop();
  const book = await openLowdb(parts(root));
  expect(await check(parts(root))).toMatchObject({ faults: [] });
  await book.close();
});

test('where there is no book, that is said', async () => {
  await expect(check(parts(newFolder()))).rejects.toThrow(/no book/);
});
