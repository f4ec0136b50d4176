import { z } from 'zod';
import type { Closed } from '../../app/book.ts';
import type { Archive } from '../../app/closing.ts';
import { Halt } from '../../app/exit.ts';
import type { Disk } from './disk.ts';
import { open, seal } from './seal.ts';

export const ARCHIVE_FORMAT = 'jigwright archive';
const VERSION = 1;
const NEWLINE = 10;

const rowsSchema = z.array(z.strictObject({ id: z.string(), month: z.string(), record: z.unknown() }));

export type ArchiveParts = Readonly<{
  disk: Disk;
  key: Uint8Array;
  clock: () => number;
  warn: (sentence: string) => void;
}>;

/** One file a month, one sealed line an append. Appending costs the same however long the file is; a line that a cut left
 *  unfinished is taken off before the next one, because its orders are still in the book. A damaged line is said and passed over. */
export const fileArchive = (parts: ArchiveParts): Archive => ({
  append: async (closed) => {
    for (const month of new Set(closed.map((row) => row.month)))
      await appendTo(
        parts,
        month,
        closed.filter((row) => row.month === month),
      );
  },
  read: async (month) => rowsOf(parts, month),
  rewrite: (month, keep) => rewriteMonth(parts, month, keep),
  months: async () => monthsOf(parts.disk.names()),
});

/** Writes the month anew: `keep` says what becomes of each record, null to leave it out. Whole beside the old one, then renamed. */
export async function rewriteMonth(
  parts: ArchiveParts,
  month: string,
  keep: (row: Closed) => Closed | null,
): Promise<void> {
  const rows = rowsOf(parts, month);
  const kept = rows.flatMap((row) => keep(row) ?? []);
  if (kept.length === rows.length && kept.every((row, index) => row === rows[index])) return;
  await parts.disk.write(UNFINISHED_MONTH, kept.length === 0 ? Buffer.alloc(0) : line(kept, parts));
  parts.disk.rename(UNFINISHED_MONTH, nameOf(month));
  await parts.disk.sync();
}

const UNFINISHED_MONTH = 'archive.unfinished';

const nameOf = (month: string): string => `archive-${month}.sealed`;

export const monthsOf = (names: readonly string[]): readonly string[] =>
  names.flatMap((name) => /^archive-(\d{4}-\d{2})\.sealed$/.exec(name)?.[1] ?? []).sort();

async function appendTo(parts: ArchiveParts, month: string, rows: readonly Closed[]): Promise<void> {
  const { disk } = parts;
  const name = nameOf(month);
  const isNew = !disk.names().includes(name);
  if (!isNew) await mend(disk, name);
  await disk.append(name, line(rows, parts));
  if (isNew) await disk.sync();
}

/** Cuts off what stands after the last line's end. */
async function mend(disk: Disk, name: string): Promise<void> {
  const { size, unfinished } = disk.tail(name);
  if (unfinished > 0) await disk.cut(name, size - unfinished);
}

const line = (rows: readonly Closed[], { key, clock }: ArchiveParts): Buffer => {
  const label = { format: ARCHIVE_FORMAT, version: VERSION, serial: 0, writtenAt: clock() };
  return Buffer.from(`${seal(JSON.stringify(rows), label, key).toString('base64')}\n`);
};

function rowsOf(parts: ArchiveParts, month: string): readonly Closed[] {
  const name = nameOf(month);
  if (!parts.disk.names().includes(name)) return [];
  const bytes = parts.disk.read(name);
  const whole = bytes.subarray(0, bytes.lastIndexOf(NEWLINE) + 1);
  const lines = whole.toString('latin1').split('\n').slice(0, -1);
  const rows = lines.flatMap((text, index) => rowsIn(text, parts, `${name}, line ${index + 1}`));
  return [...new Map(rows.map((row) => [row.id, row])).values()];
}

function rowsIn(text: string, { key, warn }: ArchiveParts, where: string): readonly Closed[] {
  const opened = open(Buffer.from(text, 'base64'), key);
  if (opened.ok) return rowsSchema.parse(JSON.parse(opened.json));
  if (opened.why === 'key') throw new Halt('settings', `${where} was written with another key. Nothing was changed.`);
  warn(`${where} is damaged and was passed over; a backup may hold it whole.`);
  return [];
}
