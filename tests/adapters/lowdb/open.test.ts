import { chmodSync, existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openLowdb } from '../../../src/adapters/lowdb/open.ts';
import { newFolder } from './folder.ts';
import { COUNTING, NOON, add } from './counting.ts';

const parts = (root: string, key = join(root, 'key')) => ({
  folder: join(root, 'live'),
  key: { file: key },
  versions: COUNTING,
  empty: { count: 0 },
  clock: () => NOON,
  say: () => {},
});

test('a book is opened, changed, closed and opened again', async () => {
  const root = newFolder();
  const first = await openLowdb(parts(root));
  await first.store.change(add);
  await first.close();
  const second = await openLowdb(parts(root));
  expect(second.store.read()).toEqual({ count: 1 });
  await second.close();
  expect(existsSync(join(root, 'live', 'lock'))).toBe(false);
  expect(statSync(join(root, 'live')).mode & 0o777).toBe(0o700);
});

test('a change that is under way is kept when the book is closed', async () => {
  const root = newFolder();
  const book = await openLowdb(parts(root));
  const change = book.store.change(add);
  await book.close();
  expect(await change).toBe(1);
  expect((await openLowdb(parts(root))).store.read()).toEqual({ count: 1 });
});

test('two cannot have it at once', async () => {
  const root = newFolder();
  const first = await openLowdb(parts(root));
  await expect(openLowdb(parts(root))).rejects.toMatchObject({ why: 'taken' });
  await first.close();
  await (await openLowdb(parts(root))).close();
});

test('a folder that others can look into is refused with the way to mend it', async () => {
  const root = newFolder();
  mkdirSync(join(root, 'live'));
  chmodSync(join(root, 'live'), 0o755);
  await expect(openLowdb(parts(root))).rejects.toThrow(`chmod 700 ${join(root, 'live')}`);
  expect(readdirSync(join(root, 'live'))).toEqual([]);
});

test('a key inside the folder that it locks is refused', async () => {
  const root = newFolder();
  await expect(openLowdb(parts(root, join(root, 'live', 'key')))).rejects.toThrow(/lies inside DATA_DIR/);
});
