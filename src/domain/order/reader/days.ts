import type { Temporal } from 'temporal-polyfill';
import type { Day } from '../../craft/time.ts';
import { daysFromNow, fromNow } from './countedDays.ts';
import { dayMonth, monthAlone, monthDay, ordinalDay, slashed, written } from './datedDays.ts';
import type { Found, Look } from './dayLook.ts';
import type { Lexicon } from './lexicon.ts';
import { endOf, holidayAt, looseMonth, near, nextWeekday, vagueAt, weekdayAt } from './namedDays.ts';
import type { Token, TokenKind } from './tokens.ts';

/** A day said, null when it was spoken of but is no one day. */
export type DaySaid = Readonly<{ day: Day | null; until: number }>;

/** The day that begins at a token, counted from the buyer's `today`.
 *  @example dayAt(tokensOf('the 19th'), 0, lexicon, () => Temporal.PlainDate.from('2026-04-06')) //=> { day: '2026-04-19', until: 3 } */
export function dayAt(
  tokens: readonly Token[],
  at: number,
  lexicon: Lexicon,
  today: () => Temporal.PlainDate,
): DaySaid | undefined {
  const look: Look = { tokens, at, lexicon, words: lexicon.language.days, today };
  for (const rule of RULES[tokens[at]?.kind ?? 'mark'] ?? []) {
    const found = rule(look);
    if (found) return { day: found.day?.toString() ?? null, until: found.until };
  }
  return undefined;
}

/** What a day may be, by the kind of token it begins with; the first that fits is it. */
const RULES: Readonly<Partial<Record<TokenKind, readonly ((look: Look) => Found | undefined)[]>>> = {
  day: [written],
  fraction: [slashed],
  number: [dayMonth, daysFromNow, ordinalDay],
  word: [
    holidayAt,
    endOf,
    looseMonth,
    nextWeekday,
    vagueAt,
    monthDay,
    dayMonth,
    weekdayAt,
    fromNow,
    near,
    ordinalDay,
    monthAlone,
  ],
};
