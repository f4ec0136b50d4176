import { emptyBook, type Book } from './app/book.ts';
import type { Chat } from './app/chat.ts';
import { puttingAway } from './app/closing.ts';
import { Dispatcher } from './app/flush.ts';
import { handle, type Reply, type Update } from './app/handle.ts';
import { ailments, healthOf, type Pulse } from './app/health.ts';
import type { DrawnPicture } from './app/letter.ts';
import { codeOf, type Log } from './app/log.ts';
import { PAUSES, stubborn } from './app/stubborn.ts';
import { openLowdb, type Lowdb } from './adapters/lowdb/open.ts';
import type { KeyFrom } from './adapters/lowdb/key.ts';
import { barsPng } from './adapters/paper/barsPicture.ts';
import { headLook, type HeadLook } from './adapters/paper/headLook.ts';
import { headPng, headsPng } from './adapters/paper/headPicture.ts';
import { kept } from './adapters/paper/kept.ts';
import { weekPng } from './adapters/paper/weekPicture.ts';
import { sheetPdf } from './adapters/paper/sheet.ts';
import { sheetPng } from './adapters/paper/sheetPicture.ts';
import { BOOK_VERSIONS } from './bookVersions.ts';
import { connect } from './adapters/telegram/connect.ts';
import { Listener } from './adapters/telegram/listen.ts';
import { sendBackup } from './adapters/telegram/sendBackup.ts';
import { showMenus } from './adapters/telegram/menu.ts';
import { telegramChat } from './adapters/telegram/send.ts';
import type { Instant } from './domain/craft/time.ts';
import type { Around } from './domain/desk/around.ts';
import { emptyDesk, type Desk } from './domain/desk/state.ts';
import type { Command } from './domain/desk/command.ts';
import type { PersonId } from './domain/desk/person.ts';
import type { LawRow } from './domain/law/row.ts';
import { readerFor } from './domain/order/reader/read.ts';
import { specSchema } from './domain/order/spec.ts';
import type { Shop } from './domain/shop/shop.ts';
import type { Api } from 'grammy';
import { VERSION } from './version.ts';
import { backingUp, isUntidy, ordersAskedFor, tidying } from './chores.ts';
import { rulesOf } from './rules.ts';
import { menus, spoken } from './wording/menu.ts';

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
  /** Days for which the address of a shipped order is kept; 90 if not said. */
  addressDays?: number;
  /** Whether a sealed backup goes into the maker's own chat once a day. */
  backupToChat?: boolean;
  /** With it buyers can pay in the chat. */
  paymentToken?: string | null;
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
const ADDRESS_DAYS = 90;

/** The whole program put together: the book, the rules, the words, the chat. The clock that says when to tick is the caller's. */
export async function openProgram(parts: ProgramParts): Promise<Program> {
  const { clock, log, makers } = parts;
  const book = await openBook(parts);
  const bot = connect(parts.token, parts.apiRoot);
  const pulse = pulseOf(clock(), () => listener.lastPoll, book.lastWrite);
  const { take, turn, putAside } = turns(parts, book, pulse);
  const backUp = backups(parts, book, bot.api);
  const failed = failure();
  const chat = telegramChat(bot.api, drawn(parts.shop), log, sheetPdf, parts.paymentToken ?? null);
  const dispatcher = dispatcherOf(parts, book, chat, take, failed.with);
  const wake = (): void => dispatcher.wake();
  const isKnown = (id: PersonId): boolean => book.store.read().desk.people[id] !== undefined;
  const listener = new Listener({ bot, makers, clock, isKnown, take: turn, wake, words: spoken, log, pause });
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
      void backUp();
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
  parts: ProgramParts,
  { store, archive }: Shelf,
  pulse: () => Pulse,
): Readonly<{ take: Take; turn: Take; putAside: () => Promise<void> }> {
  const { shop, law, makers, clock, log } = parts;
  const pays = parts.paymentToken ? ({ pays: 'in-chat' } as const) : {};
  const world = { shop, law, reader: readerFor(shop), makers, ...pays };
  const chores = { store, archive, zone: shop.zone, clock, log, makers };
  const days = parts.addressDays ?? ADDRESS_DAYS;
  const takeWith = (archived: readonly unknown[]): Take => {
    const around = () => ({ health: checkedUp(store.read(), pulse(), clock()), archived });
    return handle(store, rulesOf(world, around), clock);
  };
  const take = takeWith([]);
  const putAside = puttingAway(store, archive, log, tidying(chores, days));
  const turn: Take = async (update) => {
    const { command } = update;
    const asked = await ordersAskedFor(chores, command);
    const reply = await (asked.length === 0 ? take : takeWith(asked))(update);
    if (command.type !== 'tick') log('turn', { update: update.id, person: command.by.id, kind: kindOf(command) });
    if (store.read().closing.length > 0 || isUntidy(chores, command, days)) void putAside();
    return reply;
  };
  return { take, turn, putAside };
}

/** The trail of who did what and when: the act that was tapped, else how it was said. */
const kindOf = (command: Command): string =>
  command.type === 'tapped' ? (command.tap?.act ?? 'forged') : command.type;

const pulseOf = (startedAt: Instant, lastPoll: () => Instant | null, lastWrite: () => Instant | null) => (): Pulse => ({
  version: VERSION,
  startedAt,
  lastPoll: lastPoll(),
  lastWrite: lastWrite(),
});

const checkedUp = (book: Book<Desk>, pulse: Pulse, now: Instant): Around['health'] => {
  const health = healthOf(book, pulse, now);
  return { health, ailments: ailments(health, now) };
};

/** A backup a day into the first maker's own chat, where that is wished for. */
function backups(
  { makers, clock, log, shop, backupToChat }: ProgramParts,
  { store, archive, backup }: Shelf,
  api: Api,
) {
  const [maker] = makers;
  if (backupToChat !== true || maker === undefined) return async (): Promise<void> => {};
  const send = (bytes: Uint8Array, name: string): Promise<void> => sendBackup(api, maker, bytes, name);
  return backingUp({ store, archive, zone: shop.zone, clock, log }, backup, send);
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

/** Pictures kept, of some twenty kilobytes each. */
const PICTURES = 48;
const headPicture = kept(headPng, PICTURES);

type HeadPicture = Pick<Extract<DrawnPicture, Readonly<{ kind: 'head' }>>, 'spec' | 'caption'>;

const drawn =
  (shop: Shop) =>
  (picture: DrawnPicture): Uint8Array => {
    if (picture.kind === 'week') return weekPng(picture);
    if (picture.kind === 'bars') return barsPng(picture);
    if (picture.kind === 'sheet') return sheetPng(picture.paper);
    const look = ({ spec, caption }: HeadPicture): HeadLook => headLook(shop, specSchema.parse(spec), caption);
    return picture.kind === 'heads' ? headsPng(picture.heads.map(look)) : headPicture(look(picture));
  };

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
