import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { takeLock } from '../../../src/adapters/lowdb/lock.ts';
import { newFolder } from './folder.ts';

const LOCK = new URL('../../../src/adapters/lowdb/lock.ts', import.meta.url).href;
const script = (folder: string, then: string): string[] => [
  '--import',
  'tsx',
  '--input-type=module',
  '-e',
  `const { takeLock } = await import('${LOCK}');
   try { takeLock('${folder}'); console.log('taken'); ${then} } catch (error) { console.log(error.message); process.exit(3); }`,
];

test('a second program on the same book is refused with a sentence', () => {
  const folder = newFolder();
  const lock = takeLock(folder);
  const second = spawnSync(process.execPath, script(folder, ''), { encoding: 'utf8' });
  expect(second.status).toBe(3);
  expect(second.stdout).toMatch(new RegExp(`in use by process ${process.pid}.*Stop the other one first`));
  lock.release();
  expect(existsSync(join(folder, 'lock'))).toBe(false);
});

test('after a program was killed, the next one begins at once', async () => {
  const folder = newFolder();
  const first = spawn(process.execPath, script(folder, 'setInterval(() => {}, 1000);'));
  await once(first.stdout, 'data');
  expect(() => takeLock(folder)).toThrow(/in use/);
  first.kill('SIGKILL');
  await once(first, 'exit');
  takeLock(folder).release();
});

test('a process number that was given out again does not keep the book closed', () => {
  const folder = newFolder();
  takeLock(folder);
  const held = JSON.parse(readFileSync(join(folder, 'lock'), 'utf8'));
  writeFileSync(join(folder, 'lock'), JSON.stringify({ ...held, started: '1' }));
  takeLock(folder).release();
});

test('a lock from another machine or container holds while it is renewed, and half a minute longer', () => {
  const folder = newFolder();
  const path = join(folder, 'lock');
  writeFileSync(path, JSON.stringify({ pid: 1, started: '5', machine: 'elsewhere' }));
  expect(() => takeLock(folder)).toThrow(/another computer; if none runs, start again in 30 seconds/);
  const earlier = new Date(Date.now() - 31_000);
  utimesSync(path, earlier, earlier);
  takeLock(folder).release();
});

test('of many that find the same stale lock, one gets it', async () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'lock'), JSON.stringify({ pid: 2 ** 22 + 1, started: '5', machine: 'gone' }));
  const earlier = new Date(Date.now() - 60_000);
  utimesSync(join(folder, 'lock'), earlier, earlier);
  const rivals = Array.from({ length: 5 }, () =>
    spawn(process.execPath, script(folder, 'setTimeout(() => {}, 60_000);')),
  );
  const words = await Promise.all(rivals.map(async ({ stdout }) => String((await once(stdout, 'data'))[0])));
  expect(words.filter((said) => said.startsWith('taken'))).toHaveLength(1);
  for (const rival of rivals) rival.kill('SIGKILL');
});

test('a lock that a power cut left empty does not keep the book closed', () => {
  const folder = newFolder();
  writeFileSync(join(folder, 'lock'), '');
  takeLock(folder).release();
});

test('a folder that cannot be written is told as such', () => {
  const file = join(newFolder(), 'a-file');
  writeFileSync(file, '');
  expect(() => takeLock(join(file, 'book'))).toThrow(/DATA_DIR\) cannot be written \(\w+\)\. Make room/);
});
