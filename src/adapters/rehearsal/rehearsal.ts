import { z } from 'zod';
import type { Instant, Zone } from '../../domain/craft/time.ts';
import { chatServer, type ChatServer, type ChatServerParts } from './chatServer.ts';
import { botOf, openChats, type Chats, type Person } from './chats.ts';
import { listen } from './httpBridge.ts';
import { humanSide, type HumanSide } from './humanSide.ts';
import { pageServer, type Push } from './pageServer.ts';
import type { PushedClock } from './pushedClock.ts';
import { openRoom, type Room } from './room.ts';
import { viewOf } from './view.ts';

export type RehearsalParts = Readonly<{
  token: string;
  people: readonly Person[];
  /** The id of the one person who is the maker. */
  maker: number;
  zone: Zone;
  clock: PushedClock;
  nextDue: () => Instant | undefined;
  /** Called after each push of the clock; the page waits for it. */
  onPush: () => Promise<void>;
  tomorrowMorning: (now: Instant) => Instant;
  port: number;
  saved?: Saved;
}> &
  Partial<Pick<ChatServerParts, 'fault' | 'deliver'>>;

export type Rehearsal = Readonly<{
  /** The page for a browser. */
  url: string;
  /** What the bot's client takes as its API root. */
  apiRoot: string;
  /** What the people can do. */
  chats: HumanSide;
  room: Room;
  calls: ChatServer['calls'];
  /** Plain JSON from which a later start takes the chats up again. */
  snapshot(): Saved;
  close(): Promise<void>;
}>;

/** The kept chats and how many milliseconds the clock was ahead. */
export type Saved = Readonly<{ version: 1; ahead: number; chats: Chats }>;

/** Opens the stand-in for the chat platform, with its page, on 127.0.0.1; port 0 takes any free one. */
export async function openRehearsal(parts: RehearsalParts): Promise<Rehearsal> {
  const { clock } = parts;
  const room = openRoom(parts.saved ? resumed(parts.saved.chats, parts) : begun(parts));
  const people = humanSide(room, clock.now);
  const server = chatServer({ ...parts, room, now: clock.now });
  const page = pageServer({
    room,
    people,
    view: () => seen(room, parts),
    push: (how) => push(parts, how).finally(room.announce),
  });
  const stopFollowing = clock.onPush(room.announce);
  const isApi = (request: Request): boolean => /^\/(file\/)?bot/.test(new URL(request.url).pathname);
  const port = await listen((request) => (isApi(request) ? server.answer(request) : page(request)), parts.port);
  const snapshot = (): Saved => ({ version: 1, ahead: clock.ahead(), chats: room.read() });
  const close = (): Promise<void> => {
    stopFollowing();
    return port.close();
  };
  return { url: port.url, apiRoot: port.url, chats: people, room, calls: server.calls, snapshot, close };
}

/** Ids that no earlier start can have given out, so that a book which outlives these chats never mixes them up. */
const begun = ({ token, people, clock }: RehearsalParts): Chats =>
  openChats(botOf(token), people, Math.floor((clock.now() - clock.ahead()) / 1000));

function resumed(chats: Chats, { token, people }: RehearsalParts): Chats {
  const isKnown = ({ id }: Person): boolean => chats.people.some((person) => person.id === id);
  return {
    ...openChats(botOf(token), []),
    ...chats,
    bot: botOf(token),
    people: [...chats.people, ...people.filter((person) => !isKnown(person))],
  };
}

const seen = (room: Room, { maker, clock, zone, nextDue }: RehearsalParts) =>
  viewOf(room.read(), maker, { now: clock.now(), zone, nextDue: nextDue() });

async function push({ clock, nextDue, tomorrowMorning, onPush }: RehearsalParts, how: Push): Promise<void> {
  const now = clock.now();
  const targets: Readonly<Record<Push, () => Instant>> = {
    'next-reminder': () => nextDue() ?? now,
    'ten-minutes': () => now + 600_000,
    'tomorrow-morning': () => tomorrowMorning(now),
  };
  clock.pushTo(targets[how]());
  await onPush();
}

const ROOM = z.looseObject({
  people: z.array(z.object({ id: z.int() })),
  messages: z.array(z.looseObject({ message_id: z.int() })),
});
const SAVED = z.object({ version: z.literal(1), ahead: z.number().min(0), chats: ROOM });

/** What an earlier `snapshot()` gave, read back from a file; `undefined` when it is something else. */
export const parseSaved = (value: unknown): Saved | undefined =>
  SAVED.safeParse(value).success ? (value as Saved) : undefined;
