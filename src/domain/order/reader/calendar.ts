import { Temporal } from 'temporal-polyfill';

/** Days on the calendar, counted from a buyer's today. */

/** This year's day if it is still to come, else the next that there is: a 29 February may be years away. */
export function next(today: Temporal.PlainDate, month: number, day: number): Temporal.PlainDate {
  const isOver = month < today.month || (month === today.month && day < today.day);
  for (let year = today.year + Number(isOver); year < today.year + LEAP_GAP; year += 1) {
    const date = dateOf(year, month, day);
    if (date) return date;
  }
  return today;
}
const LEAP_GAP = 9;

/** The next such day of a month, this month's only if it is still to come. */
export function nextDay(today: Temporal.PlainDate, day: number): Temporal.PlainDate {
  const first = day > today.day ? 0 : 1;
  for (const add of [first, first + 1]) {
    const month = today.month + add;
    const date = dateOf(today.year + Math.floor((month - 1) / 12), ((month - 1) % 12) + 1, day);
    if (date) return date;
  }
  return today;
}

/** The last day of its month. */
export const lastOf = (date: Temporal.PlainDate): Temporal.PlainDate => date.with({ day: date.daysInMonth });

/** The day of that date; undefined if there is none, such as 30 February. */
export function dateOf(year: number, month: number, day: number): Temporal.PlainDate | undefined {
  try {
    return Temporal.PlainDate.from({ year, month, day }, { overflow: 'reject' });
  } catch {
    return undefined;
  }
}

/** The next such weekday to come, never today; 0 is Monday. */
export const comingWeekday = (today: Temporal.PlainDate, weekday: number): Temporal.PlainDate =>
  today.add({ days: ((weekday + 1 - today.dayOfWeek + 6) % 7) + 1 });
/** That weekday of the week that begins next Monday. */
export const weekAfter = (today: Temporal.PlainDate, weekday: number): Temporal.PlainDate =>
  today.add({ days: 8 - today.dayOfWeek + weekday });
