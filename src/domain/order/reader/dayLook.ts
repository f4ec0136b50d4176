import type { Temporal } from 'temporal-polyfill';
import type { DayWords } from './language/language.ts';
import type { Lexicon } from './lexicon.ts';
import type { Token } from './tokens.ts';

/** What is looked at to find a day, shared by the ways of saying one. */

export type Look = Readonly<{
  tokens: readonly Token[];
  at: number;
  lexicon: Lexicon;
  words: DayWords;
  today: () => Temporal.PlainDate;
}>;

export type Found = Readonly<{ day: Temporal.PlainDate | null; until: number }>;

export const stem = ({ tokens, at }: Look, offset = 0): string => tokens[at + offset]?.stem ?? '';

export const isOne = (words: readonly string[], said: string): boolean => words.includes(said);

export const OF: ReadonlySet<string> = new Set(['of', 'de']);

export const THE: ReadonlySet<string> = new Set(['the', 'el']);

/** After these even 3/8 is the eighth of March, if nothing follows that it could weigh. */
export const STRICT: ReadonlySet<string> = new Set(['by', 'before', 'until', 'till', 'due', 'para', 'antes']);

export const endsThere = ({ tokens }: Look, at: number): boolean => (tokens[at]?.kind ?? 'line') !== 'word';
