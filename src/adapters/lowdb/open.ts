import { resolve, relative, isAbsolute } from 'node:path';
import type { Instant } from '../../domain/craft/time.ts';
import type { Archive } from '../../app/closing.ts';
import { Halt } from '../../app/exit.ts';
import { codeOf } from '../../app/log.ts';
import type { Versions } from '../../app/saved.ts';
import type { Store } from '../../app/store.ts';
import { fileArchive, monthsOf } from './archive.ts';
import { bundled } from './backup.ts';
import { BookFile } from './bookFile.ts';
import { type Disk, isPrivate, openDisk } from './disk.ts';
import { days, generations } from './generations.ts';
import { type KeyFrom, readKey } from './key.ts';
import { takeLock } from './lock.ts';
import { openStore } from './store.ts';

export type LowdbParts<T> = Readonly<{
  folder: string;
  key: KeyFrom;
  versions: Versions<T>;
  empty: T;
  clock: () => number;
  /** For the person who starts the program: a key was made, an older generation is used, a line is damaged. */
  say: (sentence: string) => void;
  /** The medium; the folder itself unless a test brings a worse one. */
  disk?: Disk;
}>;

export type Lowdb<T> = Readonly<{
  store: Store<T>;
  archive: Archive;
  /** When the book was last written by this process; null if it was not yet. */
  lastWrite: () => Instant | null;
  /** Everything there is, sealed in one piece; see `restore`. */
  backup: () => Promise<Buffer>;
  /** Waits for the last write and lets others in. */
  close: () => Promise<void>;
}>;

/** The book in a folder of this computer, for this process alone.
 *  @throws Halt with a sentence when it is in use, when others could read it, or when what is there cannot be read. */
export async function openLowdb<T>(parts: LowdbParts<T>): Promise<Lowdb<T>> {
  refuseKeyInside(parts);
  const disk = parts.disk ?? folderDisk(parts.folder);
  const lock = takeLock(parts.folder);
  try {
    const names = disk.names();
    refuseArchiveAlone(parts.folder, names);
    const inUse = [...generations(names), ...days(names)].length > 0;
    const key = readKey({ from: parts.key, inUse: inUse ? 'book' : null, say: parts.say });
    const { versions, clock, say: warn } = parts;
    const file = new BookFile({ disk, key, versions, clock, warn });
    const store = await openStore(file, parts.empty);
    const archive = fileArchive({ disk, key, clock, warn });
    const backup = () => bundled({ store, archive, versions, key, clock });
    const close = async (): Promise<void> => {
      await store.settle();
      disk.close();
      lock.release();
    };
    return { store, archive, lastWrite: () => file.lastWrite, backup, close };
  } catch (error) {
    lock.release();
    throw error;
  }
}

/** Finished orders without the book they came from: to begin anew would give their numbers out again. */
function refuseArchiveAlone(folder: string, names: readonly string[]): void {
  if (monthsOf(names).length === 0 || generations(names).length > 0 || days(names).length > 0) return;
  throw new Halt(
    'settings',
    `There are finished orders in ${folder} (DATA_DIR), but the book is gone. Restore a backup into an empty folder, or move that folder away to begin anew. Nothing was changed.`,
  );
}

/** The folder as a disk, if it is this program's alone. @throws Halt with the way to mend it. */
export function folderDisk(folder: string): Disk {
  try {
    const disk = openDisk(folder);
    if (process.platform === 'win32' || isPrivate(folder)) return disk;
  } catch (error) {
    throw new Halt('settings', `The folder ${folder} (DATA_DIR) cannot be used (${codeOf(error)}).`);
  }
  throw new Halt('settings', `Others can look into ${folder} (DATA_DIR). Run: chmod 700 ${folder}`);
}

/** A key that lies with what it locks protects nobody, and goes along into every copy of the folder. */
function refuseKeyInside({ key, folder }: Pick<LowdbParts<unknown>, 'key' | 'folder'>): void {
  if (!('file' in key)) return;
  const way = relative(resolve(folder), resolve(key.file));
  if (!way.startsWith('..') && !isAbsolute(way))
    throw new Halt('settings', `KEY_FILE (${key.file}) lies inside DATA_DIR (${folder}). Put it elsewhere.`);
}
