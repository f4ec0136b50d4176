import { addDays, calendarDay, type Day } from '../craft/time.ts';

/** A text without the day a delivery is expected on, and that day: today or later, the year filled in.
 *  @example laterDay('500 bags for Dec 9', '2026-11-30') //=> { rest: '500 bags', day: '2026-12-09' }
 *  @example laterDay('500 bags in 8 days', '2026-11-30') //=> { rest: '500 bags', day: '2026-12-08' } */
export function laterDay(text: string, today: Day): Readonly<{ rest: string; day: Day | null }> {
  for (const [pattern, dayOf] of PATTERNS) {
    const found = pattern.exec(text);
    const day = found && dayOf(found, today);
    if (found && day)
      return { rest: `${text.slice(0, found.index)}${text.slice(found.index + found[0].length)}`.trim(), day };
  }
  return { rest: text, day: null };
}

const LEAD = String.raw`(?:,?\s*\b(?:for|by|on|arriving|arrives|due|para(?:\s+el)?|el)\s+)`;
const MONTHS = ['jan|ene', 'feb', 'mar', 'apr|abr', 'may', 'jun', 'jul', 'aug|ago', 'sep', 'oct', 'nov', 'dec|dic'];
const MONTH = String.raw`(${MONTHS.join('|')})\p{L}*\.?`;

const PATTERNS: readonly (readonly [RegExp, (found: RegExpExecArray, today: Day) => Day | null])[] = [
  [new RegExp(`${LEAD}?(\\d{4}-\\d{2}-\\d{2})\\b`, 'iu'), ([, day = '']) => calendarDay(day) ?? null],
  [
    /,?\s*\b(?:in|en|within)\s+(\d{1,3})\s+(?:days?|días?|dias?)\b/iu,
    ([, days], today) => addDays(today, Number(days)),
  ],
  [/,?\s*\b(?:in|en)\s+(\d{1,2})\s+(?:weeks?|semanas?)\b/iu, ([, weeks], today) => addDays(today, 7 * Number(weeks))],
  [
    new RegExp(`${LEAD}${MONTH}\\s+(\\d{1,2})(?:st|nd|rd|th)?\\b`, 'iu'),
    ([, month, day], today) => next(month, day, today),
  ],
  [new RegExp(`${LEAD}(\\d{1,2})\\s+(?:de\\s+)?${MONTH}`, 'iu'), ([, day, month], today) => next(month, day, today)],
  [/,?\s*\b(?:for\s+|by\s+|para\s+)?(?:tomorrow|mañana)\b/iu, (_, today) => addDays(today, 1)],
];

/** The first such day from today on. */
function next(month = '', day = '', today: Day): Day | null {
  const number = MONTHS.findIndex((names) => names.split('|').includes(month.toLowerCase())) + 1;
  const year = Number(today.slice(0, 4));
  const days = [year, year + 1].flatMap((one) => calendarDay(dayOf(one, number, Number(day))) ?? []);
  return days.find((one) => one >= today) ?? null;
}

const dayOf = (year: number, month: number, day: number): string =>
  `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
