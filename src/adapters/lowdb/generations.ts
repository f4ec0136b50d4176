/** The book is a row of files: each write makes the next one, `book-0000000042.sealed`; the newest whole one is the truth. */
export const KEPT = 5;
/** Each day's first write keeps what was there before it, as `day-2026-11-25.sealed`. */
export const DAYS_KEPT = 14;
/** Under this name a generation is written before it gets its own. */
export const UNFINISHED = 'book.unfinished';
export const UNFINISHED_DAY = 'day.unfinished';

export const generationName = (serial: number): string => `book-${String(serial).padStart(10, '0')}.sealed`;
export const dayName = (at: number): string => `day-${new Date(at).toISOString().slice(0, 10)}.sealed`;

/** Generations, newest first. */
export const generations = (names: readonly string[]): readonly string[] =>
  names
    .filter((name) => /^book-\d{10,}\.sealed$/.test(name))
    .sort()
    .reverse();

/** Daily copies, newest first. */
export const days = (names: readonly string[]): readonly string[] =>
  names
    .filter((name) => /^day-\d{4}-\d{2}-\d{2}\.sealed$/.test(name))
    .sort()
    .reverse();

export const serialOf = (name: string): number => Number(/^book-(\d{10,})\.sealed$/.exec(name)?.[1] ?? 0);
