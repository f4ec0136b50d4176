import { HOUR, type Instant } from '../domain/craft/time.ts';
import type { Ailment, Health } from '../domain/desk/around.ts';
import type { Book } from './book.ts';

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

/** Where backups are sent at all, one a day is. */
const OLD_MS = 50 * HOUR;

/** What in it needs somebody's attention; empty when all is well. */
export const ailments = (health: Health, now: Instant): readonly Ailment[] => [
  ...(now - (health.lastPoll ?? health.startedAt) > SILENT_MS ? (['no-poll'] as const) : []),
  ...(health.waitingMs > SILENT_MS ? (['letters-wait'] as const) : []),
  ...(health.undelivered > 0 ? (['undelivered'] as const) : []),
  ...(health.lastBackup !== null && now - health.lastBackup > OLD_MS ? (['old-backup'] as const) : []),
];
