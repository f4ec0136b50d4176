import { addDays, WEEKDAYS, weekdayOf, type Day, type Weekday } from './time.ts';

/** The holidays of 5 U.S.C. §6103(a), on which there is no regular mail. A state's or a carrier's own days are not among them. */
export const FEDERAL_HOLIDAYS = [
  'new-year',
  'martin-luther-king',
  'washington',
  'memorial',
  'juneteenth',
  'independence',
  'labor',
  'columbus',
  'veterans',
  'thanksgiving',
  'christmas',
] as const;
export type FederalHoliday = (typeof FEDERAL_HOLIDAYS)[number];

/** A fixed date, or a weekday counted from a date on: the 3rd Monday of January is the first from `01-15`. */
type Rule = Readonly<{ date: string; first?: Weekday }>;

const RULES: Readonly<Record<FederalHoliday, Rule>> = {
  'new-year': { date: '01-01' },
  'martin-luther-king': { date: '01-15', first: 'mon' },
  washington: { date: '02-15', first: 'mon' },
  memorial: { date: '05-25', first: 'mon' },
  juneteenth: { date: '06-19' },
  independence: { date: '07-04' },
  labor: { date: '09-01', first: 'mon' },
  columbus: { date: '10-08', first: 'mon' },
  veterans: { date: '11-11' },
  thanksgiving: { date: '11-22', first: 'thu' },
  christmas: { date: '12-25' },
};

/** The day itself of each US federal holiday in a year from 2021 on, when Juneteenth joined them.
 *  The mail keeps the day itself; offices that work Monday to Friday keep `observed`.
 *  @example federalHolidays(2026).thanksgiving //=> '2026-11-26' */
export function federalHolidays(year: number): Readonly<Record<FederalHoliday, Day>> {
  const days = FEDERAL_HOLIDAYS.map((holiday) => [holiday, dayOf(RULES[holiday], year)] as const);
  return Object.fromEntries(days) as Record<FederalHoliday, Day>;
}

function dayOf({ date, first }: Rule, year: number): Day {
  const from = `${year}-${date}`;
  if (first === undefined) return from;
  return addDays(from, (WEEKDAYS.indexOf(first) - WEEKDAYS.indexOf(weekdayOf(from)) + 7) % 7);
}

/** The weekday on which federal offices keep a holiday: Friday for a Saturday, Monday for a Sunday. @example observed('2026-07-04') //=> '2026-07-03' */
export const observed = (holiday: Day): Day => addDays(holiday, { sat: -1, sun: 1 }[weekdayOf(holiday) as string] ?? 0);

/** Whether federal offices are closed for a holiday on a day; New Year's may be kept in the year before. */
export const isObserved = (day: Day): boolean =>
  [0, 1].some((later) =>
    Object.values(federalHolidays(Number(day.slice(0, 4)) + later)).some((holiday) => observed(holiday) === day),
  );
