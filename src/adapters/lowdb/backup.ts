import { z } from 'zod';
import type { Closed } from '../../app/book.ts';
import type { Archive } from '../../app/closing.ts';
import { Halt } from '../../app/exit.ts';
import { type Versions, upgraded, versionOf } from '../../app/saved.ts';
import type { Store } from '../../app/store.ts';
import { open, seal } from './seal.ts';

export const BACKUP_FORMAT = 'jigwright backup';

const bundleSchema = z.strictObject({
  book: z.unknown(),
  archive: z.array(z.strictObject({ id: z.string(), month: z.string(), record: z.unknown() })),
});

export type Bundle<T> = Readonly<{ book: T; archive: readonly Closed[] }>;

/** The book and its whole archive in one sealed piece: of use only to who has the key. */
export async function bundled<T>(
  from: Readonly<{
    store: Pick<Store<T>, 'read'>;
    archive: Archive;
    versions: Versions<T>;
    key: Uint8Array;
    clock: () => number;
  }>,
): Promise<Buffer> {
  // The book before the archive: what moves over meanwhile is then in both, and never in neither.
  const book = from.store.read();
  const months = await from.archive.months();
  const archive = (await Promise.all(months.map((month) => from.archive.read(month)))).flat();
  const label = { format: BACKUP_FORMAT, version: versionOf(from.versions), serial: 0, writtenAt: from.clock() };
  return seal(JSON.stringify({ book, archive }), label, from.key);
}

/** What `bundled` put in, brought up to today's version.
 *  @throws Halt with a sentence when it is damaged, sealed with another key, from a newer version, or no backup at all. */
export function unbundled<T>(bytes: Buffer, key: Uint8Array, versions: Versions<T>): Bundle<T> {
  const opened = open(bytes, key);
  if (!opened.ok) throw new Halt('settings', WHY[opened.why]);
  if (opened.label.format !== BACKUP_FORMAT) throw new Halt('settings', 'This file is not a backup of jigwright.');
  const { book, archive } = bundleSchema.parse(JSON.parse(opened.json));
  const found = upgraded(versions, opened.label.version, book);
  if (!found.ok) throw new Halt('settings', `The backup cannot be used. ${found.says}`);
  return { book: found.value, archive: archive.map((row) => ({ ...row, record: row.record })) };
}

const WHY = {
  damaged: 'The backup is damaged or no backup at all: its bytes are not those that were written. Take another one.',
  key: 'The backup was made with another key. Set JIGWRIGHT_KEY or KEY_FILE to the key of that time.',
} as const;
