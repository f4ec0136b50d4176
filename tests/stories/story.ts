import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { pushedClock } from '../../src/adapters/rehearsal/pushedClock.ts';
import { openRehearsal, type Rehearsal, type RehearsalParts } from '../../src/adapters/rehearsal/rehearsal.ts';
import type { Log } from '../../src/app/log.ts';
import { addDays, instantOf, localDay } from '../../src/domain/craft/time.ts';
import type { Desk } from '../../src/domain/desk/state.ts';
import { nextDue } from '../../src/domain/desk/due.ts';
import type { Shop } from '../../src/domain/shop/shop.ts';
import { openProgram, type Program } from '../../src/program.ts';
import { BOT_API, violations } from '../outside/botApi.ts';
import { openLawFile, openShopFile } from '../../src/shopFile.ts';

const TOKEN = '100000001:rehearsal-on-this-computer-only-00';
export const MAKER = 101;
export const BUYER = 201;
export const OTHER = 202;

/** One person in a story: what they say, tap and see. */
export type Voice = Readonly<{
  says: (text: string) => Promise<string>;
  /** Presses the newest button whose label begins so; answers with what is shown then. */
  taps: (label: string) => Promise<string>;
  /** Sends button data that no button of theirs need carry. */
  forges: (data: string) => Promise<string>;
  sends: (thing: 'photo' | 'sticker' | 'voice' | 'location') => Promise<string>;
  /** The text of the newest message. */
  sees: () => string;
  /** All that is shown now, oldest first. */
  chat: () => readonly string[];
  /** Labels of the buttons on the newest message that has any. */
  buttons: () => readonly string[];
  /** How many taps and messages it took. */
  count: () => Readonly<{ taps: number; said: number }>;
  /** Short notes shown on buttons. */
  notices: () => readonly string[];
}>;

export type Story = Readonly<{
  buyer: Voice;
  other: Voice;
  maker: Voice;
  shop: Shop;
  desk: () => Desk;
  rehearsal: Rehearsal;
  /** Moves the clock on and lets the program tick. */
  later: (minutes: number) => Promise<void>;
  toNext: () => Promise<void>;
  /** To a wall-clock time so many days on. */
  until: (clock: string, days?: number) => Promise<void>;
  now: () => number;
  /** Ends the program as a power cut would end what it knows, and starts it again on the same book. */
  restart: () => Promise<void>;
  settle: () => Promise<void>;
  /** The folder with the book and the key. */
  home: string;
}>;

export type StoryParts = Readonly<{
  at?: string;
  zone?: string;
  language?: string;
  shop?: (shop: Shop) => Shop;
  /** Where the program's log goes. */
  log?: Log;
  /** How the platform misbehaves. */
  fault?: NonNullable<RehearsalParts['fault']>;
  /** A backup a day into the maker's chat. */
  backupToChat?: boolean;
  /** Of a payment provider; with it buyers can pay in the chat. */
  paymentToken?: string;
}>;

/** Tells a story twice: as it is, and with the program ended and started again in its middle. */
export async function told(tell: (story: Story) => Promise<void>, parts: StoryParts = {}): Promise<void> {
  const steps = await tellOnce(tell, parts, Infinity);
  await tellOnce(tell, parts, Math.ceil(steps / 2));
}

async function tellOnce(tell: (story: Story) => Promise<void>, parts: StoryParts, restartAt: number): Promise<number> {
  const opened = await openStory(parts, restartAt);
  try {
    await tell(opened.story);
    return opened.steps();
  } finally {
    await opened.close();
  }
}

/** A picture of one dot. */
export const DOT = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

/** In memory where there is such a place: that a book is safe on a real disk is another test's matter. */
const SCRATCH = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();

const quiet = (): void => {};

const DEMO_SHOP = openShopFile(join(import.meta.dirname, '..', '..', 'data', 'demo-shop.json'));
const LAW = openLawFile();

export async function openStory(
  { at = '2026-11-30T17:00', language = 'en', shop: change = (shop) => shop, ...parts }: StoryParts,
  restartAt: number,
) {
  const shop = change(DEMO_SHOP);
  const home = mkdtempSync(join(SCRATCH, 'jigwright-'));
  const begin = instantOf(at.slice(0, 10), at.slice(11, 16), shop.zone);
  // A clock that stands still between pushes, so that a story is the same on a slow machine.
  let real = begin;
  const clock = pushedClock({ real: () => real });
  let program: Program;
  let steps = 0;
  const rehearsal = await openRehearsal({
    token: TOKEN,
    people: [
      { id: BUYER, firstName: 'Sam', languageCode: language },
      { id: OTHER, firstName: 'Alex', languageCode: 'en' },
      { id: MAKER, firstName: 'Kettle Bay', languageCode: 'en' },
    ],
    maker: MAKER,
    zone: shop.zone,
    clock,
    nextDue: () => nextDue(shop, program.desk(), clock.now()),
    onPush: async () => program.tick(),
    tomorrowMorning: (now) => instantOf(addDays(localDay(now, shop.zone), 1), shop.digestAt, shop.zone),
    port: 0,
    ...(parts.fault ? { fault: parts.fault } : {}),
  });
  let listening: Promise<void>;
  const start = async (): Promise<void> => {
    program = await openProgram({
      shop,
      law: LAW,
      token: TOKEN,
      apiRoot: rehearsal.apiRoot,
      makers: [MAKER],
      dataDir: join(home, 'book'),
      key: { file: join(home, 'key') },
      clock: clock.now,
      log: parts.log ?? quiet,
      backupToChat: parts.backupToChat ?? false,
      paymentToken: parts.paymentToken ?? null,
      say: quiet,
    });
    listening = program.listen(quiet);
    await program.tick();
  };
  const stop = async (): Promise<void> => {
    await program.stop();
    await listening;
    await program.close();
  };
  await start();
  for (const person of [BUYER, OTHER, MAKER]) rehearsal.chats.start(person);

  const settle = async (): Promise<void> => {
    for (let tries = 0; tries < 6_000; tries += 1) {
      if (rehearsal.room.read().updates.length === 0 && program.waiting() === 0) return;
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    throw new Error('The program did not come to rest.');
  };
  const step = async (act: () => void | Promise<void>): Promise<void> => {
    steps += 1;
    if (steps === restartAt) {
      await stop();
      await start();
    }
    await act();
    await settle();
  };
  const voice = (person: number): Voice => {
    let taps = 0;
    let said = 0;
    const messages = () => rehearsal.chats.messagesOf(person);
    const texts = () => messages().flatMap(({ text, caption }) => text ?? caption ?? []);
    const own = () => messages().filter(({ from }) => from.is_bot);
    const sees = (): string =>
      own()
        .map(({ text, caption }) => text ?? caption ?? '')
        .at(-1) ?? '';
    const keyboards = () =>
      messages().flatMap((message) => {
        const rows = message.reply_markup?.inline_keyboard ?? [];
        return rows.length === 0 ? [] : [rows.flat()];
      });
    return {
      says: async (text) => {
        said += 1;
        await step(() => void rehearsal.chats.say(person, text));
        return sees();
      },
      taps: async (label) => {
        taps += 1;
        await step(() => void rehearsal.chats.press(person, exactLabel(keyboards(), label)));
        return sees();
      },
      forges: async (data) => {
        const id =
          messages().find(({ reply_markup }) => (reply_markup?.inline_keyboard ?? []).length > 0)?.message_id ??
          messages()[0]?.message_id ??
          0;
        await step(() => void rehearsal.chats.tap(person, id, data));
        return sees();
      },
      sends: async (thing) => {
        await step(() => {
          if (thing === 'photo')
            rehearsal.chats.sendPhoto(person, {
              name: 'p.png',
              mediaType: 'image/png',
              bytes: Buffer.from(DOT, 'base64'),
            });
          else if (thing === 'sticker') rehearsal.chats.sendSticker(person, '🎣');
          else if (thing === 'voice') rehearsal.chats.sendVoice(person, 3);
          else rehearsal.chats.sendLocation(person, 46, -92);
        });
        return sees();
      },
      sees,
      chat: texts,
      buttons: () => (keyboards().at(-1) ?? []).map(({ text }) => text),
      count: () => ({ taps, said }),
      notices: () =>
        rehearsal.room
          .read()
          .notices.filter(({ personId }) => personId === person)
          .map(({ text }) => text),
    };
  };
  const push = (move: () => void): Promise<void> =>
    step(async () => {
      move();
      await program.tick();
    });
  await settle();
  const story: Story = {
    buyer: voice(BUYER),
    other: voice(OTHER),
    maker: voice(MAKER),
    shop,
    desk: () => program.desk(),
    rehearsal,
    later: (minutes) => push(() => void (real += minutes * 60_000)),
    toNext: () => push(() => void (real = nextDue(shop, program.desk(), clock.now()))),
    until: (wall, days = 0) =>
      push(() => void (real = Math.max(real, instantOf(addDays(localDay(real, shop.zone), days), wall, shop.zone)))),
    now: clock.now,
    restart: async () => {
      await stop();
      await start();
      await settle();
    },
    settle,
    home,
  };
  const close = async (): Promise<void> => {
    await stop();
    if (BOT_API)
      for (const { method, payload } of rehearsal.calls)
        expect(violations(method, withoutFiles(payload)), method).toEqual([]);
    await rehearsal.close();
    rmSync(home, { recursive: true, force: true });
  };
  return { story, close, steps: () => steps };
}

/** A call's parameters without the uploaded files that they name by `attach://`. */
function withoutFiles(payload: unknown): unknown {
  const files = [...JSON.stringify(payload ?? {}).matchAll(/attach:\/\/(\w+)/g)].map(([, name]) => name);
  return Object.fromEntries(Object.entries(payload ?? {}).filter(([name]) => !files.includes(name)));
}

/** The whole label of the newest button that begins so. */
function exactLabel(keyboards: readonly (readonly { text: string }[])[], label: string): string {
  for (const keyboard of keyboards.toReversed()) {
    const found = keyboard.find(({ text }) => text === label) ?? keyboard.find(({ text }) => text.startsWith(label));
    if (found) return found.text;
  }
  return expect.fail(
    `No button is labelled ${label}; there are: ${keyboards
      .flat()
      .map(({ text }) => text)
      .join(' | ')}`,
  );
}
