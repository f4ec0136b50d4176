import { Temporal } from 'temporal-polyfill';

/** A stretch of time between two clock changes of a zone: from, up to until, in ms since 1970. */
type Stretch = Readonly<{ from: number; until: number; aheadMs: number; offset: string }>;

/** The stretches asked for lately, newest first. A zone is slow to ask, and almost all instants lie in one of two. */
const known = new Map<string, readonly Stretch[]>();
const KEPT = 8;

/** What a clock on the wall of a zone shows at an instant, as ISO 8601 to the millisecond without an offset, and the offset.
 *  @example wallAt(Date.UTC(2026, 0, 1, 3), 'America/Chicago') //=> { shows: '2025-12-31T21:00:00.000', offset: '-06:00' } */
export function wallAt(at: number, zone: string): Readonly<{ shows: string; offset: string }> {
  const { aheadMs, offset } = stretchAt(at, zone);
  const shows = Temporal.Instant.fromEpochMilliseconds(at + aheadMs).toString({ fractionalSecondDigits: 3 });
  return { shows: shows.slice(0, -'Z'.length), offset };
}

/** The day of the week there, 0 is Monday. */
export function weekdayAt(at: number, zone: string): number {
  const day = Math.floor((at + stretchAt(at, zone).aheadMs) / DAY);
  return (((day + EPOCH_WEEKDAY) % WEEK) + WEEK) % WEEK;
}
const DAY = 86_400_000;
const WEEK = 7;
/** 1970-01-01 was a Thursday. */
const EPOCH_WEEKDAY = 3;

function stretchAt(at: number, zone: string): Stretch {
  const before = known.get(zone) ?? [];
  const found = before.find(({ from, until }) => at >= from && at < until);
  if (found) return found;
  const local = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);
  const stretch: Stretch = {
    from: changeOf(local, at, 'previous') ?? -Infinity,
    until: changeOf(local, at, 'next') ?? Infinity,
    aheadMs: local.offsetNanoseconds / 1e6,
    offset: local.offset,
  };
  known.set(zone, [stretch, ...before].slice(0, KEPT));
  return stretch;
}

/** The clock change before or after; one that falls on the instant itself begins its stretch. */
function changeOf(local: Temporal.ZonedDateTime, at: number, direction: 'next' | 'previous'): number | undefined {
  const change = local.getTimeZoneTransition(direction)?.epochMilliseconds;
  if (direction === 'next' || change === undefined) return change;
  const own = local.subtract({ nanoseconds: 1 }).getTimeZoneTransition('next')?.epochMilliseconds;
  return own === at ? at : change;
}
