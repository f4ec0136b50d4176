import { readFileSync, readdirSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { BookFile } from '../../../src/adapters/lowdb/bookFile.ts';
import { openDisk } from '../../../src/adapters/lowdb/disk.ts';
import { generations } from '../../../src/adapters/lowdb/generations.ts';
import { badDisk } from './badDisk.ts';
import { newFolder } from './folder.ts';
import { COUNTING, DAY, KEY, NOON, add, countIn } from './counting.ts';

/** A folder after `writes` changes. */
async function written(writes: number): Promise<string> {
  const folder = newFolder();
  const store = await countIn(folder);
  for (let turn = 0; turn < writes; turn += 1) await store.change(add);
  return folder;
}
const newest = (folder: string, back = 0): string => join(folder, generations(readdirSync(folder))[back] ?? '');
const everything = (folder: string) =>
  readdirSync(folder).map((name) => [name, readFileSync(join(folder, name)).toString('base64')]);

test('a folder without a book begins with the empty one, and writes nothing for it', async () => {
  const folder = newFolder();
  expect((await countIn(folder)).read()).toEqual({ count: 0 });
  expect(readdirSync(folder)).toEqual([]);
});

test('the last five generations are kept, for their owner only', async () => {
  const folder = await written(12);
  expect(generations(readdirSync(folder))).toEqual(
    ['12', '11', '10', '09', '08'].map((n) => `book-00000000${n}.sealed`),
  );
  for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600);
});

test('each day keeps what was there before its first write, for two weeks', async () => {
  const folder = newFolder();
  let now = NOON;
  const store = await countIn(folder, { clock: () => now });
  for (let day = 0; day < 20; day += 1) {
    await store.change(add);
    await store.change(add);
    now += DAY;
  }
  const days = readdirSync(folder).filter((name) => name.startsWith('day-'));
  expect(days).toHaveLength(14);
  expect(days.at(-1)).toBe('day-2026-12-14.sealed');
});

test('a disk without second names keeps the daily copy all the same', async () => {
  const folder = newFolder();
  const disk = badDisk(folder, (call) => (call === 'link' ? 'EPERM' : undefined));
  let now = NOON;
  const store = await countIn(folder, { disk, clock: () => now });
  await store.change(add);
  now += DAY;
  await store.change(add);
  expect(readdirSync(folder)).toContain('day-2026-11-26.sealed');
});

test.each([
  ['cut to half', (file: string) => truncateSync(file, statSync(file).size >> 1)],
  ['empty', (file: string) => truncateSync(file, 0)],
  ['full of zeros', (file: string) => writeFileSync(file, Buffer.alloc(statSync(file).size))],
  ['the word null', (file: string) => writeFileSync(file, 'null')],
  ['one bit off', (file: string) => writeFileSync(file, flipped(readFileSync(file)))],
])('when the newest generation is %s, the one before it is used, and that is said', async (_, damage) => {
  const folder = await written(3);
  damage(newest(folder));
  const said: string[] = [];
  const store = await countIn(folder, { warn: (sentence) => said.push(sentence) });
  expect(store.read()).toEqual({ count: 2 });
  expect(said.join()).toMatch(/newest book could not be read.*book-0000000002\.sealed is used/s);
  await store.change(add);
  expect((await countIn(folder)).read()).toEqual({ count: 3 });
});

test('a daily copy is used when every generation is damaged, and that is said', async () => {
  const folder = newFolder();
  let now = NOON;
  const said: string[] = [];
  const store = await countIn(folder, { clock: () => now });
  await store.change(add);
  now += DAY;
  for (let turn = 0; turn < 9; turn += 1) await store.change(add);
  for (const name of generations(readdirSync(folder))) truncateSync(join(folder, name), 9);
  expect((await countIn(folder, { warn: (sentence) => said.push(sentence) })).read()).toEqual({ count: 1 });
  expect(said.join()).toMatch(/day-2026-11-26\.sealed is used/);
});

test('a book of which nothing can be read is never begun anew, and nothing is written over', async () => {
  const folder = await written(3);
  for (const name of readdirSync(folder)) truncateSync(join(folder, name), 20);
  const before = everything(folder);
  await expect(countIn(folder)).rejects.toMatchObject({
    why: 'settings',
    message: expect.stringMatching(/Nothing was changed/),
  });
  expect(everything(folder)).toEqual(before);
});

test('a write that a cut left unfinished does not matter', async () => {
  const folder = await written(2);
  writeFileSync(join(folder, 'book.unfinished'), 'half');
  const said: string[] = [];
  expect((await countIn(folder, { warn: (sentence) => said.push(sentence) })).read()).toEqual({ count: 2 });
  expect(said).toEqual([]);
});

test('with another key nothing is read, nothing is changed, and the sentence names the settings', async () => {
  const folder = await written(2);
  const before = everything(folder);
  await expect(countIn(folder, { key: Buffer.alloc(32, 8) })).rejects.toThrow(/JIGWRIGHT_KEY or KEY_FILE/);
  expect(everything(folder)).toEqual(before);
  expect((await countIn(folder, { key: KEY })).read()).toEqual({ count: 2 });
});

test('a book from a newer version is refused, also when an older generation would do', async () => {
  const folder = await written(1);
  const newer = { ...COUNTING, steps: [(old: unknown) => old] };
  await (await countIn(folder, { versions: newer })).change(add);
  const before = everything(folder);
  await expect(countIn(folder)).rejects.toThrow(/newer jigwright \(version 1; this one reads up to 0\)/);
  expect(everything(folder)).toEqual(before);
});

test('a book to which a newer program added something is refused too, rather than yesterday’s copy taken', async () => {
  const folder = await written(1);
  const schema = z.strictObject({ count: z.number(), tips: z.number().default(0) });
  await (
    await countIn(folder, { versions: { steps: [], schema } })
  ).change((old) => ({ next: { ...old, count: 2, tips: 1 }, result: null }));
  const before = everything(folder);
  await expect(countIn(folder)).rejects.toThrow(/newer jigwright/);
  expect(everything(folder)).toEqual(before);
});

test('a book from an older version is brought up to date step by step', async () => {
  const folder = await written(2);
  const steps = [
    (old: unknown) => ({ ...(old as object), note: 'one' }),
    (old: unknown) => ({ ...(old as object), more: 2 }),
  ];
  const schema = z.strictObject({ count: z.number(), note: z.string(), more: z.number() });
  const file = new BookFile({
    disk: openDisk(folder),
    key: KEY,
    versions: { steps, schema },
    clock: () => NOON,
    warn: () => {},
  });
  expect(await file.read()).toEqual({ count: 2, note: 'one', more: 2 });
});

test('a disk that cannot be read stops the start, and an older generation is not taken for the truth', async () => {
  const folder = await written(2);
  const disk = badDisk(folder, (call, n) => (call === 'read' && n === 1 ? 'EIO' : undefined));
  await expect(countIn(folder, { disk })).rejects.toMatchObject({ why: 'disk', message: expect.stringMatching(/EIO/) });
});

test('a hundred writes leave a folder that does not grow', async () => {
  expect(readdirSync(await written(100))).toHaveLength(5 + 1);
});

function flipped(bytes: Buffer): Buffer {
  const middle = bytes.length >> 1;
  bytes[middle] = (bytes[middle] ?? 0) ^ 4;
  return bytes;
}
