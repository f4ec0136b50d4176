import type { Clock, Day, Weekday } from '../craft/time.ts';
import { WEEKDAYS } from '../craft/time.ts';

/** Days since 1970-01-01 by plain arithmetic, because a plan asks for thousands of days and a calendar library is slow there.
 *  Proleptic Gregorian: a 400-year era has 146,097 days, a year counted from March has its leap day last.
 *  @example dayNumber('1970-01-02') //=> 1 */
export function dayNumber(day: Day): number {
  const [year = 1970, month = 1, date = 1] = day.split('-').map(Number);
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const ofEra = y - era * 400;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + date - 1;
  return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

/** The day with this number. Years 0 to 9999.
 *  @example dayOf(1) //=> '1970-01-02' */
export function dayOf(number: number): Day {
  const n = number + 719_468;
  const era = Math.floor(n / 146_097);
  const ofEra = n - era * 146_097;
  const years = ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096);
  const yearOfEra = Math.floor(years / 365);
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const date = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}`;
}

/** 1970-01-01 was a Thursday. */
export const weekdayOfNumber = (number: number): Weekday => WEEKDAYS[(((number + 3) % 7) + 7) % 7] ?? 'mon';

/** Minutes since midnight on the wall; 24:00 is 1440. */
export const minutesOf = (clock: Clock): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));

const two = (n: number): string => String(n).padStart(2, '0');
