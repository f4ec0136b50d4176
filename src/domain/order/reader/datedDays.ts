import { dateOf, next, nextDay } from './calendar.ts';
import { phraseAt } from './phrases.ts';
import { endsThere, isOne, OF, stem, STRICT, THE, type Found, type Look } from './dayLook.ts';

/** Days said by their number: 5/23/26, May 23, the 3rd of June, the 19th. */

/** 2026-05-23, 5/23/26. */
export function written(look: Look): Found | undefined {
  const token = look.tokens[look.at];
  if (token?.kind !== 'day') return undefined;
  const parts = token.stem.split(/[/-]/).map(Number);
  const [a = 0, b = 0, c = 0] = parts;
  const day = a > 31 ? dateOf(a, b, c) : dateOf(c < 100 ? 2000 + c : c, a, b);
  return day && { day, until: look.at + 1 };
}

/** 6/5, where a weight cannot stand, or where only a day can. */
export function slashed(look: Look): Found | undefined {
  const token = look.tokens[look.at];
  const [month = 0, day = 0] = token?.stem.split('/').map(Number) ?? [];
  if (token?.kind !== 'fraction' || month > 12 || day > 31 || day === 0 || month === 0) return undefined;
  const isWeight = month < day && (POWERS.has(day) || hasUnit(look));
  return isWeight && !(STRICT.has(stem(look, -1)) && endsThere(look, look.at + 1))
    ? undefined
    : comes(look, month, day, look.at + 1);
}

/** 1/6 oz */
const hasUnit = (look: Look): boolean => {
  const next = phraseAt(look.lexicon.senses, look.tokens, look.at + 1)?.found;
  return next?.is === 'grammar' && next.word === 'unit';
};

const POWERS: ReadonlySet<number> = new Set([2, 4, 8, 16, 32, 64]);

/** May 23, June the 3rd, March 1st, 2027. */
export function monthDay(look: Look): Found | undefined {
  const month = look.words.months[stem(look)];
  if (month === undefined) return undefined;
  const at = look.at + 1 + Number(stem(look, 1) === '.' && isShort(look, month));
  const day = numbered(look, stem({ ...look, at }) === 'the' ? at + 1 : at);
  return day && withYear(look, month, day.day, day.until);
}

/** `Sept.`, but not `till June. 20 heads`: a month written out has no full stop of its own. */
const isShort = (look: Look, month: number): boolean =>
  Object.entries(look.words.months).some(([name, number]) => number === month && name.length > stem(look).length);

/** 23 May, the 3rd of June, first of May. */
export function dayMonth(look: Look): Found | undefined {
  const at = THE.has(stem(look)) ? look.at + 1 : look.at;
  const day = numbered(look, at);
  if (!day) return undefined;
  const place = OF.has(look.tokens[day.until]?.stem ?? '') ? day.until + 1 : day.until;
  const month = look.words.months[look.tokens[place]?.stem ?? ''];
  return month === undefined ? undefined : withYear(look, month, day.day, place + 1);
}

/** The 19th: the next one to come. In words only after by or before: `the second line` is no day. */
export function ordinalDay(look: Look): Found | undefined {
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
export function monthAlone(look: Look): Found | undefined {
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
