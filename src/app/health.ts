import type { Instant } from '../domain/craft/time.ts';
import type { Book } from './book.ts';

/** How the program itself is doing, for the maker's status line and for whoever watches it. */
export type Health = Readonly<{
  version: string;
  startedAt: Instant;
  /** When the chat platform last answered a poll; null before the first. */
  lastPoll: Instant | null;
  /** When the book was last written; null if it was not since the start. */
  lastWrite: Instant | null;
  /** When a backup last left this computer. */
  lastBackup: Instant | null;
  /** Letters that wait to go out, and how long the first of them has. */
  waiting: number;
  waitingMs: number;
  /** Letters that were given up within the last week. */
  undelivered: number;
}>;

export type Pulse = Pick<Health, 'version' | 'startedAt' | 'lastPoll' | 'lastWrite'>;

export const healthOf = <Desk>(book: Book<Desk>, pulse: Pulse, now: Instant): Health => ({
  ...pulse,
  lastBackup: book.backedUpAt,
  waiting: book.outbox.length,
  waitingMs: Math.max(0, ...book.outbox.map(({ queuedAt }) => now - queuedAt)),
  undelivered: book.dead.length,
});

/** A poll takes half a minute; after a few of them without an answer something is wrong. */
const SILENT_MS = 150_000;

/** What in it needs somebody's attention; empty when all is well. */
export const ailments = (health: Health, now: Instant): readonly Ailment[] => [
  ...(now - (health.lastPoll ?? health.startedAt) > SILENT_MS ? (['no-poll'] as const) : []),
  ...(health.waitingMs > SILENT_MS ? (['letters-wait'] as const) : []),
  ...(health.undelivered > 0 ? (['undelivered'] as const) : []),
];
export type Ailment = 'no-poll' | 'letters-wait' | 'undelivered';
