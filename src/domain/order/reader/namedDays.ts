import { comingWeekday, lastOf, next, weekAfter } from './calendar.ts';
import { dayMonth, monthDay, ordinalDay, slashed } from './datedDays.ts';
import { isOne, OF, stem, STRICT, type Found, type Look } from './dayLook.ts';
import { holiday } from './holidays.ts';
import { phraseAt } from './phrases.ts';
import type { Token } from './tokens.ts';

/** Days said by a name: a holiday, a weekday, tomorrow, the end of June. */

export function holidayAt(look: Look): Found | undefined {
  const found = phraseAt(look.lexicon.holidays, look.tokens, look.at);
  return found && { day: holiday(found.found, look.today()), until: found.until };
}

/** End of the month, end of June: its last day. */
export function endOf(look: Look): Found | undefined {
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
export function looseMonth(look: Look): Found | undefined {
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

export function vagueAt(look: Look): Found | undefined {
  const found = phraseAt(look.lexicon.vague, look.tokens, look.at);
  if (!found || (found.found === 'loose' && !STRICT.has(stem(look, -1)) && !STRICT.has(stem(look, -2))))
    return undefined;
  return { day: null, until: found.until };
}

/** Next week friday. */
export function nextWeekday(look: Look): Found | undefined {
  const weekday = look.words.weekdays[stem(look, 2)];
  if (weekday === undefined || !isNextWeek(look, look.at)) return undefined;
  return { day: weekAfter(look.today(), weekday), until: look.at + 3 };
}

/** Friday, this friday, friday the 22nd, friday of next week; next friday only where both readings agree. */
export function weekdayAt(look: Look): Found | undefined {
  const isNext = isOne(look.words.next, stem(look));
  const at = isNext || isOne(look.words.this, stem(look)) ? look.at + 1 : look.at;
  const weekday = look.words.weekdays[stem({ ...look, at })];
  if (
    weekday === undefined ||
    isOne(look.words.habit, stem(look, -1)) ||
    !(isDayName(look.tokens[at], look) || isDated(look, at + 1))
  )
    return undefined;
  const place = at + 1 + Number(look.tokens[at + 1]?.stem === ',');
  const dated =
    monthDay({ ...look, at: place }) ??
    dayMonth({ ...look, at: place }) ??
    ordinalDay({ ...look, at: place }) ??
    slashed({ ...look, at: place });
  if (dated) return dated;
  const coming = comingWeekday(look.today(), weekday);
  const week = at + 1 + Number(OF.has(look.tokens[at + 1]?.stem ?? ''));
  if (isNextWeek(look, week)) return { day: weekAfter(look.today(), weekday), until: week + 2 };
  if (!isNext) return { day: coming, until: at + 1 };
  return { day: coming.equals(weekAfter(look.today(), weekday)) ? coming : null, until: at + 1 };
}

const isNextWeek = ({ words, tokens }: Look, at: number): boolean =>
  isOne(words.next, tokens[at]?.stem ?? '') && words.spans[tokens[at + 1]?.stem ?? ''] === 'week';

/** Sat April 11. */
const isDated = (look: Look, at: number): boolean => monthDay({ ...look, at }) !== undefined;

/** Saturdays are no one day; sun, sat, wed, mon written short are days only after a word that leads to one. */
const isDayName = (token: Token | undefined, { words, tokens, at }: Look): boolean =>
  ((token?.text.length ?? 0) > 3 && !token?.text.endsWith('days')) ||
  isOne([...words.lead, ...words.this, ...words.next], tokens[at - 1]?.stem ?? '') ||
  isOne([...words.this, ...words.next], tokens[at]?.stem ?? '') ||
  token?.stem === 'fri' ||
  token?.stem === 'thu' ||
  token?.stem === 'tue';

export function near(look: Look): Found | undefined {
  const days = look.words.near[stem(look)];
  return days === undefined ? undefined : { day: look.today().add({ days }), until: look.at + 1 };
}
