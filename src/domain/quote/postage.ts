import type { Cents } from '../craft/money.ts';
import { massOf } from '../order/head.ts';
import type { Line } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';

/** What sending costs: the cheapest set of parcels when one would be too heavy. */
export type Postage = Readonly<{ region: string; grams: number; parcels: number; cents: Cents }>;

/** Postage of lines to a place (ISO 3166-2 or its country), by packed weight; undefined where the shop file names no price. */
export function postageFor(shop: Shop, lines: readonly Line[], place: string): Postage | undefined {
  const region = regionOf(shop, place);
  if (region === undefined) return undefined;
  const headGrams = lines.reduce((sum, { spec, quantity }) => sum + massOf(shop, spec).totalGrams * quantity, 0);
  const heaviest = Math.max(...region.bands.map(({ upToGrams }) => upToGrams));
  const parcels = Math.max(1, Math.ceil(headGrams / Math.max(1, heaviest - shop.postage.packagingGrams)));
  const grams = Math.ceil(headGrams + parcels * shop.postage.packagingGrams);
  const each = Math.ceil(grams / parcels);
  const band = region.bands.filter(({ upToGrams }) => each <= upToGrams).sort((a, b) => a.upToGrams - b.upToGrams)[0];
  return band && { region: region.id, grams, parcels, cents: parcels * band.cents };
}

/** The region of the shop's table that a place is in. */
export const regionOf = ({ postage }: Shop, place: string): Shop['postage']['regions'][number] | undefined =>
  postage.regions.find(({ places }) => places.some((named) => covers(named, place)));

/** Whether a named place takes in another: `US` covers `US-MN`. */
export const covers = (named: string, place: string): boolean => place === named || place.startsWith(`${named}-`);
