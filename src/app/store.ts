/** Where one value lives. What a change acknowledges is on disk; what fails was never there. */
export interface Store<T> {
  /** The value as last recorded. */
  read(): T;
  /** Runs alone, on the value as it is. Records what `step` returns, or nothing at all if `step` throws or the write fails.
   *  Returning the same value writes nothing.
   *  @throws NotRecorded when the write failed; whatever `step` threw otherwise. */
  change<R>(step: Step<T, R>): Promise<R>;
}

/** Pure: it may be run again on another value if the first write fails. */
export type Step<T, R> = (value: T) => Readonly<{ next: T; result: R }>;

/** The medium refused a write, and the value is as it was before. */
export class NotRecorded extends Error {
  readonly code: string;
  constructor(code: string) {
    super(`The book could not be written (${code}). Nothing of this change was kept.`);
    this.code = code;
  }
}
