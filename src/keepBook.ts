import { readFileSync, writeFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { check } from './adapters/lowdb/check.ts';
import { openLowdb, type Lowdb, type LowdbParts } from './adapters/lowdb/open.ts';
import { restore } from './adapters/lowdb/restore.ts';
import { emptyBook, type Book } from './app/book.ts';
import { Halt } from './app/exit.ts';
import { codeOf } from './app/log.ts';
import { BOOK_VERSIONS } from './bookVersions.ts';
import { emptyDesk, type Desk } from './domain/desk/state.ts';
import type { Settings } from './settings.ts';

type Say = (line: string) => void;
type Keeping = (settings: Settings, file: string, say: Say) => Promise<void>;

/** What can be done with the whole book beside the chat. While the program runs only a check is possible. */
export const KEEPINGS: Readonly<Record<'backup' | 'restore' | 'check' | 'export', Keeping>> = {
  backup: async (settings, file, say) => {
    const path = outside(settings, named(file, 'backup jigwright.backup'));
    const book = await opened(settings, say);
    try {
      put(path, await book.backup());
    } finally {
      await book.close();
    }
    say(`The book and its archive are in ${path}, sealed. Of use only with the key: keep a copy of that elsewhere.`);
  },
  restore: async (settings, file, say) => {
    const path = named(file, 'restore jigwright.backup');
    const finished = await restore(parts(settings, say), taken(path));
    say(`The book is there again in ${settings.dataDir}, with ${finished} finished orders.`);
  },
  check: async (settings, _file, say) => {
    const { good, lines, faults } = await check(parts(settings, say));
    for (const line of lines) say(line);
    if (faults.length > 0) throw new Halt('settings', `${good} files are whole. Faults:\n${faults.join('\n')}`);
    say('All is whole.');
  },
  export: async (settings, file, say) => {
    const path = outside(settings, named(file, 'export book.json'));
    const book = await opened(settings, say);
    try {
      const months = await book.archive.months();
      const archive = (await Promise.all(months.map((month) => book.archive.read(month)))).flat();
      put(path, Buffer.from(`${JSON.stringify({ book: book.store.read(), archive }, null, 2)}\n`));
    } finally {
      await book.close();
    }
    say(`Everything is in ${path}, readable by anyone who gets the file. Delete it when you are done with it.`);
  },
};

/** The book that is there; a folder without one is more likely a wrong DATA_DIR than a new shop. */
async function opened(settings: Settings, say: Say): Promise<Lowdb<Book<Desk>>> {
  await check(parts(settings, say));
  return openLowdb(parts(settings, say));
}

const parts = ({ dataDir, key }: Settings, say: Say): LowdbParts<Book<Desk>> => ({
  folder: dataDir,
  key,
  versions: BOOK_VERSIONS,
  empty: emptyBook(emptyDesk),
  clock: Date.now,
  say,
});

function named(file: string, example: string): string {
  if (file === '') throw new Halt('settings', `Name a file as well: npm run jigwright -- ${example}`);
  return file;
}

/** A copy that lies with the book goes when the book does. */
function outside({ dataDir }: Settings, path: string): string {
  if (!relative(resolve(dataDir), resolve(path)).startsWith('..'))
    throw new Halt(
      'settings',
      `${path} lies in the folder of the book (DATA_DIR). Name a file elsewhere, best on another disk.`,
    );
  return path;
}

/** Never over a file that is there. */
function put(path: string, bytes: Uint8Array): void {
  try {
    writeFileSync(path, bytes, { flag: 'wx', mode: 0o600, flush: true });
  } catch (error) {
    const why =
      codeOf(error) === 'EEXIST' ? 'is there already; name another file' : `cannot be written (${codeOf(error)})`;
    throw new Halt('settings', `${path} ${why}. Nothing was changed.`);
  }
}

function taken(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    throw new Halt('settings', `${path} cannot be read (${codeOf(error)}). Nothing was changed.`);
  }
}
