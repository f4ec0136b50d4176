import type { Temporal } from 'temporal-polyfill';
import type { Day } from '../../craft/time.ts';
import { comingWeekday, dateOf, lastOf, next, nextDay, weekAfter } from './calendar.ts';
import { holiday } from './holidays.ts';
import type { DayWords } from './language/language.ts';
import { countAt } from './numbers.ts';
import { phraseAt } from './phrases.ts';
import type { Lexicon } from './lexicon.ts';
import type { Token, TokenKind } from './tokens.ts';

/** A day said, null when it was spoken of but is no one day. */
export type DaySaid = Readonly<{ day: Day | null; until: number }>;

type Look = Readonly<{
  tokens: readonly Token[];
  at: number;
  lexicon: Lexicon;
  words: DayWords;
  today: () => Temporal.PlainDate;
}>;
type Found = Readonly<{ day: Temporal.PlainDate | null; until: number }>;

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
  word: [holidayAt, endOf, looseMonth, vagueAt, monthDay, dayMonth, weekdayAt, fromNow, near, ordinalDay, monthAlone],
};

const stem = ({ tokens, at }: Look, offset = 0): string => tokens[at + offset]?.stem ?? '';
const isOne = (words: readonly string[], said: string): boolean => words.includes(said);

/** 2026-05-23, 5/23/26. */
function written(look: Look): Found | undefined {
  const token = look.tokens[look.at];
  if (token?.kind !== 'day') return undefined;
  const parts = token.stem.split(/[/-]/).map(Number);
  const [a = 0, b = 0, c = 0] = parts;
  const day = a > 31 ? dateOf(a, b, c) : dateOf(c < 100 ? 2000 + c : c, a, b);
  return day && { day, until: look.at + 1 };
}

/** 6/5, where a weight cannot stand, or where only a day can. */
function slashed(look: Look): Found | undefined {
  const token = look.tokens[look.at];
  const [month = 0, day = 0] = token?.stem.split('/').map(Number) ?? [];
  if (token?.kind !== 'fraction' || month > 12 || day > 31 || day === 0 || month === 0) return undefined;
  const isWeight = POWERS.has(day) && month < day;
  return isWeight && !(STRICT.has(stem(look, -1)) && endsThere(look, look.at + 1))
    ? undefined
    : comes(look, month, day, look.at + 1);
}
/** After these even 3/8 is the eighth of March, if nothing follows that it could weigh. */
const STRICT: ReadonlySet<string> = new Set(['by', 'before', 'until', 'till', 'due', 'para', 'antes']);
const endsThere = ({ tokens }: Look, at: number): boolean => (tokens[at]?.kind ?? 'line') !== 'word';
const POWERS: ReadonlySet<number> = new Set([2, 4, 8, 16, 32, 64]);

function holidayAt(look: Look): Found | undefined {
  const found = phraseAt(look.lexicon.holidays, look.tokens, look.at);
  return found && { day: holiday(found.found, look.today()), until: found.until };
}

/** End of the month, end of June: its last day. */
function endOf(look: Look): Found | undefined {
  if (!isOne(look.words.end, stem(look))) return undefined;
  let at = look.at + 1;
  while (OF_THE.has(look.tokens[at]?.stem ?? '')) at += 1;
  const isNext = isOne(look.words.next, look.tokens[at]?.stem ?? '');
  const month = look.words.months[look.tokens[at]?.stem ?? ''];
  if (month !== undefined) return { day: lastOf(next(look.today(), month, 28)), until: at + 1 };
  const span = look.words.spans[look.tokens[isNext ? at + 1 : at]?.stem ?? ''];
  if (span === 'week') return { day: null, until: isNext ? at + 2 : at + 1 };
  return span === 'month'
    ? {
        day: lastOf(isNext ? look.today().with({ day: 1 }).add({ months: 1 }) : look.today()),
        until: isNext ? at + 2 : at + 1,
      }
    : undefined;
}
const OF_THE: ReadonlySet<string> = new Set(['of', 'the', 'this', 'de', 'del', 'este']);

/** Mid December, early June, sometime in May. */
function looseMonth(look: Look): Found | undefined {
  if (!isOne(look.words.around, stem(look))) return undefined;
  let at = look.at + 1;
  while (IN_THE.has(look.tokens[at]?.stem ?? '')) at += 1;
  const said = look.tokens[at]?.stem ?? '';
  const isMonth =
    look.words.months[said] !== undefined ||
    look.words.spans[said] !== undefined ||
    look.words.weekdays[said] !== undefined;
  if (/^\d/.test(look.tokens[at + 1]?.stem ?? '') && look.words.months[said] !== undefined) return undefined;
  return isMonth ? { day: null, until: at + 1 } : undefined;
}
const IN_THE: ReadonlySet<string> = new Set(['in', 'of', 'the', 'next', 'to', 'de', 'this', 'part']);

function vagueAt(look: Look): Found | undefined {
  const found = phraseAt(look.lexicon.vague, look.tokens, look.at);
  if (!found || (found.found === 'loose' && !STRICT.has(stem(look, -1)) && !STRICT.has(stem(look, -2))))
    return undefined;
  return { day: null, until: found.until };
}

/** May 23, June the 3rd, March 1st, 2027. */
function monthDay(look: Look): Found | undefined {
  const month = look.words.months[stem(look)];
  if (month === undefined) return undefined;
  const at = look.at + 1 + Number(stem(look, 1) === '.');
  const day = numbered(look, stem({ ...look, at }) === 'the' ? at + 1 : at);
  return day && withYear(look, month, day.day, day.until);
}

/** 23 May, the 3rd of June, first of May. */
function dayMonth(look: Look): Found | undefined {
  const at = THE.has(stem(look)) ? look.at + 1 : look.at;
  const day = numbered(look, at);
  if (!day) return undefined;
  const place = OF.has(look.tokens[day.until]?.stem ?? '') ? day.until + 1 : day.until;
  const month = look.words.months[look.tokens[place]?.stem ?? ''];
  return month === undefined ? undefined : withYear(look, month, day.day, place + 1);
}
const OF: ReadonlySet<string> = new Set(['of', 'de']);
const THE: ReadonlySet<string> = new Set(['the', 'el']);

/** Friday, this friday, friday the 22nd, a week from friday; next friday only where both readings agree. */
function weekdayAt(look: Look): Found | undefined {
  const isNext = isOne(look.words.next, stem(look));
  const at = isNext || isOne(look.words.this, stem(look)) ? look.at + 1 : look.at;
  const weekday = look.words.weekdays[stem({ ...look, at })];
  if (weekday === undefined || !isDayName(look.tokens[at], look)) return undefined;
  const place = at + 1 + Number(look.tokens[at + 1]?.stem === ',');
  const dated =
    monthDay({ ...look, at: place }) ??
    dayMonth({ ...look, at: place }) ??
    ordinalDay({ ...look, at: place }) ??
    slashed({ ...look, at: place });
  if (dated) return dated;
  const after =
    isOne(look.words.next, look.tokens[at + 1]?.stem ?? '') &&
    look.words.spans[look.tokens[at + 2]?.stem ?? ''] === 'week';
  const coming = comingWeekday(look.today(), weekday);
  if (after) return { day: weekAfter(look.today(), weekday), until: at + 3 };
  if (!isNext) return { day: coming, until: at + 1 };
  return { day: coming.equals(weekAfter(look.today(), weekday)) ? coming : null, until: at + 1 };
}

/** Sun, sat, wed, mon written short are days only after a word that leads to one. */
const isDayName = (token: Token | undefined, { words, tokens, at }: Look): boolean =>
  (token?.text.length ?? 0) > 3 ||
  isOne([...words.lead, ...words.this, ...words.next], tokens[at - 1]?.stem ?? '') ||
  isOne([...words.this, ...words.next], tokens[at]?.stem ?? '') ||
  token?.stem === 'fri' ||
  token?.stem === 'thu' ||
  token?.stem === 'tue';

/** 10 days from now: most numbers count heads, so the word behind is looked at before anything is counted. */
function daysFromNow(look: Look): Found | undefined {
  const { spans } = look.words;
  return (spans[stem(look, 1)] ?? spans[stem(look, 2)] ?? spans[stem(look, 3)]) ? fromNow(look) : undefined;
}

/** In 2 weeks, within ten days, two weeks from now, a week from friday. */
function fromNow(look: Look): Found | undefined {
  const isWithin = isOne(look.words.within, stem(look));
  const at =
    look.at +
    Number(isWithin) +
    Number(stem(look, 1) === 'about' || stem(look, 1) === 'the' || stem(look, 1) === 'like');
  const counted = countAt(look.tokens, at, look.lexicon.language) ?? article(look.tokens, at);
  if (!counted || counted.sure) return undefined;
  const place = counted.until + Number(OF.has(look.tokens[counted.until]?.stem ?? ''));
  const span = look.words.spans[look.tokens[place]?.stem ?? ''];
  if (!span) return undefined;
  const fromAt = isOne(look.words.from, look.tokens[place + 1]?.stem ?? '') ? place + 2 : undefined;
  const amount = span === 'month' ? { months: counted.count } : { days: counted.count * (span === 'week' ? 7 : 1) };
  if (fromAt !== undefined) return later(look, fromAt, amount);
  return isWithin ? { day: look.today().add(amount), until: place + 1 } : undefined;
}

function later(
  look: Look,
  at: number,
  amount: Readonly<{ months: number }> | Readonly<{ days: number }>,
): Found | undefined {
  const said = look.tokens[at]?.stem ?? '';
  if (said === 'now' || said === 'today') return { day: look.today().add(amount), until: at + 1 };
  const base = weekdayAt({ ...look, at }) ?? near({ ...look, at });
  return base?.day ? { day: base.day.add(amount), until: base.until } : undefined;
}
const article = (tokens: readonly Token[], at: number) =>
  /^(a|an|one|un|una|couple)$/.test(tokens[at]?.stem ?? '')
    ? tokens[at + 1]?.stem === 'couple'
      ? { count: 2, until: at + 2, sure: false }
      : { count: tokens[at]?.stem === 'couple' ? 2 : 1, until: at + 1, sure: false }
    : undefined;

function near(look: Look): Found | undefined {
  const days = look.words.near[stem(look)];
  return days === undefined ? undefined : { day: look.today().add({ days }), until: look.at + 1 };
}

/** The 19th: the next one to come. In words only after by or before: `the second line` is no day. */
function ordinalDay(look: Look): Found | undefined {
  const at = THE.has(stem(look)) ? look.at + 1 : look.at;
  const day = numbered(look, at);
  if (!day || !(day.isOrdinal || THE.has(stem(look)))) return undefined;
  const isDigits = look.tokens[at]?.kind === 'number';
  if (isDigits && !day.isOrdinal && !(isOne(look.words.lead, stem(look, -1)) && endsThere(look, day.until)))
    return undefined;
  if (!isDigits && !isOne(look.words.lead, stem(look, -1))) return undefined;
  return inMonth(look, day.day, day.until) ?? { day: nextDay(look.today(), day.day), until: day.until };
}

/** The 10th of next month. */
function inMonth(look: Look, day: number, from: number): Found | undefined {
  const at = from + Number(OF.has(look.tokens[from]?.stem ?? ''));
  const [when, month] = [look.tokens[at]?.stem ?? '', look.tokens[at + 1]?.stem ?? ''];
  if (look.words.spans[month] !== 'month' || !isOne([...look.words.next, ...look.words.this], when)) return undefined;
  const first = look
    .today()
    .with({ day: 1 })
    .add({ months: isOne(look.words.next, when) ? 1 : 0 });
  const date = dateOf(first.year, first.month, day);
  return date && { day: date, until: at + 2 };
}

/** By June: a month is not a day. */
function monthAlone(look: Look): Found | undefined {
  return look.words.months[stem(look)] !== undefined &&
    isOne([...look.words.lead, ...look.words.within], stem(look, -1))
    ? { day: null, until: look.at + 1 }
    : undefined;
}

function numbered(look: Look, at: number): Readonly<{ day: number; until: number; isOrdinal: boolean }> | undefined {
  const token = look.tokens[at];
  if (token?.kind === 'number' && /^\d{1,2}$/.test(token.stem) && Number(token.stem) <= 31 && Number(token.stem) > 0) {
    const isOrdinal =
      isOne(look.words.suffixes, look.tokens[at + 1]?.stem ?? '') && look.tokens[at + 1]?.glued === true;
    return { day: Number(token.stem), until: at + 1 + Number(isOrdinal), isOrdinal };
  }
  return wordOrdinal(look, at);
}

function wordOrdinal(
  { words, tokens }: Look,
  at: number,
): Readonly<{ day: number; until: number; isOrdinal: boolean }> | undefined {
  const one = words.ordinals[tokens[at]?.stem ?? ''];
  if (one !== undefined) return { day: one, until: at + 1, isOrdinal: true };
  const tens = TENS[tokens[at]?.stem ?? ''];
  const ones = words.ordinals[tokens[at + 1]?.stem ?? ''];
  return tens !== undefined && ones !== undefined && ones < 10 && tens + ones <= 31
    ? { day: tens + ones, until: at + 2, isOrdinal: true }
    : undefined;
}
const TENS: Readonly<Record<string, number>> = { twenty: 20, thirty: 30 };

function withYear(look: Look, month: number, day: number, until: number): Found | undefined {
  const place = until + Number(look.tokens[until]?.stem === ',' || OF.has(look.tokens[until]?.stem ?? ''));
  const year = Number(look.tokens[place]?.stem);
  if (year < 2020 || year > 2100 || Number.isNaN(year)) return comes(look, month, day, until);
  const date = dateOf(year, month, day);
  return date && { day: date, until: place + 1 };
}

/** The next one to come; undefined for a day that month never has. */
function comes(look: Look, month: number, day: number, until: number): Found | undefined {
  return day > (LONGEST[month - 1] ?? 0) ? undefined : { day: next(look.today(), month, day), until };
}
const LONGEST: readonly number[] = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
