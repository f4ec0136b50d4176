import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openLowdb } from '../src/adapters/lowdb/open.ts';
import { emptyBook } from '../src/app/book.ts';
import { BOOK_VERSIONS } from '../src/bookVersions.ts';
import { emptyDesk } from '../src/domain/desk/state.ts';
import { KEEPINGS } from '../src/keepBook.ts';
import { readSettings, type Settings } from '../src/settings.ts';
import { newFolder } from './adapters/lowdb/folder.ts';

function settingsIn(home: string, dataDir = 'book'): Settings {
  const read = readSettings({ DATA_DIR: join(home, dataDir), KEY_FILE: join(home, 'key') });
  if (!read.ok) throw new Error(read.faults.join());
  return read.settings;
}

/** A home with a book that has one finished order. */
async function homeWithBook(): Promise<string> {
  const home = newFolder();
  const { dataDir, key } = settingsIn(home);
  const empty = emptyBook(emptyDesk);
  const book = await openLowdb({
    folder: dataDir,
    key,
    versions: BOOK_VERSIONS,
    empty,
    clock: Date.now,
    say: () => {},
  });
  await book.store.change((old) => ({ next: { ...old, unasked: 41 }, result: null }));
  await book.archive.append([{ id: 'K-1001', month: '2026-11', record: { total: 4200 } }]);
  await book.close();
  return home;
}

const said: string[] = [];
const say = (line: string): void => void said.push(line);

test('what is backed up can be restored into an empty folder, and then checks as whole', async () => {
  const home = await homeWithBook();
  await KEEPINGS.backup(settingsIn(home), join(home, 'b'), say);
  expect(readFileSync(join(home, 'b')).includes('K-1001')).toBe(false);
  await KEEPINGS.restore(settingsIn(home, 'other'), join(home, 'b'), say);
  await KEEPINGS.check(settingsIn(home, 'other'), '', say);
  expect(said.at(-1)).toBe('All is whole.');
  await KEEPINGS.export(settingsIn(home, 'other'), join(home, 'e.json'), say);
  expect(JSON.parse(readFileSync(join(home, 'e.json'), 'utf8'))).toMatchObject({
    book: { unasked: 41 },
    archive: [{ id: 'K-1001', record: { total: 4200 } }],
  });
});

test('a file that is there is never written over', async () => {
  const home = await homeWithBook();
  writeFileSync(join(home, 'b'), 'mine');
  await expect(KEEPINGS.backup(settingsIn(home), join(home, 'b'), say)).rejects.toThrow(/is there already/);
  await expect(KEEPINGS.export(settingsIn(home), join(home, 'b'), say)).rejects.toThrow(/is there already/);
  expect(readFileSync(join(home, 'b'), 'utf8')).toBe('mine');
});

test('without a file name, and where there is no book, it says what to do and makes no key', async () => {
  const home = newFolder();
  mkdirSync(join(home, 'book'), { mode: 0o700 });
  await expect(KEEPINGS.backup(settingsIn(home), '', say)).rejects.toThrow('npm run jigwright -- backup');
  await expect(KEEPINGS.export(settingsIn(home), join(home, 'e'), say)).rejects.toThrow(/no book/);
  await expect(KEEPINGS.restore(settingsIn(home), join(home, 'gone'), say)).rejects.toThrow(/cannot be read/);
  expect(() => readFileSync(join(home, 'key'))).toThrow(/ENOENT/);
});

test('a damaged file is named and ends the check as a fault', async () => {
  const home = await homeWithBook();
  writeFileSync(join(home, 'book', 'book-0000000001.sealed'), 'x');
  await expect(KEEPINGS.check(settingsIn(home), '', say)).rejects.toThrow(/book-0000000001\.sealed: damaged/);
});

test('what only looks or cannot be done leaves no folder behind', async () => {
  const home = newFolder();
  await expect(KEEPINGS.check(settingsIn(home), '', say)).rejects.toThrow(/There is no book/);
  await expect(KEEPINGS.export(settingsIn(home), join(home, 'e.json'), say)).rejects.toThrow(/There is no book/);
  writeFileSync(join(home, 'b'), 'no backup');
  await expect(KEEPINGS.restore(settingsIn(home), join(home, 'b'), say)).rejects.toThrow(/a backup, but no key/);
  expect(readdirSync(home)).toEqual(['b']);
});

test('finished orders without their book are not begun anew', async () => {
  const home = await homeWithBook();
  const { dataDir, key } = settingsIn(home);
  for (const name of readdirSync(dataDir)) if (!name.startsWith('archive')) rmSync(join(dataDir, name));
  const opening = openLowdb({
    folder: dataDir,
    key,
    versions: BOOK_VERSIONS,
    empty: emptyBook(emptyDesk),
    clock: Date.now,
    say,
  });
  await expect(opening).rejects.toThrow(/the book is gone/);
});

test('a backup does not lie in the folder that it is of', async () => {
  const home = await homeWithBook();
  const { dataDir } = settingsIn(home);
  await expect(KEEPINGS.backup(settingsIn(home), join(dataDir, 'b'), say)).rejects.toThrow(/Name a file elsewhere/);
});
