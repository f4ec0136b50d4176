import { Temporal } from 'temporal-polyfill';
import type { Day, Instant, Zone } from '../craft/time.ts';
import { HOUR, instantOf, localClock, localDay, MINUTE } from '../craft/time.ts';
import { dayNumber, dayOf, minutesOf, weekdayOfNumber } from './daynumber.ts';
import type { Hours, Post } from './problem.ts';

/** Days without hours, or without post, after which we say there are none any more. */
const LONGEST_PAUSE_DAYS = 400;
const DAY = 24 * HOUR;

/** The shop's calendar as numbers, made day by day as the plan reaches on. Days are counted from today, which is 0. */
export type Calendar = {
  readonly zone: Zone;
  readonly now: Instant;
  /** The day number of today. */
  readonly today: number;
  readonly hours: Hours;
  readonly post: Post;
  /** The post's clock time in minutes of the wall. */
  readonly by: number;
  /** Stretches of hours from now on, touching ones made one. `starts[i]` to `ends[i]`. */
  readonly starts: Instant[];
  readonly ends: Instant[];
  /** The instant each local day begins. */
  readonly dayStarts: Instant[];
  /** The day whose hours come next into `starts`. */
  reached: number;
  /** No more hours will come. */
  over: boolean;
  /** For each day asked so far the first day post leaves on or after it; -1 when none does. */
  readonly postDays: number[];
  readonly offsets: Offset[];
};
type Offset = { readonly from: Instant; readonly until: Instant; readonly ms: number };
type Place = Readonly<{ zone: Zone; now: Instant; hours: Hours; post: Post }>;

export const calendarOf = ({ zone, now, hours, post }: Place): Calendar => ({
  zone,
  now,
  hours,
  post,
  by: minutesOf(post.by),
  today: dayNumber(localDay(now, zone)),
  starts: [],
  ends: [],
  dayStarts: [],
  reached: 0,
  over: false,
  postDays: [],
  offsets: [],
});

/** Whether there is a stretch of hours with this index; makes the calendar reach that far. */
export function hasWindow(calendar: Calendar, index: number): boolean {
  const { starts } = calendar;
  // The last stretch may still grow when the next day's hours touch it, so it counts once its day is past.
  for (let idle = 0; starts.length <= index + 1 && idle < LONGEST_PAUSE_DAYS;) {
    const before = starts.length;
    addDay(calendar, calendar.reached++);
    idle = starts.length > before ? 0 : idle + 1;
  }
  return index < starts.length;
}

/** The day (counted from today) post takes what is ready at `ready`; -1 when post never leaves again. */
export function shipDay(calendar: Calendar, ready: Instant): number {
  const day = dayIndex(calendar, ready);
  return postDay(calendar, inTime(calendar, ready, day) ? day : day + 1);
}

/** The last instant at which something may be ready to leave on this day, counted from today. */
export const cutOff = (calendar: Calendar, day: number): Instant => clockAt(calendar, day, calendar.by) + MINUTE - 1;

/** The local day `days` after today. */
export const dayAfter = (calendar: Calendar, days: number): Day => dayOf(calendar.today + days);

/** The local day, counted from today, of an instant from today on. */
export function dayIndex(calendar: Calendar, at: Instant): number {
  let day = Math.max(0, Math.floor((at - dayStart(calendar, 0)) / DAY));
  while (dayStart(calendar, day + 1) <= at) day++;
  while (day > 0 && dayStart(calendar, day) > at) day--;
  return day;
}

function addDay(calendar: Calendar, day: number): void {
  const { hours, now, starts, ends } = calendar;
  const name = dayAfter(calendar, day);
  const weekly = hours.daysOff.includes(name) ? [] : (hours.weekly[weekdayOfNumber(calendar.today + day)] ?? []);
  const extra = hours.extra.filter(({ date }) => date === name).map(({ from, to }) => [from, to] as const);
  const spans = [...weekly, ...extra].map(([from, to]) => ({
    from: Math.max(now, clockAt(calendar, day, minutesOf(from))),
    to: clockAt(calendar, day, minutesOf(to)),
  }));
  for (const { from, to } of spans.filter((span) => span.from < span.to).sort((a, b) => a.from - b.from)) {
    const last = ends.length - 1;
    if (last >= 0 && from <= (ends[last] ?? 0)) ends[last] = Math.max(ends[last] ?? 0, to);
    else {
      starts.push(from);
      ends.push(to);
    }
  }
}

function postDay(calendar: Calendar, day: number): number {
  const { postDays, post } = calendar;
  const known = postDays[day];
  if (known !== undefined) return known;
  for (let leaves = day; leaves < day + LONGEST_PAUSE_DAYS; leaves++) {
    const open = post.days.includes(weekdayOfNumber(calendar.today + leaves));
    if (open && !post.closed.includes(dayAfter(calendar, leaves))) return (postDays[day] = leaves);
  }
  return (postDays[day] = -1);
}

function inTime(calendar: Calendar, ready: Instant, day: number): boolean {
  const start = dayStart(calendar, day);
  // On a day of a clock change only the wall itself can say.
  if (dayStart(calendar, day + 1) - start !== DAY)
    return localClock(Math.floor(ready), calendar.zone) <= calendar.post.by;
  return ready < start + (calendar.by + 1) * MINUTE;
}

function dayStart(calendar: Calendar, day: number): Instant {
  const { dayStarts } = calendar;
  while (dayStarts.length <= day) dayStarts.push(clockAt(calendar, dayStarts.length, 0));
  return dayStarts[day] ?? 0;
}

function clockAt(calendar: Calendar, day: number, minutes: number): Instant {
  const wall = (calendar.today + day) * DAY + minutes * MINUTE;
  const offset = offsetNear(calendar, wall);
  if (offset !== undefined) return wall - offset;
  const late = minutes >= 24 * 60;
  const clock = `${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}`;
  return instantOf(dayAfter(calendar, late ? day + 1 : day), clock, calendar.zone);
}

/** The zone's offset around a wall time, in ms, if it does not change within a day of it. */
function offsetNear({ zone, offsets }: Calendar, wall: number): number | undefined {
  let last = offsets.at(-1);
  while (last === undefined || wall - last.ms + DAY >= last.until) {
    last = offsetFrom(last?.until ?? wall - 2 * DAY, zone);
    offsets.push(last);
  }
  return offsets.find(({ from, until, ms }) => wall - ms - DAY >= from && wall - ms + DAY < until)?.ms;
}

function offsetFrom(from: Instant, zone: Zone): Offset {
  const at = Temporal.Instant.fromEpochMilliseconds(from).toZonedDateTimeISO(zone);
  const next = at.getTimeZoneTransition('next');
  return { from, until: next?.epochMilliseconds ?? Infinity, ms: at.offsetNanoseconds / 1e6 };
}

const two = (n: number): string => String(n).padStart(2, '0');
