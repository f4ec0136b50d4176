import { Temporal } from 'temporal-polyfill';
import { wallAt } from './wall.ts';

/** Milliseconds since 1970-01-01T00:00Z. */
export type Instant = number;
/** `YYYY-MM-DD` on a wall calendar; which wall is said by the zone that goes with it. */
export type Day = string;
/** `HH:MM`, 24 hours, on the shop's wall clock. */
export type Clock = string;
/** An IANA time zone name, such as `America/Chicago`. */
export type Zone = string;
/** A true elapsed duration in minutes. */
export type Minutes = number;

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;

export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** The instant `minutes` of true time later, also across a clock change. */
export const later = (at: Instant, minutes: Minutes): Instant => at + Math.round(minutes * MINUTE);

/** The local day at an instant.
 *  @example localDay(Date.UTC(2026, 0, 1, 3), 'America/Chicago') //=> '2025-12-31' */
export const localDay = (at: Instant, zone: Zone): Day => wallAt(at, zone).shows.split('T')[0] ?? '';

/** The local clock at an instant, minutes cut off. */
export const localClock = (at: Instant, zone: Zone): Clock => wallAt(at, zone).shows.split('T')[1]?.slice(0, 5) ?? '';

/** The instant of a local wall-clock time: in the spring gap it moves on, in the repeated autumn hour it is the first. */
export const instantOf = (day: Day, clock: Clock, zone: Zone): Instant =>
  Temporal.PlainDateTime.from(`${day}T${clock}`).toZonedDateTime(zone, { disambiguation: 'compatible' })
    .epochMilliseconds;

/** The day `days` after (or before) on the calendar. */
export const addDays = (day: Day, days: number): Day => Temporal.PlainDate.from(day).add({ days }).toString();

/** Calendar days from `a` to `b`; negative when `b` is earlier. */
export const daysBetween = (a: Day, b: Day): number =>
  Temporal.PlainDate.from(a).until(Temporal.PlainDate.from(b), { largestUnit: 'day' }).days;

/** The day that was written, if the calendar has it; undefined for anything else. */
export function calendarDay(said: string): Day | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(said)) return undefined;
  try {
    return Temporal.PlainDate.from(said).toString();
  } catch {
    return undefined;
  }
}

export const weekdayOf = (day: Day): Weekday => WEEKDAYS[Temporal.PlainDate.from(day).dayOfWeek - 1] ?? 'mon';
