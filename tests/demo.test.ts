import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
const run = promisify(execFile);

test('the demo plays one order from the first word to the parcel', { timeout: 60_000 }, async () => {
  const { stdout } = await run('npm', ['run', '--silent', 'demo'], { cwd: ROOT });
  expect(stdout).toContain("BUYER'S CHAT");
  expect(stdout).toContain('Melt ');
  expect(stdout).toContain('TRACK-0001');
});

test('the demo says which step did not go through, and leaves with 1', { timeout: 60_000 }, async () => {
  const shop = JSON.parse(readFileSync(join(ROOT, 'data', 'demo-shop.json'), 'utf8')) as { stock: { item: string }[] };
  const stock = shop.stock.map((row) => (row.item === 'hook:60-flat-heavy:3/0' ? { ...row, onHand: 0 } : row));
  const file = join(mkdtempSync(join(tmpdir(), 'jigwright-demo-')), 'shop.json');
  writeFileSync(file, JSON.stringify({ ...shop, stock }));
  const failed = await run('npm', ['run', '--silent', 'demo'], {
    cwd: ROOT,
    env: { ...process.env, SHOP_FILE: file },
  }).catch((error: unknown) => error as { code: number; stderr: string });
  expect(failed).toMatchObject({ code: 1 });
  expect(failed.stderr).toMatch(/Step \d+/);
});
