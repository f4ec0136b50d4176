import { appendFileSync, readFileSync, readdirSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fileArchive, rewriteMonth } from '../../../src/adapters/lowdb/archive.ts';
import { openDisk } from '../../../src/adapters/lowdb/disk.ts';
import { badDisk } from './badDisk.ts';
import { newFolder } from './folder.ts';
import { KEY, NOON } from './counting.ts';

const closed = (id: string, month = '2026-11') => ({ id, month, record: { id, buyer: 'Ann Möller' } });
const parts = (folder: string, key: Uint8Array = KEY, warn: (says: string) => void = () => {}) => ({
  disk: openDisk(folder),
  key,
  clock: () => NOON,
  warn,
});
const ids = (rows: readonly Readonly<{ id: string }>[]) => rows.map(({ id }) => id);
const FILE = 'archive-2026-11.sealed';

test('finished orders rest in the file of their month', async () => {
  const folder = newFolder();
  const archive = fileArchive(parts(folder));
  await archive.append([closed('K-1'), closed('K-2', '2026-12')]);
  await archive.append([closed('K-3')]);
  expect(await archive.months()).toEqual(['2026-11', '2026-12']);
  expect(await archive.read('2026-11')).toEqual([closed('K-1'), closed('K-3')]);
  expect(await archive.read('2026-10')).toEqual([]);
  expect(statSync(join(folder, FILE)).mode & 0o777).toBe(0o600);
  expect(readFileSync(join(folder, FILE), 'latin1')).not.toMatch(/Ann M|"buyer"/);
});

test('what is put away a second time is there once', async () => {
  const archive = fileArchive(parts(newFolder()));
  await archive.append([closed('K-1'), closed('K-2')]);
  await archive.append([closed('K-1'), closed('K-2'), closed('K-3')]);
  expect(ids(await archive.read('2026-11'))).toEqual(['K-1', 'K-2', 'K-3']);
});

test('wherever a cut ends an append, what was there stays and the next append is whole', async () => {
  const folder = newFolder();
  const archive = fileArchive(parts(folder));
  await archive.append([closed('K-1')]);
  const before = statSync(join(folder, FILE)).size;
  await archive.append([closed('K-2')]);
  const after = readFileSync(join(folder, FILE));
  for (let size = before; size < after.length; size += 7) {
    writeFileSync(join(folder, FILE), after.subarray(0, size));
    expect(ids(await archive.read('2026-11'))).toEqual(['K-1']);
    await archive.append([closed('K-2')]);
    expect(ids(await archive.read('2026-11'))).toEqual(['K-1', 'K-2']);
  }
});

test('a short write is an error, and is mended by the next append', async () => {
  const folder = newFolder();
  await fileArchive(parts(folder)).append([closed('K-1')]);
  const disk = badDisk(folder, (call) => (call === 'append' ? 'short' : undefined));
  await expect(fileArchive({ ...parts(folder), disk }).append([closed('K-2')])).rejects.toMatchObject({
    code: 'ENOSPC',
  });
  await fileArchive(parts(folder)).append([closed('K-2')]);
  expect(ids(await fileArchive(parts(folder)).read('2026-11'))).toEqual(['K-1', 'K-2']);
});

test('a damaged line is said with its place, and the others are read', async () => {
  const folder = newFolder();
  const said: string[] = [];
  const archive = fileArchive(parts(folder, KEY, (sentence) => said.push(sentence)));
  for (const id of ['K-1', 'K-2', 'K-3']) await archive.append([closed(id)]);
  const lines = readFileSync(join(folder, FILE), 'latin1').split('\n');
  lines[1] = `A${lines[1]?.slice(1) ?? ''}`;
  writeFileSync(join(folder, FILE), lines.join('\n'), 'latin1');
  expect(ids(await archive.read('2026-11'))).toEqual(['K-1', 'K-3']);
  expect(said.join()).toMatch(/archive-2026-11\.sealed, line 2 is damaged/);
});

test('with another key the archive is not read', async () => {
  const folder = newFolder();
  await fileArchive(parts(folder)).append([closed('K-1')]);
  await expect(fileArchive(parts(folder, Buffer.alloc(32, 9))).read('2026-11')).rejects.toThrow(/another key/);
});

test('appending looks at the end of the file only, however long it is', async () => {
  const folder = newFolder();
  await fileArchive(parts(folder)).append([closed('K-1')]);
  appendFileSync(join(folder, FILE), `${'A'.repeat(300_000)}\n${'B'.repeat(200_000)}`);
  const reads: string[] = [];
  const disk = badDisk(folder, (call, _n, name) => void (call === 'read' && reads.push(name)));
  await fileArchive({ ...parts(folder), disk }).append([closed('K-2')]);
  expect(reads).toEqual([]);
  expect(readFileSync(join(folder, FILE), 'latin1')).not.toMatch(/BBBBBBBB/);
});

test('a month is written anew without what has to go', async () => {
  const folder = newFolder();
  const archive = fileArchive(parts(folder));
  await archive.append([closed('K-1'), closed('K-2'), closed('K-3')]);
  await rewriteMonth(parts(folder), '2026-11', (row) => (row.id === 'K-2' ? null : { ...row, record: null }));
  expect(await archive.read('2026-11')).toEqual([
    { ...closed('K-1'), record: null },
    { ...closed('K-3'), record: null },
  ]);
  expect(readdirSync(folder)).toEqual([FILE]);
  truncateSync(join(folder, FILE), 0);
});
