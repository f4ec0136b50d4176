import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { storeContract } from '../../contracts/store.contract.ts';
import { badDisk } from './badDisk.ts';
import { newFolder } from './folder.ts';
import { add, countIn } from './counting.ts';

storeContract('lowdb', async () => {
  const folder = newFolder();
  let failing = 0;
  const disk = badDisk(folder, (call) => (call === 'write' && failing-- > 0 ? 'ENOSPC' : undefined));
  const store = await countIn(folder, { disk });
  return { store, failNext: (count) => void (failing = count), reopened: async () => (await countIn(folder)).read() };
});

test('changes that come together share a write, and none is answered before it is done', async () => {
  const folder = newFolder();
  const writes: string[] = [];
  const disk = badDisk(folder, (call) => void writes.push(call));
  const store = await countIn(folder, { disk });
  const order: string[] = [];
  await Promise.all(
    Array.from({ length: 50 }, async (_, index) => {
      await store.change(add);
      order.push(`${index} after ${writes.filter((call) => call === 'sync').length}`);
    }),
  );
  expect(writes.filter((call) => call === 'write')).toHaveLength(1);
  expect(order).toEqual(Array.from({ length: 50 }, (_, index) => `${index} after 1`));
});

test('a step sees the steps before it, a reader only what is on the disk', async () => {
  const store = await countIn(newFolder());
  const first = store.change(add);
  const second = store.change(add);
  expect(store.read()).toEqual({ count: 0 });
  expect(await Promise.all([first, second])).toEqual([1, 2]);
  expect(store.read()).toEqual({ count: 2 });
});

const BOUNDARIES = ['write', 'rename', 'link', 'sync', 'remove'] as const;
const FAULTS = ['ENOSPC', 'EIO', 'EROFS', 'EDQUOT', 'short'] as const;

test.each(BOUNDARIES.flatMap((call) => FAULTS.map((fault) => [call, fault] as const)))(
  'when %s fails with %s, at whatever write, memory and disk say the same and what was told stays',
  async (call, fault) => {
    for (const nth of [1, 2, 4, 7]) {
      const folder = newFolder();
      let seen = 0;
      const trouble = (what: string) => (what === call && ++seen === nth ? fault : undefined);
      const store = await countIn(folder, { disk: badDisk(folder, trouble), clock: clockByDay() });
      let told = 0;
      for (let turn = 0; turn < 9; turn += 1) {
        const before = told;
        told = await store.change(add).catch(() => before);
        expect(store.read()).toEqual({ count: told });
        expect((await countIn(folder)).read()).toEqual({ count: told });
      }
      expect(told).toBeGreaterThanOrEqual(8);
    }
  },
);

test('a disk that cannot be written at all is said each time, and the folder stays as it was', async () => {
  const folder = newFolder();
  await (await countIn(folder)).change(add);
  const before = readdirSync(folder);
  const store = await countIn(folder, { disk: badDisk(folder, (call) => (call === 'write' ? 'EROFS' : undefined)) });
  for (let turn = 0; turn < 3; turn += 1) await expect(store.change(add)).rejects.toMatchObject({ code: 'EROFS' });
  expect(store.read()).toEqual({ count: 1 });
  expect(readdirSync(folder)).toEqual(before);
});

/** Every third look at the clock is a day later, so that daily copies are made too. */
function clockByDay(): () => number {
  let looks = 0;
  return () => Date.UTC(2026, 10, 25) + Math.floor(looks++ / 3) * 86_400_000;
}
