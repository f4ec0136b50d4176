import type { Adapter } from 'lowdb';
import { Halt } from '../../app/exit.ts';
import { type Versions, upgraded, versionOf } from '../../app/saved.ts';
import { codeOf } from '../../app/log.ts';
import type { Disk } from './disk.ts';
import {
  DAYS_KEPT,
  KEPT,
  UNFINISHED,
  UNFINISHED_DAY,
  dayName,
  days,
  generationName,
  generations,
  serialOf,
} from './generations.ts';
import { type Opened, open, seal } from './seal.ts';

export type BookFileParts<T> = Readonly<{
  disk: Disk;
  key: Uint8Array;
  versions: Versions<T>;
  clock: () => number;
  /** Said when the newest generation cannot be read and an older one is taken. */
  warn: (sentence: string) => void;
}>;

export const FORMAT = 'jigwright book';

/** lowdb's two methods over a row of sealed files: write makes the next generation, read finds the newest whole one. */
export class BookFile<T> implements Adapter<T> {
  readonly #parts: BookFileParts<T>;
  #serial = 0;
  /** Names on the disk, kept in memory so that a write need not list the folder. */
  #kept: readonly string[] = [];
  #day = '';
  #lastWrite: number | null = null;

  constructor(parts: BookFileParts<T>) {
    this.#parts = parts;
  }

  /** When a generation was last made safe by this process. */
  get lastWrite(): number | null {
    return this.#lastWrite;
  }

  /** The newest value that is whole; null if there never was a book here.
   *  @throws Halt when there is a book but none of it can be read: starting anew would write over it. */
  async read(): Promise<T | null> {
    const names = this.#parts.disk.names();
    this.#kept = generations(names);
    this.#day = days(names)[0] ?? '';
    this.#serial = serialOf(this.#kept[0] ?? '');
    const all = [...this.#kept, ...days(names)];
    if (all.length === 0) return null;
    const faults: string[] = [];
    for (const name of all) {
      const found = this.#readOne(name);
      if (found.ok) return this.#accepted(name, found.value, faults);
      faults.push(`${name}: ${found.says}`);
    }
    throw new Halt(
      'settings',
      `There is a book, but none of it can be read. Nothing was changed.\n${faults.join('\n')}`,
    );
  }

  /** Records `value` as the next generation: when this resolves, a power cut loses none of it. */
  async write(value: T): Promise<void> {
    const { disk, key, versions, clock } = this.#parts;
    const serial = this.#serial + 1;
    const writtenAt = clock();
    const label = { format: FORMAT, version: versionOf(versions), serial, writtenAt };
    await disk.write(UNFINISHED, seal(JSON.stringify(value), label, key));
    await this.#keepDay(dayName(writtenAt));
    // The number is taken even if what follows fails: a reader may already find a file of that name.
    this.#serial = serial;
    disk.rename(UNFINISHED, generationName(serial));
    await this.#synced(generationName(serial));
    this.#kept = [generationName(serial), ...this.#kept];
    this.#lastWrite = writtenAt;
    this.#prune();
  }

  /** A generation that is not safe is taken away again, so that the disk and the memory say the same. */
  async #synced(name: string): Promise<void> {
    try {
      await this.#parts.disk.sync();
    } catch (error) {
      this.#parts.disk.remove(name);
      throw error;
    }
  }

  #accepted(name: string, value: T, faults: readonly string[]): T {
    if (faults.length > 0)
      this.#parts.warn(
        `The newest book could not be read, so ${name} is used. What came after it is lost.\n${faults.join('\n')}`,
      );
    return value;
  }

  #readOne(name: string): Readonly<{ ok: true; value: T }> | Readonly<{ ok: false; says: string }> {
    const opened = this.#opened(name);
    if (!opened.ok) return { ok: false, says: this.#refusal(opened) };
    const found = upgraded(this.#parts.versions, opened.label.version, JSON.parse(opened.json));
    if (!found.ok && found.why === 'newer') throw new Halt('settings', `${name}: ${found.says} Nothing was changed.`);
    return found;
  }

  #opened(name: string): Opened {
    try {
      return open(this.#parts.disk.read(name), this.#parts.key);
    } catch (error) {
      throw new Halt('disk', `${name} cannot be read from the disk (${codeOf(error)}). Nothing was changed.`);
    }
  }

  #refusal(opened: Extract<Opened, { ok: false }>): string {
    if (opened.why === 'damaged') return 'its bytes are not those that were written.';
    throw new Halt(
      'settings',
      'The key is not the one this book was written with (JIGWRIGHT_KEY or KEY_FILE). Nothing was changed.',
    );
  }

  /** The first write of a day keeps the last generation of the days before. */
  async #keepDay(day: string): Promise<void> {
    const { disk } = this.#parts;
    const last = this.#kept[0];
    if (last === undefined || day <= this.#day) return;
    await this.#copy(last, day);
    this.#day = day;
    for (const old of days(disk.names()).slice(DAYS_KEPT)) disk.remove(old);
  }

  /** A second name costs nothing; some file systems have none, so there it is a copy. */
  async #copy(from: string, to: string): Promise<void> {
    const { disk } = this.#parts;
    try {
      disk.link(from, to);
    } catch {
      await disk.write(UNFINISHED_DAY, disk.read(from));
      disk.rename(UNFINISHED_DAY, to);
    }
  }

  /** What is left over does no harm, so a file that cannot be removed now is tried again with the next write. */
  #prune(): void {
    for (const old of this.#kept.slice(KEPT))
      try {
        this.#parts.disk.remove(old);
        this.#kept = this.#kept.filter((name) => name !== old);
      } catch (error) {
        if (codeOf(error) !== 'ENOENT') return;
      }
  }
}
