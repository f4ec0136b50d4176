import { isNamed } from './facts.ts';
import type { Item } from './span.ts';

/** The place the parcel goes to, null when it was named but is no state or country that can be written down. */
export type Destination = Readonly<{ code: string | null; from: number; to: number }>;

/** A place as named, and how surely the parcel goes there. */
type Named = Destination & Readonly<{ weight: number }>;

/** Where the parcel goes, or else where the buyer is; never where they fish. */
export function shippedTo(
  items: readonly Item[],
  said: string,
  known: ReadonlySet<string>,
  isAsked: boolean,
): Destination | undefined {
  const places = items.flatMap<Named>((item, at) => {
    if (item.is === 'place')
      return [{ code: item.code, from: item.from, to: item.to, weight: weightOf(items, at, isAsked) }];
    return isTown(items, at, said, known) ? [{ code: null, from: item.from, to: item.to, weight: 1 }] : [];
  });
  const coded = places.filter(({ code, weight }) => code !== null && weight > 0);
  const named = coded.length > 0 ? coded : places;
  const best = Math.max(...named.map(({ weight }) => weight), 0);
  const found = named.findLast(({ weight }) => weight === best);
  return best === 0 || !found ? undefined : { code: found.code, from: found.from, to: found.to };
}

/** Three where it is sent, two where the buyer is, one where nothing else is said, none where they fish. */
function weightOf(items: readonly Item[], at: number, isAsked: boolean): number {
  if (isNamed(items[at + 1], 'water') || isNamed(items[at - 1], 'not')) return 0;
  const led = ledTo(items, at);
  // Ship to Thunder Bay, Ontario: there the water is a town.
  if (isNamed(items[at - 1], 'water')) return led ?? 0;
  return led ?? (isAsked || isBare(items, at) || isPlaced(items, at) ? 1 : 0);
}

/** What the nearest word before it that leads to a place says: to my brother in Ohio is where it is sent, my brother in Ohio is not. */
function ledTo(items: readonly Item[], at: number): number | undefined {
  for (let place = at - 1; place >= 0 && !isEnd(items[place]); place -= 1) {
    if (isNamed(items[place], 'toPlace')) return 3;
    if (isNamed(items[place], 'atPlace')) return 2;
    if (isNamed(items[place], 'notPlace')) return isSentThere(items, place - 1) ? 3 : 0;
    if (isNamed(items[place], 'past', 'veto')) return 0;
  }
  return undefined;
}

/** To my brother in, the box to my brother in. */
const isSentThere = (items: readonly Item[], at: number): boolean =>
  isNamed(items[at], 'toPlace') || (isNamed(items[at], 'link') && isNamed(items[at - 1], 'toPlace'));

/** A place that is nearly all its sentence says. */
const isBare = (items: readonly Item[], at: number): boolean => {
  const start = items.slice(0, at).findLastIndex(isEnd) + 1;
  const end = items.findIndex((item, place) => place > at && isEnd(item));
  const rest = items.slice(start, end === -1 ? items.length : end);
  return rest.filter(({ is }) => is === 'word').length <= 1;
};

/** In Ohio, in Bemidji MN, in Lake County, Minnesota. */
const isPlaced = (items: readonly Item[], at: number): boolean =>
  items.slice(Math.max(0, at - 4), at).some((item) => isNamed(item, 'link', 'toPlace', 'atPlace')) &&
  items[at - 1]?.is !== 'fact';

/** A town after `ship to`, or one written large after `I'm in`: spoken of, but it says no state. */
function isTown(items: readonly Item[], at: number, said: string, known: ReadonlySet<string>): boolean {
  const [item, before] = [items[at], items[at - 1]];
  if (item?.is !== 'word' || item.stem.length < SHORTEST_TOWN || known.has(item.stem)) return false;
  if (isNamed(before, 'toPlace')) return said.slice(before?.from, before?.to).toLowerCase().endsWith('to');
  return isNamed(before, 'atPlace') && /^\p{Lu}\p{Ll}/u.test(said.slice(item.from, item.to));
}
const SHORTEST_TOWN = 4;

const isEnd = (item: Item | undefined): boolean =>
  isNamed(item, 'but', 'because') || (item?.is === 'mark' && ['stop', 'question', 'line'].includes(item.mark));
