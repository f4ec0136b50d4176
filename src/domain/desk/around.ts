import type { Instant } from '../craft/time.ts';

/** What of the program itself needs somebody's attention. */
export const AILMENTS = ['no-poll', 'letters-wait', 'undelivered', 'old-backup'] as const;
export type Ailment = (typeof AILMENTS)[number];

/** How the program itself is doing, for the maker's status line and for whoever watches it. */
export type Health = Readonly<{
  version: string;
  startedAt: Instant;
  /** When the chat platform last answered a poll; null before the first. */
  lastPoll: Instant | null;
  /** When the book was last written; null if it was not since the start. */
  lastWrite: Instant | null;
  /** When a backup last left this computer; null if none did. */
  lastBackup: Instant | null;
  /** Letters that wait to go out, and how long the first of them has. */
  waiting: number;
  waitingMs: number;
  /** Letters that were given up within the last week. */
  undelivered: number;
}>;

/** What lies around the desk and is not part of its state: how the program does, and the finished orders of someone who asks for them. */
export type Around = Readonly<{
  health: Readonly<{ health: Health; ailments: readonly Ailment[] }> | null;
  archived: readonly unknown[];
}>;

export const NOTHING_AROUND: Around = { health: null, archived: [] };
