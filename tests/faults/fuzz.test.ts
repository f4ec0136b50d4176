import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Desk, deskSchema } from '../../src/domain/desk/state.ts';
import { openProgram } from '../../src/program.ts';
import { openLawFile, openShopFile } from '../../src/shopFile.ts';
import { until } from '../adapters/telegram/toyBot.ts';
import { type Call, hostilePlatform } from './hostilePlatform.ts';
import { STRANGERS, updateBodies } from './updates.ts';

/** `FUZZ=100000 npx vitest run tests/faults/fuzz.test.ts` for the long run. */
const COUNT = Number(process.env['FUZZ'] ?? 1000);
const SEED = Number(process.env['SEED'] ?? 11);
const BATCH = 100;
/** What is proved here does not depend on the medium, so a long run is spared the wait for a disk. */
const PLACE = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();
const MAKER = 101;
const VICTIM = { id: 201, is_bot: false, first_name: 'Sam', language_code: 'en' };
const ADDRESS = 'Sam Fisher\n12 Shore Road\nDuluth, MN 55800';
const TOKEN = '42:AAFakeTokenThatIsLongEnoughToBeOne_00';

const said = (text: string) => ({
  message: { message_id: 1, date: 1, from: VICTIM, chat: { id: VICTIM.id, type: 'private' }, text },
});
const ORDER = ['25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio', 'order it', ADDRESS].map(
  said,
);

/** Everything that only the maker, or the buyer of K-1001, may change. */
const guarded = (desk: Desk) => ({
  order: desk.orders['K-1001'],
  lots: Object.values(desk.lots).filter(({ id }) => id.startsWith('K-1001')),
  sessions: desk.sessions,
  onHand: desk.onHand,
  arrived: desk.arrived,
  shelf: desk.shelf,
  undo: desk.undo,
  daysOff: desk.daysOff,
  garage: desk.garageCelsius,
  draft: desk.drafts[VICTIM.id],
});

test(
  `${COUNT} updates, valid, mutated and hostile: the program goes on, and nobody does what is not theirs`,
  { timeout: 60_000 + COUNT * 30 },
  async () => {
    const begun = performance.now();
    const home = mkdtempSync(join(PLACE, 'jig-fuzz-'));
    let now = Date.UTC(2026, 10, 30, 18);
    let id = 1;
    const batches = batchesOf();
    // A poll comes only when what the last one brought is done.
    const done = { order: false, all: false };
    let mayGoOn = false;
    const leaks: string[] = [];
    const wrong: string[] = [];
    const counts = new Map<string, number>();
    const look = ({ method, body }: Call): void => {
      counts.set(method, (counts.get(method) ?? 0) + 1);
      if (!isWithinLimits(method, body)) wrong.push(`${method} ${body.slice(0, 200)}`);
      const to = (JSON.parse(body.startsWith('{') ? body : '{}') as { chat_id?: number }).chat_id;
      if (to !== undefined && STRANGERS.includes(to) && /Shore Road|Sam Fisher/.test(body)) leaks.push(body);
    };
    const platform = await hostilePlatform(() => {
      if (id > 1 && !mayGoOn) done.order = true;
      if (done.order && !mayGoOn) return null;
      const batch = batches.next();
      if (batch.done === true) {
        done.all = true;
        return null;
      }
      now += batch.value.length * 500;
      if (id % 1000 < BATCH) {
        void program.tick();
        heap.push(process.memoryUsage().heapUsed / 1024 / 1024);
      }
      return batch.value.map((body) => ({ ...(body as object), update_id: (id += 1) }));
    }, look);
    const faults: string[] = [];
    const told: string[] = [];
    const heap: number[] = [];
    const program = await openProgram({
      shop: openShopFile(join(import.meta.dirname, '..', '..', 'data', 'demo-shop.json')),
      law: openLawFile(),
      token: TOKEN,
      apiRoot: platform.url,
      makers: [MAKER],
      dataDir: join(home, 'book'),
      key: { file: join(home, 'key') },
      clock: () => now,
      log: (event, facts) => {
        const line = JSON.stringify([event, facts]);
        if (/^(fault|update-failed|tick-failed|archive-failed)$/.test(event)) faults.push(line);
        if (/AAFake|Shore|Elm/.test(line)) told.push(line);
      },
      say: () => {},
    });
    const stray: unknown[] = [];
    const onStray = (why: unknown): void => void stray.push(why);
    process.on('unhandledRejection', onStray);
    let ended: unknown = null;
    const listening = program.listen(() => {}).catch((why: unknown) => (ended = why));

    await until(() => done.order || ended !== null, 30_000);
    const before = structuredClone(guarded(program.desk()));
    expect(before.order).toMatchObject({ buyer: VICTIM.id, address: ADDRESS });
    mayGoOn = true;
    await until(() => done.all || ended !== null, 60_000 + COUNT * 30);
    const after = program.desk();
    await program.stop();
    await listening;
    await program.close();
    await platform.close();
    process.off('unhandledRejection', onStray);
    rmSync(home, { recursive: true });
    console.info(
      `${id - 1} updates (seed ${SEED}): ${[...counts].map(([method, count]) => `${method} ${count}`).join(', ')}; faults ${faults.length}, people ${Object.keys(after.people).length}, questions ${Object.keys(after.questions).length}, heap ${heap.at(0)?.toFixed(0)} to ${heap.at(-1)?.toFixed(0)} MB in ${((performance.now() - begun) / 1000).toFixed(0)} s`,
    );

    expect(ended).toBeNull();
    expect(stray).toEqual([]);
    expect(faults.slice(0, 5)).toEqual([]);
    expect(guarded(after)).toEqual(before);
    expect(deskSchema.safeParse(after).error).toBeUndefined();
    expect(leaks.slice(0, 3)).toEqual([]);
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(told).toEqual([]);
    expect(grownBy(heap)).toBeLessThan(48);
  },
);

function* batchesOf(): Generator<readonly unknown[]> {
  yield ORDER;
  for (let done = 0; done < COUNT; done += BATCH)
    yield fc.sample(updateBodies, { numRuns: Math.min(BATCH, COUNT - done), seed: SEED + done });
}

/** Code points of texts and captions, characters of notes, bytes of button data: as the platform publishes them. */
function isWithinLimits(method: string, body: string): boolean {
  if (!body.startsWith('{')) return true;
  const call = JSON.parse(body) as { text?: string; caption?: string; reply_markup?: unknown };
  const keyboard =
    typeof call.reply_markup === 'string' ? (JSON.parse(call.reply_markup) as unknown) : call.reply_markup;
  const data = [...JSON.stringify(keyboard ?? {}).matchAll(/"callback_data":("(?:[^"\\]|\\.)*")/g)].map(
    (found) => JSON.parse(found[1] ?? '""') as string,
  );
  const most = method === 'answerCallbackQuery' ? 200 : 4096;
  const text = Array.from(call.text ?? '').length;
  const isSaid = !/^(sendMessage|editMessageText)$/.test(method) || text > 0;
  return (
    isSaid &&
    text <= most &&
    Array.from(call.caption ?? '').length <= 1024 &&
    data.every((one) => Buffer.byteLength(one) <= 64)
  );
}

/** Megabytes by which the least of the last quarter is above the least of the second: what is not given back, after warming up. */
function grownBy(heap: readonly number[]): number {
  const quarter = Math.floor(heap.length / 4);
  return quarter === 0 ? 0 : Math.min(...heap.slice(-quarter)) - Math.min(...heap.slice(quarter, 2 * quarter));
}
