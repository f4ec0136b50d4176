import { existsSync } from 'node:fs';
import { Halt } from '../../app/exit.ts';
import { upgraded } from '../../app/saved.ts';
import { fileArchive, monthsOf } from './archive.ts';
import { days, generations } from './generations.ts';
import { readKey } from './key.ts';
import { type LowdbParts, folderDisk } from './open.ts';
import { open } from './seal.ts';

export type Checked = Readonly<{ good: number; lines: readonly string[]; faults: readonly string[] }>;

/** Looks at every file of the book without changing or locking anything, so it may run beside the program. */
export async function check<T>(parts: Omit<LowdbParts<T>, 'empty'>): Promise<Checked> {
  if (parts.disk === undefined && !existsSync(parts.folder)) throw noBook(parts.folder);
  const disk = parts.disk ?? folderDisk(parts.folder);
  const names = disk.names();
  const books = [...generations(names), ...days(names)];
  if (books.length === 0) throw noBook(parts.folder);
  const key = readKey({ from: parts.key, inUse: 'book', say: parts.say });
  const found = books.map((name) => ({ name, ...lookAt(disk.read(name), key, parts) }));
  const faults: string[] = found.filter(({ fault }) => fault !== null).map(({ name, fault }) => `${name}: ${fault}`);
  const archive = fileArchive({ disk, key, clock: parts.clock, warn: (sentence) => faults.push(sentence) });
  const months = await Promise.all(
    monthsOf(names).map(async (month) => `${month}: ${(await archive.read(month)).length} finished orders`),
  );
  disk.close();
  return {
    good: found.filter(({ fault }) => fault === null).length,
    lines: [...found.filter(({ fault }) => fault === null).map(lineOf), ...months],
    faults,
  };
}

const noBook = (folder: string): Halt => new Halt('settings', `There is no book in ${folder} (DATA_DIR).`);

type Look = Readonly<{ fault: string | null; writtenAt: number | null }>;

function lookAt<T>(bytes: Buffer, key: Uint8Array, { versions }: Pick<LowdbParts<T>, 'versions'>): Look {
  const opened = open(bytes, key);
  const writtenAt = opened.label?.writtenAt ?? null;
  if (!opened.ok) return { fault: opened.why === 'key' ? 'written with another key' : 'damaged', writtenAt };
  const found = upgraded(versions, opened.label.version, JSON.parse(opened.json));
  return { fault: found.ok ? null : found.says, writtenAt };
}

const lineOf = ({ name, writtenAt }: Look & Readonly<{ name: string }>): string =>
  `${name}: whole${writtenAt === null ? '' : `, written ${new Date(writtenAt).toISOString()}`}`;
