import { SUBDIVISIONS, WORDLIKE_CODES } from './language/places.ts';
import type { Token } from './tokens.ts';

/** The state or province whose postal code stands at a token: `MN`, or `mn` after in, to or from; `me`, `in` and `or` are words unless written large. */
export function codeAt(tokens: readonly Token[], at: number, shouted: boolean): string | undefined {
  const token = tokens[at];
  if (token?.kind !== 'word' || token.text.length !== 2) return undefined;
  const code = CODES.get(token.text);
  if (code === undefined) return undefined;
  const isLarge = token.large && !shouted;
  const before = tokens[at - 1];
  const isLed = LEADS.has(before?.stem ?? '') || (before?.stem === ',' && tokens[at - 2]?.kind === 'word');
  const isLast = (tokens[at + 1]?.kind ?? 'line') !== 'word';
  if (!WORDLIKE_CODES.has(token.text)) return isLarge || isLed || (before === undefined && isLast) ? code : undefined;
  if (isLarge) return isLed || isLast ? code : undefined;
  return NEVER.has(token.text) ? undefined : isLed && before?.stem !== ',' && isLast ? code : undefined;
}

/** The state or province of a message that is its postal code and nothing more; `ok` and `hi` are talk.
 *  @example codeAlone(' or ') //=> 'US-OR' */
export function codeAlone(said: string): string | undefined {
  const code = said.trim().toLowerCase();
  return TALK.has(code) ? undefined : CODES.get(code);
}
const TALK: ReadonlySet<string> = new Set(['ok', 'hi']);

/** Whether the message is written all in capitals, which then say nothing. */
export function isShouted(said: string): boolean {
  let small = 0;
  let large = 0;
  for (let at = 0; at < said.length; at += 1) {
    const code = said.charCodeAt(at);
    if (code >= 97 && code <= 122) small += 1;
    else if (code >= 65 && code <= 90) large += 1;
  }
  return large > 3 && large > small * 4;
}

const CODES: ReadonlyMap<string, string> = new Map(
  Object.keys(SUBDIVISIONS).map((code) => [code.slice(3).toLowerCase(), code]),
);
const LEADS: ReadonlySet<string> = new Set(['in', 'to', 'from', 'near', 'en', 'a', 'desde']);
const NEVER: ReadonlySet<string> = new Set(['in', 'or', 'me', 'hi', 'on', 'de', 'us', 'al', 'co', 'id', 'la', 'ok']);
