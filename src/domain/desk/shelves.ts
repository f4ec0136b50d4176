import { localDay, type Instant } from '../craft/time.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import { addAmounts, type Amounts } from '../stock/needs.ts';
import type { Shelf } from '../stock/availability.ts';
import type { Desk } from './state.ts';

/** What is in stock now, as the check and the quote ask for it. The book's count wins over the shop file's opening count. */
export const shelfOf = (shop: Shop, desk: Desk, now: Instant): Shelf => ({
  onHand: onHandOf(shop, desk),
  reserved: addAmounts(Object.values(desk.lots).map(({ reserved }) => reserved)),
  arrived: desk.arrived,
  ordered: desk.ordered,
  today: localDay(now, shop.zone),
});

/** Counts by item: the book's where it has one, else the shop file's opening count. */
export const onHandOf = (shop: Shop, desk: Pick<Desk, 'onHand'>): Amounts => ({
  ...Object.fromEntries(shop.stock.map(({ item, onHand }) => [item, onHand])),
  ...desk.onHand,
});

/** The desk with an item counted anew. Where the last act at the bench used the item, what there was before it is written down, so that taking it back loses no delivery. */
export function withCount(shop: Shop, desk: Desk, item: ItemId, count: number): Desk {
  const undo = desk.undo && {
    ...desk.undo,
    onHand: { [item]: onHandOf(shop, desk.undo)[item] ?? 0, ...desk.undo.onHand },
  };
  return { ...desk, onHand: { ...desk.onHand, [item]: count }, undo };
}
