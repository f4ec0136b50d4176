/** What happened, in numbers and short codes. No words that anyone typed, no names, no addresses, no secrets. */
export type Log = (event: string, facts?: Readonly<Record<string, number | string | null>>) => void;

/** A sentence for an error that is safe to print: its message only, and nothing in it that looks like a bot's token. */
export const safely = (error: unknown): string =>
  (error instanceof Error ? error.message : 'Something that is not an error was thrown').replaceAll(TOKEN, '[token]');

/** A short code for an error: the system's or the platform's own, else the kind of error. */
export const codeOf = (error: unknown): string => {
  if (!(error instanceof Error)) return 'unknown';
  const { code } = error as { code?: unknown };
  return typeof code === 'string' && /^[A-Z][A-Z_0-9]{1,40}$/.test(code) ? code : error.name;
};

/** A bot's number, a colon, and 35 characters; or a payment provider's, which has a word between. */
const TOKEN = /\d{3,20}:(?:[A-Z]{4}:)?[\w-]{20,}/g;
