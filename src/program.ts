import { emptyBook, type Book } from './app/book.ts';
import type { Chat } from './app/chat.ts';
import { puttingAway } from './app/closing.ts';
import { Dispatcher } from './app/flush.ts';
import { handle, type Reply, type Rules, type Update } from './app/handle.ts';
import type { Picture } from './app/letter.ts';
import { codeOf, type Log } from './app/log.ts';
import { PAUSES, stubborn } from './app/stubborn.ts';
import { openLowdb, type Lowdb } from './adapters/lowdb/open.ts';
import type { KeyFrom } from './adapters/lowdb/key.ts';
import { headLook } from './adapters/paper/headLook.ts';
import { headPng } from './adapters/paper/headPicture.ts';
import { BOOK_VERSIONS } from './bookVersions.ts';
import { connect } from './adapters/telegram/connect.ts';
import { Listener } from './adapters/telegram/listen.ts';
import { showMenus } from './adapters/telegram/menu.ts';
import { telegramChat } from './adapters/telegram/send.ts';
import { localDay, type Instant } from './domain/craft/time.ts';
import { decide } from './domain/desk/decide.ts';
import { emptyDesk, type Desk } from './domain/desk/state.ts';
import type { PersonId } from './domain/desk/person.ts';
import type { World } from './domain/desk/turn.ts';
import type { LawRow } from './domain/law/row.ts';
import { readerFor } from './domain/order/reader/read.ts';
import { specSchema } from './domain/order/spec.ts';
import type { Shop } from './domain/shop/shop.ts';
import { menus, spoken } from './wording/menu.ts';
import { toastText } from './wording/toast.ts';
import { write } from './wording/write.ts';

export type ProgramParts = Readonly<{
  shop: Shop;
  law: readonly LawRow[];
  token: string;
  /** Null for the platform's own address. */
  apiRoot: string | null;
  makers: readonly number[];
  dataDir: string;
  key: KeyFrom;
  clock: () => Instant;
  log: Log;
  /** Sentences for the person who starts the program. */
  say: (sentence: string) => void;
}>;

export type Program = Readonly<{
  /** Listens until stopped. @throws Halt with a sentence when it cannot go on. */
  listen: (ready: () => void) => Promise<void>;
  tick: () => Promise<void>;
  desk: () => Desk;
  /** Letters that still wait to go out. */
  waiting: () => number;
  /** Ends `listen` after the update that is being handled. */
  stop: () => Promise<void>;
  /** Takes nothing new, finishes what was begun, closes the book. */
  close: () => Promise<void>;
}>;

/** How long the letters under way may take when the program is asked to stop. */
const STOP_MS = 5_000;

/** The whole program put together: the book, the rules, the words, the chat. The clock that says when to tick is the caller's. */
export async function openProgram(parts: ProgramParts): Promise<Program> {
  const { clock, log, makers } = parts;
  const book = await openBook(parts);
  const bot = connect(parts.token, parts.apiRoot);
  const { take, turn, putAside } = turns(parts, book);
  const failed = failure();
  const dispatcher = dispatcherOf(parts, book, telegramChat(bot.api, drawn(parts.shop), log), take, failed.with);
  const wake = (): void => dispatcher.wake();
  const listener = new Listener({ bot, makers, clock, take: turn, wake, words: spoken, log, pause });
  return {
    listen: async (ready) => {
      await dispatcher.recover();
      void putAside();
      wake();
      void showMenus(bot.api, menus, makers, log);
      await Promise.race([listener.start(ready), failed.promise]);
    },
    tick: async () => {
      const { fault } = await turn({ id: null, command: { type: 'tick' } });
      if (fault !== null) log('fault', { code: codeOf(fault) });
      wake();
    },
    desk: () => book.store.read().desk,
    waiting: () => book.store.read().outbox.length,
    stop: async () => listener.stop(),
    close: async () => {
      listener.stop();
      await Promise.race([dispatcher.stop(), pause(STOP_MS)]);
      await putAside();
      await book.close();
    },
  };
}

type Shelf = Lowdb<Book<Desk>>;
type Take = (update: Update) => Promise<Reply>;

/** The book, written with patience: a disk that is full for a moment ends nothing. */
async function openBook({ dataDir, key, clock, say, log }: ProgramParts): Promise<Shelf> {
  const versions = BOOK_VERSIONS;
  const book = await openLowdb<Book<Desk>>({ folder: dataDir, key, versions, empty: emptyBook(emptyDesk), clock, say });
  return { ...book, store: stubborn(book.store, { pauses: PAUSES, pause, log }) };
}

/** Deciding and recording; the same with what closed put into the archive behind it; and that putting alone. */
function turns(
  { shop, law, makers, clock, log }: ProgramParts,
  { store, archive }: Shelf,
): Readonly<{ take: Take; turn: Take; putAside: () => Promise<void> }> {
  const take = handle(store, rulesOf({ shop, law, reader: readerFor(shop), makers }), clock);
  const putAside = puttingAway(store, archive, log);
  const turn: Take = async (update) => {
    const reply = await take(update);
    if (store.read().closing.length > 0) void putAside();
    return reply;
  };
  return { take, turn, putAside };
}

function dispatcherOf(
  { clock, log }: ProgramParts,
  { store }: Shelf,
  chat: Chat,
  take: Take,
  halt: (why: Error) => void,
): Dispatcher<Desk> {
  const lost = (id: PersonId): Promise<Reply> =>
    take({ id: null, command: { type: 'reach', by: { id, name: '', language: null }, reachable: false } });
  return new Dispatcher({ store, chat, clock, after, lost, halt, log });
}

/** decide, with its cards put into each person's words. */
function rulesOf(world: World): Rules<Desk> {
  const decided = decide(world);
  return (before, command, now) => {
    const { desk, cards, toast, closed } = decided(before, command, now);
    const languageOf = (id: number) => desk.people[id]?.language ?? world.shop.language;
    const by = command.type === 'tick' ? world.shop.language : languageOf(command.by.id);
    return {
      desk,
      letters: cards.map((card) => write(world.shop, languageOf(card.to), card)),
      toast: toast && toastText(toast, by),
      closed: closed.map((order) => ({
        id: order.id,
        month: localDay(order.shippedAt ?? now, world.shop.zone).slice(0, 7),
        record: order,
      })),
    };
  };
}

const drawn =
  (shop: Shop) =>
  ({ spec, caption }: Picture): Uint8Array =>
    headPng(headLook(shop, specSchema.parse(spec), caption));

function after(ms: number, run: () => void): () => void {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

function failure(): Readonly<{ promise: Promise<never>; with: (why: Error) => void }> {
  let reject: (why: Error) => void = () => {};
  const promise = new Promise<never>((_, no) => (reject = no));
  promise.catch(() => {});
  return { promise, with: (why) => reject(why) };
}
