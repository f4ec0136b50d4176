/** Lets one in at a time, in the order they came; but whoever takes longer than `patienceMs` no longer keeps the next one waiting. */
export class Turnstile {
  readonly #patienceMs: number;
  readonly #after: (ms: number, run: () => void) => () => void;
  #last: Promise<void> = Promise.resolve();

  constructor(patienceMs: number, after: (ms: number, run: () => void) => () => void) {
    this.#patienceMs = patienceMs;
    this.#after = after;
  }

  async pass<R>(work: () => Promise<R>): Promise<R> {
    const before = this.#last;
    let leave: () => void = () => {};
    this.#last = new Promise((resolve) => (leave = resolve));
    await before;
    const callOff = this.#after(this.#patienceMs, leave);
    try {
      return await work();
    } finally {
      callOff();
      leave();
    }
  }
}
