/** Why the program stops, and the number it leaves with; a supervisor can tell by it whether starting again helps. */
export const EXITS = {
  done: { code: 0, restart: 'no', says: 'Stopped as asked.' },
  failed: { code: 1, restart: 'yes', says: 'Something went wrong that should not have; the log says what.' },
  settings: {
    code: 2,
    restart: 'no',
    says: 'A setting, the shop file or the book cannot be read; the message says which.',
  },
  taken: { code: 3, restart: 'later', says: 'Another jigwright is running on this book.' },
  token: { code: 4, restart: 'no', says: 'The chat platform does not accept BOT_TOKEN.' },
  rival: { code: 5, restart: 'later', says: 'Another program is polling with the same BOT_TOKEN.' },
  disk: { code: 6, restart: 'later', says: 'The book cannot be written; nothing that was acknowledged is lost.' },
} as const satisfies Readonly<
  Record<string, Readonly<{ code: number; restart: 'no' | 'yes' | 'later'; says: string }>>
>;
export type ExitCause = keyof typeof EXITS;

/** Ends the program with a sentence for the person who started it. */
export class Halt extends Error {
  readonly why: ExitCause;
  constructor(why: ExitCause, sentence: string) {
    super(sentence);
    this.why = why;
  }
}

/** The exit number for whatever ended the program. */
export const exitCode = (error: unknown): number => EXITS[error instanceof Halt ? error.why : 'failed'].code;
