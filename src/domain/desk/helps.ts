import { addDays, instantOf, localClock, localDay, type Clock, type Day, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { changed } from './changed.ts';
import type { Danger } from './coming.ts';
import { shipDays } from './heading.ts';
import { spansOn } from './hours.ts';
import { cutOffOn } from './post.ts';
import type { Desk } from './state.ts';

/** What really helps a promise in danger: a change of turn or hours after which, by the plan, the order ships on a day that keeps it, or
 *  sooner where it is late; what is missing to be ordered; or the parcel to be handed in. */
export type Help =
  | Readonly<{ do: 'change'; change: Helping; ships: Day }>
  | Readonly<{ do: 'buy' }>
  | Readonly<{ do: 'post'; by: Instant }>;

type Extra = Readonly<{ do: 'extra'; day: Day; from: Clock; to: Clock }>;
export type Helping = Extra | Readonly<{ do: 'first' | 'release'; order: string }>;

export function helpsFor(shop: Shop, desk: Desk, danger: Danger, now: Instant): readonly Help[] {
  const { order, ships, packed, waits, missing } = danger;
  if (packed) {
    const by = ships === null ? undefined : cutOffOn(shop, ships);
    return by === undefined ? [] : [{ do: 'post', by }];
  }
  const tried = trying(shop, desk, danger, now);
  if (waits !== null) return tried({ do: 'release', order });
  if (missing.length > 0) return [{ do: 'buy' }];
  return [...tried({ do: 'first', order }), ...extraHours(shop, desk, danger, now, tried)];
}

type Tried = (change: Helping) => readonly Extract<Help, Readonly<{ do: 'change' }>>[];

/** What comes of a change: nothing where it does not help, or makes another order late that is not. */
function trying(shop: Shop, desk: Desk, { order, promised, late, ships, waits }: Danger, now: Instant): Tried {
  const before = shipDays(shop, desk, now);
  const isBetter = (day: Day): boolean => waits !== null || (late ? day < (ships ?? '9999') : day <= promised);
  return (change) => {
    const after = changed(shop, desk, change, now);
    const days = after === undefined ? {} : shipDays(shop, after, now);
    const day = days[order];
    const pushed = Object.values(desk.orders).some(
      ({ id, promise }) => id !== order && (days[id] ?? '') > later(promise.ships, before[id] ?? ''),
    );
    return day === undefined || pushed || !isBetter(day) ? [] : [{ do: 'change', change, ships: day }];
  };
}

const later = (one: Day, other: Day): Day => (one > other ? one : other);

/** Minutes more that are tried, and days that are looked at; our own choice. */
const MORE = [30, 60, 120, 180];
const DAYS_MOST = 7;

/** The first day on which more hours would save it, and the fewest that do. */
function extraHours(shop: Shop, desk: Desk, danger: Danger, now: Instant, tried: Tried): readonly Help[] {
  const today = localDay(now, shop.zone);
  const last = danger.late ? (danger.ships ?? today) : danger.promised;
  const days = Array.from({ length: DAYS_MOST }, (_, at) => addDays(today, at)).filter((day) => day <= last);
  for (const day of days) {
    const ways = MORE.map((minutes) => spansFor(shop, desk, day, minutes, now));
    if (!ways.at(-1)?.some((span) => tried(span).length > 0)) continue;
    const helps = ways.flatMap((spans) => spans.flatMap(tried));
    return helps.slice(0, 1);
  }
  return [];
}

/** So many minutes more on a day: before the bench hours or after them, on a day without any in the evening, and before the post leaves. */
function spansFor(shop: Shop, desk: Desk, day: Day, minutes: number, now: Instant): readonly Extra[] {
  const spans = spansOn(shop, desk, day);
  const [opens, closes, post] = [spans[0]?.from, spans.at(-1)?.to, cutOffOn(shop, day)];
  const ms = minutes * 60_000;
  const starts = [
    opens === undefined ? instantOf(day, EVENING, shop.zone) : opens - ms,
    ...(closes === undefined ? [] : [closes]),
    ...(post === undefined ? [] : [post - ms]),
  ];
  return starts.flatMap((from) => {
    const [begins, ends] = [localClock(from, shop.zone), localClock(from + ms, shop.zone)];
    const isFit = from >= now && begins < ends && begins >= EARLIEST && ends <= LATEST;
    return isFit ? [{ do: 'extra', day, from: begins, to: ends } as const] : [];
  });
}

/** When more hours begin on a day without any, and the hours of the day in which anybody would work; our own choice. */
const EVENING: Clock = '17:00';
const EARLIEST: Clock = '07:00';
const LATEST: Clock = '23:00';
