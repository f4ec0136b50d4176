import { bakeable, solidus } from '../craft/melting.ts';
import type { Shop } from '../shop/shop.ts';

/** Where a metal begins to melt, °C, if that is too near what the shop's oven bakes at; undefined when it may be baked. */
export function ovenRefuses(shop: Shop, metal: string): number | undefined {
  const composition = shop.metals.find(({ id }) => id === metal)?.composition;
  if (composition === undefined) return undefined;
  const melts = solidus(composition);
  return bakeable(melts, shop.oven.celsius, shop.oven) ? undefined : melts;
}
