import { join } from 'node:path';
import { expect } from 'vitest';
import { fileArchive, monthsOf } from '../../src/adapters/lowdb/archive.ts';
import { openDisk } from '../../src/adapters/lowdb/disk.ts';
import { readKey } from '../../src/adapters/lowdb/key.ts';
import { BUYER, type Story } from '../stories/story.ts';

/** A buyer with the open order K-1001 takes a copy, asks to be forgotten, and is when the order is over. */
export async function exportsAndForgets(story: Story, address: string): Promise<void> {
  const { buyer, rehearsal, desk } = story;
  await buyer.says('/export');
  const file = rehearsal.room.read().files.at(-1);
  const copy = JSON.parse(Buffer.from(file?.base64 ?? '', 'base64').toString()) as Record<string, unknown>;
  expect(copy).toMatchObject({ person: { id: BUYER }, openOrders: [{ id: 'K-1001', address }] });
  expect(await buyer.says('/export')).toMatch(/last hour/);

  expect(await buyer.says('delete my data')).toContain('K-1001');
  expect(desk().people[BUYER]).toBeDefined();
  await buyer.taps('Yes, delete it');
  expect(desk().orders['K-1001']).toMatchObject({ address });
  await buyer.forges('cancel-yes|K-1001|0|-');
  await story.later(1);
  await story.restart();

  const archive = await archived(story);
  expect(JSON.stringify([desk(), archive])).not.toMatch(new RegExp(`Shore|"${BUYER}"|:${BUYER}[,}]`));
  expect(archive.find(({ id }) => id.startsWith('K-1001'))).toMatchObject({
    record: { id: 'K-1001', address: null, buyer: 1, shipTo: 'US-OH' },
  });
}

/** An order that is over keeps its address for ninety days. */
export async function addressesGo(story: Story, address: string): Promise<void> {
  await story.other.says('25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio');
  await story.other.taps('Order this');
  await story.other.says(address);
  await story.other.forges('cancel-yes|K-1001|0|-');
  const kept = async () => (await archived(story)).map(({ record }) => (record as { address: unknown }).address);
  await story.later(89 * 24 * 60);
  await story.restart();
  expect(await kept()).toEqual([address]);
  await story.later(2 * 24 * 60);
  await story.restart();
  expect(await kept()).toEqual([null]);
}

/** What rests in the archive, read beside the program. */
async function archived({ home }: Story) {
  const disk = openDisk(join(home, 'book'));
  const key = readKey({ from: { file: join(home, 'key') }, inUse: 'book', say: () => {} });
  const archive = fileArchive({ disk, key, clock: Date.now, warn: () => {} });
  const rows = (await Promise.all(monthsOf(disk.names()).map((month) => archive.read(month)))).flat();
  disk.close();
  return rows;
}
