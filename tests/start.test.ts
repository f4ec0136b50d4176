import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { once } from 'node:events';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
const run = promisify(execFile);

const NOON = '2026-11-25T12:00:00-06:00';
const newHome = (): string => mkdtempSync(join(tmpdir(), 'jigwright-start-'));

/** What a start with this environment prints and leaves with, if it ends by itself. */
async function starts(env: Readonly<Record<string, string>>): Promise<Readonly<{ code: number; stderr: string }>> {
  const home = newHome();
  const all = { ...process.env, PORT: '0', DATA_DIR: join(home, 'book'), KEY_FILE: join(home, 'key'), ...env };
  return run('node', ['src/launch.js'], { cwd: ROOT, env: all, timeout: 20_000 }).then(
    ({ stderr }) => ({ code: 0, stderr }),
    (error: unknown) => error as { code: number; stderr: string },
  );
}

describe('a start that cannot be', { timeout: 30_000 }, () => {
  test('names every setting that is wrong', async () => {
    const { code, stderr } = await starts({ BOT_TOKEN: 'x', PORT: '99999', MAKER_IDS: 'me' });
    expect(code).toBe(2);
    for (const name of ['BOT_TOKEN', 'PORT', 'MAKER_IDS']) expect(stderr).toContain(name);
  });

  test('names every fault of the shop file, with its place and the nearest right word', async () => {
    const shop = JSON.parse(readFileSync(join(ROOT, 'data', 'demo-shop.json'), 'utf8')) as {
      molds: { style: string }[];
      zone: string;
    };
    (shop.molds[0] as { style: string }).style = 'bal';
    shop.zone = 'America/Chicagoo';
    const file = join(newHome(), 'shop.json');
    writeFileSync(file, JSON.stringify(shop));
    const { code, stderr } = await starts({ SHOP_FILE: file });
    expect(code).toBe(2);
    expect(stderr).toMatch(/molds\[0\]\.style.*"bal".*nearest: ball/);
    expect(stderr).toContain('zone');
  });

  test('says that there is no such shop file', async () => {
    const { code, stderr } = await starts({ SHOP_FILE: '/nowhere/shop.json' });
    expect(code).toBe(2);
    expect(stderr).toContain('SHOP_FILE');
  });

  test('says that the folder of the book cannot be made', async () => {
    const file = join(newHome(), 'a-file');
    writeFileSync(file, '');
    const { code, stderr } = await starts({ DATA_DIR: join(file, 'book') });
    expect(code).toBe(2);
    expect(stderr).toMatch(/DATA_DIR\) cannot be used \(ENOTDIR\)/);
  });

  test('says that the port of the rehearsal is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const { code, stderr } = await starts({ PORT: String(port) });
    other.close();
    expect(code).toBe(2);
    expect(stderr).toMatch(/Port \d+ cannot be used \(EADDRINUSE\)/);
  });

  test('leaves a book that it cannot read as it is', async () => {
    const home = newHome();
    const book = join(home, 'book');
    mkdirSync(book, { mode: 0o700 });
    writeFileSync(join(home, 'key'), `${'ab'.repeat(32)}\n`, { mode: 0o600 });
    const file = join(book, 'book-0000000001.sealed');
    writeFileSync(file, '{"this is": "no book', { mode: 0o600 });
    const { code, stderr } = await starts({ DATA_DIR: book, KEY_FILE: join(home, 'key') });
    expect(code).toBe(2);
    expect(stderr.length).toBeGreaterThan(20);
    expect(stderr).not.toMatch(/^\s+at /m);
    expect(readFileSync(file, 'utf8')).toBe('{"this is": "no book');
  });
});

describe('the doors beside the chat', { timeout: 30_000 }, () => {
  const door = async (name: string, rows: readonly unknown[]): Promise<readonly unknown[]> => {
    const child = run('npm', ['run', '--silent', 'jigwright', '--', name], { cwd: ROOT });
    child.child.stdin?.end(rows.map((row) => (typeof row === 'string' ? row : JSON.stringify(row))).join('\n'));
    return (await child).stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as unknown);
  };

  test('every row comes out however slowly it is read, and nobody is scolded for reading only the first', async () => {
    const rows = Array.from({ length: 1500 }, (_, n) =>
      JSON.stringify({ id: `m${n}`, now: NOON, said: '30 1/4 swim' }),
    );
    const file = join(newHome(), 'rows.jsonl');
    writeFileSync(file, rows.join('\n'));
    const read = (into: string) =>
      run('bash', ['-o', 'pipefail', '-c', `node src/launch.js jigwright read < "$0" | ${into}`, file], { cwd: ROOT });
    expect((await read('(sleep 1; wc -l)')).stdout.trim()).toBe('1500');
    const first = await read('head -n 1').catch((error: unknown) => error as { stdout: string; stderr: string });
    expect(first.stdout).toContain('"id":"m0"');
    expect(first.stderr).toBe('');
  });

  test('read says what it understood, and what it did not', async () => {
    const [row, broken] = await door('read', [
      { id: 'a', now: '2026-09-22T19:09:00-05:00', said: '30 1/4 swim heads in tungsten, black, 3/0' },
      '{broken',
    ]);
    expect(row).toEqual({
      id: 'a',
      lines: [{ quantity: 30, style: 'swim', weight: '1/4', hook: '3/0', paint: 'black' }],
      needBy: null,
      shipTo: null,
      unclear: [{ slot: 'metal', said: 'tungsten' }],
    });
    expect(broken).toHaveProperty('error');
  });

  test('quote gives the quote, or the findings', async () => {
    const now = '2026-11-30T18:00:00-06:00';
    const [quoted, refused, again] = await door('quote', [
      {
        now,
        lines: [{ quantity: 25, style: 'ball', weight: '1/4', paint: 'black' }],
        shipTo: 'US-OH',
        needBy: '2026-12-10',
      },
      { now, lines: [{ quantity: 25, style: 'ball', weight: '1/4', guard: 'black' }], shipTo: 'US-OH', needBy: null },
      { now: 'noon', lines: [{ quantity: 25, style: 'ball' }], shipTo: 'US-OH' },
    ]);
    expect(quoted).toMatchObject({ quote: { needByMet: true, shipTo: 'US-OH' } });
    expect(refused).toMatchObject({ findings: [{ why: { code: 'no-guard-hole' } }] });
    expect(again).toHaveProperty('error');
  });

  test('an unknown door names the doors there are', async () => {
    const failed = await run('npm', ['run', '--silent', 'jigwright', '--', 'window'], { cwd: ROOT }).catch(
      (error: unknown) => error as { code: number; stderr: string },
    );
    expect(failed).toMatchObject({ code: 2 });
    expect(failed.stderr).toContain('read, quote, books, plan, backup, restore, check, export');
  });
});
