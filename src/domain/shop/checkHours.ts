import { weekdayOf } from '../craft/time.ts';
import type { Check } from './check.ts';
import { faultAt, repeated, sayPath, type Fault, type Path } from './fault.ts';
import { entries, type SoundParts } from './sound.ts';

/** What must hold for hours, the post, the digest, quiet hours and the size of orders. */
export const HOUR_CHECKS: readonly Check[] = [
  hoursApart,
  extraEnds,
  extraApart,
  postDaysOnce,
  quietIsAPart,
  digestAwake,
  leastBelowMost,
];

/** The bench hours of a weekday do not overlap. */
function hoursApart(shop: SoundParts): Fault[] {
  return Object.values(weekly(shop)).flatMap(overlaps);
}

/** Extra hours end after they begin. */
function extraEnds(shop: SoundParts): Fault[] {
  return entries(shop.hours?.extra).flatMap(([at, { from, to }]) =>
    from === undefined || to === undefined || from < to
      ? []
      : [faultAt(['hours', 'extra', at, 'to'], to, `a time after ${from}`)],
  );
}

/** Extra hours overlap neither one another nor the usual hours of their day. */
function extraApart(shop: SoundParts): Fault[] {
  const extra = entries(shop.hours?.extra).flatMap(([at, { date, from, to }]) =>
    date === undefined || from === undefined || to === undefined || from >= to
      ? []
      : [{ date, path: ['hours', 'extra', at], from, to }],
  );
  const usual = (date: string): Hours[] =>
    shop.hours?.daysOff?.includes(date) ? [] : (weekly(shop)[weekdayOf(date)] ?? []);
  return [...new Set(extra.map(({ date }) => date))].flatMap((date) => {
    const known = usual(date);
    const ofDay = extra.filter((hours) => hours.date === date);
    return ofDay.flatMap((hours, place) => clash(hours, [...known, ...ofDay.slice(0, place)]));
  });
}

/** A post day is named once. */
function postDaysOnce(shop: SoundParts): Fault[] {
  return repeated(
    entries(shop.post?.days).map(([at, day]) => [['post', 'days', at], day]),
    'a post day',
  );
}

/** Quiet hours are a part of the day: they do not end when they begin. */
function quietIsAPart(shop: SoundParts): Fault[] {
  const { from, to } = shop.quiet ?? {};
  return from === undefined || from !== to ? [] : [faultAt(['quiet', 'to'], to, 'another time than it begins')];
}

/** The digest comes when the bot may speak. */
function digestAwake(shop: SoundParts): Fault[] {
  const { digestAt, quiet: { from, to } = {} } = shop;
  if (digestAt === undefined || from === undefined || to === undefined) return [];
  const isQuiet = from < to ? from <= digestAt && digestAt < to : from !== to && (digestAt >= from || digestAt < to);
  return isQuiet ? [faultAt(['digestAt'], digestAt, `a time outside the quiet hours ${from} to ${to}`)] : [];
}

/** The least heads of a line are not above the most. */
function leastBelowMost(shop: SoundParts): Fault[] {
  const { least, most } = shop.orders ?? {};
  return least === undefined || most === undefined || least <= most
    ? []
    : [faultAt(['orders', 'least'], least, `at most the ${most} of orders.most`)];
}

type Hours = Readonly<{ path: Path; from: string; to: string }>;

const weekly = (shop: SoundParts): Readonly<Record<string, Hours[]>> =>
  Object.fromEntries(
    Object.entries(shop.hours?.weekly ?? {}).map(([day, spans]) => [
      day,
      entries(spans).flatMap(([at, [from, to]]) =>
        from === undefined || to === undefined ? [] : [{ path: ['hours', 'weekly', day, at], from, to }],
      ),
    ]),
  );

const overlaps = (spans: readonly Hours[]): Fault[] =>
  spans.flatMap((span, place) => clash(span, spans.slice(0, place)));

function clash({ path, from, to }: Hours, others: readonly Hours[]): Fault[] {
  const other = others.find((hours) => hours.from < to && from < hours.to);
  return other === undefined
    ? []
    : [faultAt(path, `${from}-${to}`, `hours that keep clear of ${sayPath(other.path)}, ${other.from}-${other.to}`)];
}
