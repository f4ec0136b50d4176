import { usualSpec } from '../domain/order/choices.ts';
import type { Line } from '../domain/order/spec.ts';
import type { Shop } from '../domain/shop/shop.ts';
import { BARE, NONE } from '../domain/shop/words.ts';

/** A line that this shop can make, to show how one is said: the mold that takes the most fittings, with some on it. */
export function sampleLine(shop: Shop): Line | undefined {
  const mold = [...shop.molds].sort((a, b) => fittings(b) - fittings(a))[0];
  const paint = shop.paints.at(0)?.id ?? BARE;
  const guard = shop.guards.find(({ diameter }) => diameter === mold?.pin)?.id ?? NONE;
  const weight = mold?.cavities.at(mold.cavities.length > 1 ? 1 : 0)?.weight;
  const spec = usualSpec(shop, { style: mold?.style, weight, paint, guard });
  const quantity = Math.min(Math.max(24, shop.orders.least), shop.orders.most);
  return spec && { spec, quantity };
}

const fittings = ({ pin, dressing }: Shop['molds'][number]): number => Number(pin !== null) + Number(dressing);
