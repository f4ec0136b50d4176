import { isNamed } from './quantities.ts';
import type { Item } from './span.ts';

/** The place the parcel goes to, null when it was named but is no state or country that can be written down. */
export type Destination = Readonly<{ code: string | null; from: number; to: number }>;

/** Where the parcel goes, or else where the buyer is; never where they fish. */
export function shippedTo(items: readonly Item[], isAsked: boolean): Destination | undefined {
  const places = items.flatMap((item, at) =>
    item.is === 'place'
      ? [{ code: item.code, from: item.from, to: item.to, weight: weightOf(items, at, isAsked) }]
      : [],
  );
  const coded = places.filter(({ code, weight }) => code !== null && weight > 0);
  const known = coded.length > 0 ? coded : places;
  const best = Math.max(...known.map(({ weight }) => weight), 0);
  const found = known.filter(({ weight }) => weight === best).at(-1);
  return best === 0 || !found ? undefined : { code: found.code, from: found.from, to: found.to };
}

/** Three where it is sent, two where the buyer is, one where nothing else is said, none where they fish. */
function weightOf(items: readonly Item[], at: number, isAsked: boolean): number {
  if (isNamed(items[at + 1] as never, 'water') || isNamed(items[at - 1] as never, 'water')) return 0;
  for (let place = at - 1; place >= 0 && !isEnd(items[place]); place -= 1) {
    const item = items[place] as never;
    if (isNamed(item, 'toPlace')) return 3;
    if (isNamed(item, 'atPlace')) return 2;
    if (isNamed(item, 'notPlace', 'past', 'veto')) return 0;
  }
  return isAsked || isBare(items, at) ? 1 : 0;
}

const isBare = (items: readonly Item[], at: number): boolean => {
  const start = items.slice(0, at).findLastIndex(isEnd) + 1;
  const end = items.findIndex((item, place) => place > at && isEnd(item));
  const rest = items.slice(start, end === -1 ? items.length : end);
  return rest.filter(({ is }) => is === 'word').length <= 1;
};

const isEnd = (item: Item | undefined): boolean =>
  isNamed(item as never, 'but', 'because') || (item?.is === 'mark' && ['stop', 'question', 'line'].includes(item.mark));
