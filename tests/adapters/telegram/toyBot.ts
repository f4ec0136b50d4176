import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { openLowdb } from '../../../src/adapters/lowdb/open.ts';
import { connect } from '../../../src/adapters/telegram/connect.ts';
import { Listener } from '../../../src/adapters/telegram/listen.ts';
import { telegramChat } from '../../../src/adapters/telegram/send.ts';
import { listen } from '../../../src/adapters/rehearsal/httpBridge.ts';
import { chatServer, type ChatServerParts } from '../../../src/adapters/rehearsal/chatServer.ts';
import { botOf, openChats } from '../../../src/adapters/rehearsal/chats.ts';
import { humanSide } from '../../../src/adapters/rehearsal/humanSide.ts';
import { openRoom } from '../../../src/adapters/rehearsal/room.ts';
import { Dispatcher } from '../../../src/app/flush.ts';
import { handle } from '../../../src/app/handle.ts';
import { PAUSES, stubborn } from '../../../src/app/stubborn.ts';
import type { Disk } from '../../../src/adapters/lowdb/disk.ts';
import { emptyToy, toyRules, toyVersions } from '../../app/toyShop.ts';

export const TOKEN = '42:AAFakeTokenThatIsLongEnoughToBeOne_00';
export const BUYER = 1001;
export const OTHER = 1002;
export const MAKER = 2001;

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'jig-'));

export type Wishes = Partial<Pick<ChatServerParts, 'fault' | 'deliver'>> &
  Readonly<{ disk?: (folder: string) => Disk; pauses?: readonly number[] }>;

/** The real chat adapter and the real store on the stand-in for the platform, with the toy shop between. */
export async function toyBot(wishes: Wishes = {}) {
  const people = [BUYER, OTHER, MAKER].map((id) => ({ id, firstName: `P${id}`, languageCode: 'en' }));
  const room = openRoom(openChats(botOf(TOKEN), people, 500));
  const server = chatServer({ token: TOKEN, room, now: Date.now, ...wishes });
  const port = await listen(server.answer, 0);
  const folder = newFolder();
  const logged: unknown[] = [];
  const halts: Error[] = [];
  const log = (...line: unknown[]): void => void logged.push(line);
  const book = await openLowdb({
    folder: join(folder, 'live'),
    key: { file: join(folder, 'key') },
    versions: toyVersions,
    empty: emptyToy,
    clock: Date.now,
    say: () => {},
    ...(wishes.disk === undefined ? {} : { disk: wishes.disk(join(folder, 'live')) }),
  });
  const store = stubborn(book.store, { pauses: wishes.pauses ?? PAUSES, pause, log });
  const bot = connect(TOKEN, port.url);
  const take = handle(store, toyRules, Date.now);
  const dispatcher = new Dispatcher({
    store,
    chat: telegramChat(bot.api, () => PIXEL, log),
    clock: Date.now,
    after: (ms, run) => {
      const timer = setTimeout(run, ms);
      return () => clearTimeout(timer);
    },
    lost: (id) =>
      take({ id: null, command: { type: 'reach', by: { id, name: '', language: null }, reachable: false } }),
    halt: (error) => void halts.push(error),
    log,
  });
  const words = { slowDown: () => 'Slow down, please.', sorry: () => 'Sorry.' };
  const wake = () => dispatcher.wake();
  const ears = new Listener({
    isKnown: () => true,
    bot,
    makers: [MAKER],
    clock: Date.now,
    take,
    wake,
    words,
    log,
    pause: (ms) => pause(Math.min(ms, 200)),
  });
  await dispatcher.recover();
  const running = ears.start();
  running.catch(() => {});
  const stop = async (): Promise<void> => {
    ears.stop();
    await running.catch(() => {});
    await dispatcher.stop();
    await book.close();
    await port.close();
    rmSync(folder, { recursive: true });
  };
  return {
    room,
    server,
    people: humanSide(room, Date.now),
    store: book.store,
    archive: book.archive,
    running,
    stop,
    logged,
    halts,
    ears,
    folder,
  };
}

export async function until(isTrue: () => unknown, ms = 20_000): Promise<void> {
  const end = Date.now() + ms;
  while (!isTrue()) {
    if (Date.now() > end) throw new Error('It did not happen in time.');
    await pause(5);
  }
}

/** One grey dot. */
export const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);
