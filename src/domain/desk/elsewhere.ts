import { shareOf } from '../craft/money.ts';
import type { Day } from '../craft/time.ts';
import { checkLaw } from '../law/check.ts';
import type { Place } from '../law/place.ts';
import { placeInAddress } from '../order/address.ts';
import { soldFor } from '../quote/cost.ts';
import { covers, postageFor } from '../quote/postage.ts';
import { taxRateAt } from '../quote/quote.ts';
import type { Order } from './order.ts';
import type { Trade } from './quoting.ts';

/** The place that an order's address names, where that is another than its price is for. */
export function elsewhere({ address, shipTo }: Pick<Order, 'address' | 'shipTo'>): Place | undefined {
  const place = address === null ? undefined : placeInAddress(address);
  return place === undefined || covers(shipTo, place) || covers(place, shipTo) ? undefined : place;
}

/** The order as it would be for another place: postage and sales tax of there, all else as agreed. Undefined where that is for the maker
 *  to say: nothing is sent there, a rule on lead stands against it, it is packed, or its price was changed with the tax of before. */
export function movedTo({ shop, law }: Trade, order: Order, place: Place, today: Day): Order | undefined {
  const { lines, money, ledger, state } = order;
  const postage = postageFor(shop, lines, place);
  const isBarred = lines.some((line, at) =>
    checkLaw(shop, law, line, { at, place, day: today }).some(({ kind }) => kind !== 'note'),
  );
  const isOpen = state === 'accepted' || state === 'making';
  if (postage === undefined || isBarred || !isOpen || ledger.some(({ kind }) => kind === 'adjust')) return undefined;
  const sold = soldFor(money);
  const taxRate = taxRateAt(shop, place);
  const tax = shareOf(sold, taxRate);
  return { ...order, shipTo: place, money: { ...money, postage, tax, taxRate, total: sold + postage.cents + tax } };
}
