import type { Temporal } from 'temporal-polyfill';
import type { Weight } from '../../craft/weight.ts';
import type { Shop } from '../../shop/shop.ts';
import { dayAt } from './days.ts';
import type { LanguageWords } from './language/language.ts';
import type { Lexicon } from './lexicon.ts';
import { countAt } from './numbers.ts';
import { phraseAt } from './phrases.ts';
import { codeAt, isShouted } from './postal.ts';
import { sizeAt, sizeWordsOf, type SizeWords } from './sizes.ts';
import { placed, type Mark, type Meaning, type Sense, type Span } from './span.ts';
import type { Token } from './tokens.ts';

/** What reading needs beside the message: the words, the weights the molds have, the day it is. */
export type Light = Readonly<{
  lexicon: Lexicon;
  language: LanguageWords;
  sizes: SizeWords;
  dayStarts: ReadonlySet<string>;
  /** Words with which a count or a size may begin. */
  numberStarts: ReadonlySet<string>;
  weights: readonly Weight[];
  /** The shop's plain collar, if it has one. */
  collar: string | undefined;
  today: () => Temporal.PlainDate;
}>;

/** What a shop and a language bring to reading, made ready once. */
export const lightOf = (lexicon: Lexicon, shop: Shop): Omit<Light, 'today'> => ({
  lexicon,
  language: lexicon.language,
  sizes: sizeWordsOf(lexicon.language),
  dayStarts: dayStartsOf(lexicon),
  numberStarts: numberStartsOf(lexicon),
  weights: [...new Set(shop.molds.flatMap(({ cavities }) => cavities.map(({ weight }) => weight)))],
  collar: shop.dressings.find(({ kind }) => kind === 'collar')?.id,
});

type Meant = Readonly<{ until: number; means: Meaning }>;

/** The message as stretches that mean one thing each; the longest meaning that begins at a word is taken. */
export function spansOf(said: string, tokens: readonly Token[], light: Light): readonly Span[] {
  const spans: Span[] = [];
  const shouted = isShouted(said);
  for (let at = 0; at < tokens.length;) {
    const { until, means } = meaningAt(tokens, at, light, shouted);
    spans.push(placed(means, tokens[at]?.from ?? 0, tokens[until - 1]?.to ?? 0, at, until));
    at = until;
  }
  return spans;
}

function meaningAt(tokens: readonly Token[], at: number, light: Light, shouted: boolean): Meant {
  const token = tokens[at] as Token;
  if (token.kind === 'noise') return { until: at + 1, means: { is: 'noise' } };
  const mayBeDay = token.kind === 'word' ? light.dayStarts.has(token.stem) : DATED.has(token.kind);
  const day = mayBeDay ? dayAt(tokens, at, light.lexicon, light.today) : undefined;
  if (day) return { until: day.until, means: { is: 'day', day: day.day } };
  const code = codeAt(tokens, at, shouted);
  if (code) return { until: at + 1, means: { is: 'place', code } };
  return longest(tokens, at, light) ?? { until: at + 1, means: unknown(token) };
}

/** Tokens that are no words and may begin a day. */
const DATED: ReadonlySet<Token['kind']> = new Set(['number', 'fraction', 'day']);

function longest(tokens: readonly Token[], at: number, light: Light): Meant | undefined {
  const { lexicon, language } = light;
  const numbered = isNumbered(tokens[at] as Token, light);
  const phrase = phraseAt<Sense>(lexicon.senses, tokens, at);
  const count = numbered ? countAt(tokens, at, language) : undefined;
  const size = numbered ? sizeAt(tokens, at, count, light) : undefined;
  const until = Math.max(size?.until ?? 0, phrase?.until ?? 0, count?.until ?? 0);
  if (until === 0) return undefined;
  if (size?.until === until)
    return {
      until,
      means:
        size.value === null ? { is: 'stranger', slot: size.slot } : { is: 'value', slot: size.slot, value: size.value },
    };
  if (count?.until === until) return { until, means: { is: 'number', count: count.count, sure: count.sure } };
  return phrase && { until, means: phrase.found };
}

/** Whether a count or a size may begin here: most words of a message are asked for neither. */
const isNumbered = ({ kind, stem }: Token, { numberStarts, sizes }: Light): boolean =>
  kind === 'word' || kind === 'mark' ? numberStarts.has(stem) || sizes.size.has(stem) : kind !== 'line';

const unknown = (token: Token): Meaning => {
  if (token.kind === 'line') return { is: 'mark', mark: 'line' };
  if (token.kind === 'mark')
    return { is: 'mark', mark: MARKS[token.stem] ?? (PICTOGRAPH.test(token.stem) ? 'stop' : 'other') };
  return token.kind === 'word' ? { is: 'word', stem: token.stem } : { is: 'noise' };
};

/** What is set between two sentences as well as a full stop. */
const PICTOGRAPH = /^\p{Extended_Pictographic}/u;
const MARKS: Readonly<Record<string, Mark>> = {
  ',': 'comma',
  ')': 'comma',
  '.': 'stop',
  '!': 'stop',
  '…': 'stop',
  ';': 'stop',
  '?': 'question',
  ':': 'colon',
  '=': 'colon',
  '>': 'colon',
  '-': 'dash',
  '–': 'dash',
  '—': 'dash',
  '/': 'slash',
  '(': 'bracket',
};

/** The words with which a day may begin; no other word is asked for one. */
function dayStartsOf({ language: { days, numbers }, holidays, vague }: Lexicon): ReadonlySet<string> {
  const tables = [days.months, days.weekdays, days.ordinals, days.near, numbers].flatMap((table) => Object.keys(table));
  const lists = [days.within, days.next, days.this, days.end, days.around].flat();
  return new Set([
    ...tables,
    ...lists,
    ...holidays.next.keys(),
    ...vague.next.keys(),
    'the',
    'el',
    'a',
    'an',
    'one',
    'un',
    'una',
    'twenty',
    'thirty',
  ]);
}

function numberStartsOf({ language }: Lexicon): ReadonlySet<string> {
  const { numbers, fractions, dozens } = language;
  return new Set([
    ...Object.keys(numbers),
    ...Object.keys(fractions),
    ...dozens,
    '#',
    'a',
    'of',
    'de',
    'half',
    'media',
    'one',
    'uno',
  ]);
}
