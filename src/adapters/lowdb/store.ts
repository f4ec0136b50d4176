import { type Adapter, Low } from 'lowdb';
import { codeOf } from '../../app/log.ts';
import { NotRecorded, type Step, type Store } from '../../app/store.ts';

type Waiting = Readonly<{ recorded: () => void; lost: (error: NotRecorded) => void }>;

/** A store over a lowdb adapter. Steps run at once, one after another; those that come while a write is out share the next one,
 *  and none is answered before its write is done. A failed write takes back every step that it held or that was built on it. */
export async function openStore<T>(adapter: Adapter<T>, empty: T): Promise<LowStore<T>> {
  const low = new Low<T>(adapter, empty);
  await low.read();
  return new LowStore(low);
}

class LowStore<T> implements Store<T> {
  readonly #low: Low<T>;
  #recorded: T;
  #head: T;
  #waiting: Waiting[] = [];
  #writing: Promise<void> | null = null;

  constructor(low: Low<T>) {
    this.#low = low;
    this.#recorded = low.data;
    this.#head = low.data;
  }

  read(): T {
    return this.#recorded;
  }

  async change<R>(step: Step<T, R>): Promise<R> {
    const { next, result } = step(this.#head);
    this.#head = next;
    if (this.#head !== this.#recorded || this.#writing !== null) await this.#write();
    return result;
  }

  /** Resolves when nothing is left to write. */
  async settle(): Promise<void> {
    while (this.#writing !== null) await this.#writing;
  }

  #write(): Promise<void> {
    const written = new Promise<void>((recorded, lost) => this.#waiting.push({ recorded, lost }));
    this.#writing ??= this.#loop();
    return written;
  }

  async #loop(): Promise<void> {
    // One turn of the queue, so that steps which came together are together from the first write on.
    await Promise.resolve();
    while (this.#waiting.length > 0) await this.#group();
    this.#writing = null;
  }

  async #group(): Promise<void> {
    const group = this.#waiting.splice(0);
    const next = this.#head;
    try {
      if (next !== this.#recorded) await this.#record(next);
      for (const one of group) one.recorded();
    } catch (error) {
      this.#head = this.#recorded;
      const lost = [...group, ...this.#waiting.splice(0)];
      for (const one of lost) one.lost(new NotRecorded(codeOf(error)));
    }
  }

  async #record(next: T): Promise<void> {
    try {
      this.#low.data = next;
      await this.#low.write();
      this.#recorded = next;
    } finally {
      this.#low.data = this.#recorded;
    }
  }
}
