/** More ms than any order of work is long; a plain number, so that JSON can write it. */
export const NEVER = 1e15;
