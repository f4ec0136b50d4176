import type { Book, Closed } from './book.ts';
import { type Log, codeOf } from './log.ts';
import type { Store } from './store.ts';

/** Where finished orders rest; no command reads it. */
export interface Archive {
  /** Records them for good. What is there already, by its id, is not there twice afterwards. */
  append(closed: readonly Closed[]): Promise<void>;
  /** Everything of a month, `2026-11`, the newest record of each id. */
  read(month: string): Promise<readonly Closed[]>;
  /** Writes a month anew, each record as `keep` gives it back; writes nothing if it gives all back as they are. */
  rewrite(month: string, keep: (row: Closed) => Closed): Promise<void>;
  /** The months that have something, oldest first. */
  months(): Promise<readonly string[]>;
}

/** Moves what is closing into the archive: there first, then out of the book, so that a cut between the two loses nothing. */
export async function putAway<Desk>(store: Store<Book<Desk>>, archive: Archive): Promise<void> {
  const { closing } = store.read();
  if (closing.length === 0) return;
  await archive.append(closing);
  const done = new Set(closing.map(({ id }) => id));
  await store.change((book) => ({
    next: { ...book, closing: book.closing.filter(({ id }) => !done.has(id)) },
    result: null,
  }));
}

/** Puts away in the background, then does `tidy`, one run at a time; what fails is logged and tried again at the next call, its orders still in the book. */
export function puttingAway<Desk>(
  store: Store<Book<Desk>>,
  archive: Archive,
  log: Log,
  tidy: () => Promise<void> = async () => {},
): () => Promise<void> {
  let running: Promise<void> = Promise.resolve();
  const once = (): Promise<void> =>
    putAway(store, archive)
      .then(tidy)
      .catch((error: unknown) => log('archive-failed', { code: codeOf(error) }));
  return () => (running = running.then(once));
}
