import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Desk, deskSchema } from '../../src/domain/desk/state.ts';
import { openProgram } from '../../src/program.ts';
import { openLawFile, openShopFile } from '../../src/shopFile.ts';
import { until } from '../adapters/telegram/toyBot.ts';
import { type Call, hostilePlatform } from './hostilePlatform.ts';
import { STRANGERS, updateBodies } from './updates.ts';

/** `FUZZ=100000 npx vitest run tests/faults/fuzz.test.ts` for the long run. */
const COUNT = Number(process.env['FUZZ'] ?? 2000);
const SEED = Number(process.env['SEED'] ?? 11);
const BATCH = 100;
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
    const home = mkdtempSync(join(tmpdir(), 'jig-fuzz-'));
    let now = Date.UTC(2026, 10, 30, 18);
    let id = 1;
    const batches = batchesOf();
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
      const batch = batches.next();
      if (batch.done === true) return null;
      now += batch.value.length * 500;
      return batch.value.map((body) => ({ ...(body as object), update_id: (id += 1) }));
    }, look);
    const logged: string[] = [];
    const program = await openProgram({
      shop: openShopFile(join(import.meta.dirname, '..', '..', 'data', 'demo-shop.json')),
      law: openLawFile(),
      token: TOKEN,
      apiRoot: platform.url,
      makers: [MAKER],
      dataDir: join(home, 'book'),
      key: { file: join(home, 'key') },
      clock: () => now,
      log: (event, facts) => void (logged.length < 200_000 && logged.push(JSON.stringify([event, facts]))),
      say: () => {},
    });
    const stray: unknown[] = [];
    const onStray = (why: unknown): void => void stray.push(why);
    process.on('unhandledRejection', onStray);
    let ended: unknown = null;
    const listening = program.listen(() => {}).catch((why: unknown) => (ended = why));

    const isAt = async (end: number): Promise<void> => {
      await until(() => id >= end || ended !== null, 60_000 + COUNT * 30);
      await pause(300);
    };
    await isAt(ORDER.length + 1);
    const before = structuredClone(guarded(program.desk()));
    expect(before.order).toMatchObject({ buyer: VICTIM.id, address: ADDRESS });
    await isAt(COUNT + ORDER.length + 1);
    const after = program.desk();
    await program.stop();
    await listening;
    await program.close();
    await platform.close();
    process.off('unhandledRejection', onStray);
    rmSync(home, { recursive: true });
    const faults = logged.filter((line) => /^\["(fault|update-failed|tick-failed)/.test(line));
    console.info(
      `${id - 1} updates (seed ${SEED}): ${[...counts].map(([method, count]) => `${method} ${count}`).join(', ')}; faults ${faults.length}`,
    );

    expect(ended).toBeNull();
    expect(stray).toEqual([]);
    expect(faults.slice(0, 5)).toEqual([]);
    expect(guarded(after)).toEqual(before);
    expect(deskSchema.safeParse(after).error).toBeUndefined();
    expect(leaks.slice(0, 3)).toEqual([]);
    expect(wrong.slice(0, 3)).toEqual([]);
    expect(logged.filter((line) => /AAFake|Shore|Elm/.test(line))).toEqual([]);
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
