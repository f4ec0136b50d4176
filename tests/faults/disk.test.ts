import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openDisk } from '../../src/adapters/lowdb/disk.ts';
import { openLowdb, type Lowdb } from '../../src/adapters/lowdb/open.ts';
import { NotRecorded } from '../../src/app/store.ts';
import { badDisk, type DiskCall, type Trouble } from '../adapters/lowdb/badDisk.ts';
import { add, COUNTING, DAY, KEY, NOON } from '../adapters/lowdb/counting.ts';
import type { Count } from '../contracts/store.contract.ts';

/** A full disk, a broken one, one that was made read-only, a quota, and a write of which only half arrives. */
const FAULTS = ['ENOSPC', 'EIO', 'EROFS', 'EDQUOT', 'short'] as const;
/** Enough for the daily copy, for pruning, and for the archive's next month. */
const STEPS = 9;

/** What the outside was told is safe. */
type Told = { count: number; archived: string[] };

const open = (folder: string, at: { now: number }, trouble: Trouble) => {
  openDisk(folder).close();
  const key = { hex: Buffer.from(KEY).toString('hex') };
  const parts = { folder, key, versions: COUNTING, empty: { count: 0 }, clock: () => at.now, say: () => {} };
  return openLowdb<Count>({ ...parts, disk: badDisk(folder, trouble) });
};

/** Counts and archives over two days; whatever fails is tried once more, as the program does. */
async function work(book: Lowdb<Count>, at: { now: number }, told: Told): Promise<number> {
  let failed = 0;
  const twice = async (act: () => Promise<void>): Promise<void> => {
    await act().catch(async (error: unknown) => {
      failed += 1;
      expect(error instanceof NotRecorded || (error instanceof Error && 'code' in error)).toBe(true);
      expect(book.store.read().count).toBe(told.count);
      await act();
    });
  };
  for (let step = 1; step <= STEPS; step += 1) {
    await twice(async () => {
      const count = await book.store.change(add);
      told.count = count;
    });
    const id = `K-${step}`;
    const month = step < 6 ? '2026-11' : '2026-12';
    await twice(() => book.archive.append([{ id, month, record: { step } }]));
    told.archived.push(id);
    if (step % 3 === 0) at.now += DAY;
  }
  return failed;
}

/** The whole of it with the n-th disk call failing once; then a start on a good disk must find what was told. */
async function withFault(nth: number, code: string): Promise<Readonly<{ call: DiskCall | null; failed: number }>> {
  const folder = mkdtempSync(join(tmpdir(), 'jig-disk-'));
  const at = { now: NOON };
  const told: Told = { count: 0, archived: [] };
  let hit: DiskCall | null = null;
  const trouble: Trouble = (call, n) => {
    if (n !== nth) return undefined;
    hit = call;
    return code;
  };
  try {
    const book = await open(join(folder, 'live'), at, trouble);
    const failed = await work(book, at, told);
    await book.close();
    const again = await open(join(folder, 'live'), at, () => undefined);
    const rows = [...(await again.archive.read('2026-11')), ...(await again.archive.read('2026-12'))];
    expect(again.store.read()).toEqual({ count: told.count });
    expect(rows.map(({ id }) => id)).toEqual(told.archived);
    await again.close();
    return { call: hit, failed };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

test('at every write boundary and with every fault of the disk, nothing that was told is lost and nothing is there twice', async () => {
  const table = new Map<DiskCall, Map<string, { times: number; failed: number }>>();
  let runs = 0;
  for (let nth = 1, last = false; !last; nth += 1)
    for (const code of FAULTS) {
      const { call, failed } = await withFault(nth, code);
      last = call === null;
      if (call === null) break;
      runs += 1;
      const row = table.get(call) ?? new Map<string, { times: number; failed: number }>();
      const cell = row.get(code) ?? { times: 0, failed: 0 };
      table.set(call, row.set(code, { times: cell.times + 1, failed: cell.failed + failed }));
    }
  const lines = [...table].map(
    ([call, row]) =>
      `${call.padEnd(8)}${FAULTS.map((code) => `${row.get(code)?.failed}/${row.get(code)?.times}`.padStart(9)).join('')}`,
  );
  console.info(
    `${runs} runs, each with one fault; changes refused and tried again / faults\n${''.padEnd(8)}${FAULTS.map((code) => code.padStart(9)).join('')}\n${lines.join('\n')}`,
  );
  for (const call of ['write', 'append', 'rename', 'sync', 'link', 'remove'] as const)
    expect(table.has(call), call).toBe(true);
  expect(runs).toBeGreaterThan(200);
}, 60_000);

test('the newest book cut short at any of forty places, or with a bit flipped there, is passed over for the one before', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'jig-disk-'));
  const at = { now: NOON };
  const live = join(folder, 'live');
  const book = await open(live, at, () => undefined);
  for (let step = 0; step < 4; step += 1) await book.store.change(add);
  await book.close();
  const newest = join(
    live,
    readdirSync(live)
      .filter((name) => name.startsWith('book-'))
      .toSorted()
      .at(-1) ?? '',
  );
  const whole = readFileSync(newest);
  for (let place = 0; place < 40; place += 1) {
    const at40 = Math.floor((whole.length * place) / 40);
    const flipped = Buffer.from(whole);
    flipped.writeUInt8(flipped.readUInt8(at40) ^ 0x10, at40);
    for (const bytes of [whole.subarray(0, at40), flipped]) {
      writeFileSync(newest, bytes);
      const again = await open(live, at, () => undefined);
      expect(again.store.read()).toEqual({ count: 3 });
      await again.close();
    }
  }
  rmSync(folder, { recursive: true, force: true });
});
