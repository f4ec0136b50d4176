import { Halt } from '../../app/exit.ts';
import { type ArchiveParts, fileArchive, monthsOf } from './archive.ts';
import { type Bundle, unbundled } from './backup.ts';
import { BookFile } from './bookFile.ts';
import { days, generations } from './generations.ts';
import { takeLock } from './lock.ts';
import { readKey } from './key.ts';
import { type LowdbParts, folderDisk } from './open.ts';

/** Fills an empty folder from a backup, and reads it back before it says so. Never writes over a book that is there.
 *  @returns how many finished orders the archive got
 *  @throws Halt with a sentence; then nothing was changed, or what was begun stays to be looked at. */
export async function restore<T>(parts: Omit<LowdbParts<T>, 'empty'>, bytes: Buffer): Promise<number> {
  // Before anything is made: a backup that cannot be read leaves no folder behind.
  const key = readKey({ from: parts.key, inUse: 'backup', say: parts.say });
  const bundle = unbundled(bytes, key, parts.versions);
  const disk = parts.disk ?? folderDisk(parts.folder);
  const lock = takeLock(parts.folder);
  try {
    const names = disk.names();
    if ([...generations(names), ...days(names), ...monthsOf(names)].length > 0)
      throw new Halt(
        'settings',
        `There is a book in ${parts.folder} already. Move that folder away first; nothing was changed.`,
      );
    await put(parts, { disk, key, clock: parts.clock, warn: parts.say }, bundle);
    return bundle.archive.length;
  } finally {
    disk.close();
    lock.release();
  }
}

/** The archive first: a folder with an archive and no book is refused by a start as well as by a second restore. */
async function put<T>(parts: Omit<LowdbParts<T>, 'empty'>, files: ArchiveParts, bundle: Bundle<T>): Promise<void> {
  await fileArchive(files).append(bundle.archive);
  const book = new BookFile({ ...files, versions: parts.versions });
  await book.read();
  await book.write(bundle.book);
  const found = JSON.stringify(await book.read());
  if (found !== JSON.stringify(bundle.book))
    throw new Halt('disk', 'What was restored does not read back as it was. Try another disk.');
}
