import type { Day, Instant } from '../domain/craft/time.ts';
import type { Book } from './book.ts';
import type { Store } from './store.ts';

export type BackupParts<Desk> = Readonly<{
  store: Store<Book<Desk>>;
  make: () => Promise<Uint8Array>;
  /** Brings it to a place away from this computer; throws if it did not get there. */
  send: (bytes: Uint8Array, name: string) => Promise<void>;
}>;

/** Once a local day, whenever it is asked first: makes a backup, sends it, notes that it was sent. What fails is tried again when it is asked next. */
export async function dailyBackup<Desk>(
  { store, make, send }: BackupParts<Desk>,
  day: Day,
  now: Instant,
): Promise<void> {
  if (store.read().backupDay === day) return;
  await send(await make(), `jigwright-${day}.backup`);
  await store.change((book) => ({ next: { ...book, backupDay: day, backedUpAt: now }, result: null }));
}
