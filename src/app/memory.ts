import { HOUR, type Instant } from '../domain/craft/time.ts';

/** The platform keeps an update for a day; its numbers restart at random after a quiet week, so a high-water mark would not do. */
export const SEEN_HOURS = 48;

/** More than the platform can have waiting between two polls (100), few enough to be written each time. */
export const SEEN_MOST = 4000;

/** `rows` (oldest first) and `more`, without what is older than 48 hours and never more than 4000. */
export const remember = <Row extends Readonly<{ at: Instant }>>(
  rows: readonly Row[],
  more: readonly Row[],
  now: Instant,
): readonly Row[] => (more.length === 0 && isYoung(rows[0], now) ? rows : fresh([...rows, ...more], now));

const fresh = <Row extends Readonly<{ at: Instant }>>(rows: readonly Row[], now: Instant): readonly Row[] =>
  isYoung(rows[0], now) && rows.length <= SEEN_MOST ? rows : rows.filter((row) => isYoung(row, now)).slice(-SEEN_MOST);

const isYoung = (row: Readonly<{ at: Instant }> | undefined, now: Instant): boolean =>
  row === undefined || row.at > now - SEEN_HOURS * HOUR;
