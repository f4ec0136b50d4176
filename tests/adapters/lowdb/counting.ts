import { z } from 'zod';
import { BookFile } from '../../../src/adapters/lowdb/bookFile.ts';
import { type Disk, openDisk } from '../../../src/adapters/lowdb/disk.ts';
import { openStore } from '../../../src/adapters/lowdb/store.ts';
import type { Versions } from '../../../src/app/saved.ts';
import type { Count } from '../../contracts/store.contract.ts';

export const KEY = Buffer.alloc(32, 7);
export const NOON = Date.UTC(2026, 10, 25, 12);
export const DAY = 86_400_000;
export const COUNTING: Versions<Count> = { steps: [], schema: z.strictObject({ count: z.number() }) };

export type Wishes = Readonly<{
  disk?: Disk;
  key?: Uint8Array;
  clock?: () => number;
  versions?: Versions<Count>;
  warn?: (sentence: string) => void;
}>;

/** A count in a folder, read from what is there. */
export const countIn = (folder: string, wishes: Wishes = {}) =>
  openStore(
    new BookFile({
      disk: wishes.disk ?? openDisk(folder),
      key: wishes.key ?? KEY,
      versions: wishes.versions ?? COUNTING,
      clock: wishes.clock ?? (() => NOON),
      warn: wishes.warn ?? (() => {}),
    }),
    { count: 0 },
  );

export const add = (value: Count) => ({ next: { count: value.count + 1 }, result: value.count + 1 });
