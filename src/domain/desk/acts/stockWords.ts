import { calendarDay, localDay, type Day } from '../../craft/time.ts';
import type { ItemId, Shop } from '../../shop/shop.ts';
import { deliveriesOf, deliveryKey, freeOf, ifOrdered } from '../../stock/availability.ts';
import { toBuy, WEEKS_LEAST, type Purchase } from '../../stock/buy.ts';
import { lessArrived, withOrdered } from '../../stock/ordered.ts';
import { weeksOf } from '../../stock/usage.ts';
import { STOCK_VERBS, stockBegun, stockSaid, type StockVerb } from '../../stock/said.ts';
import { benchTap } from '../benchButtons.ts';
import type { CardButton } from '../card.ts';
import { onHandOf, shelfOf, withCount } from '../shelves.ts';
import type { Desk } from '../state.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';
import { draftOf } from './draft.ts';

/** A change of one item, ready to be made. */
type Change = Readonly<{ verb: StockVerb; item: ItemId; count: number; day: Day | null }>;

/** The stock changed as the maker said it. Words that fit several items ask which; undefined for words that are not about the stock. */
export function stockTold(turn: Turn, _rest: string, text: string): Decision | undefined {
  const { world, desk, by, now } = turn;
  const told = stockSaid(world.shop, text, localDay(now, world.shop.zone));
  if (told === undefined) return undefined;
  const [item, ...others] = told.items;
  // In the middle of an order of their own, or of an answer, what names nothing on the shelf is not about it.
  if (item === undefined && (draftOf(turn) !== undefined || by.asked !== null)) return undefined;
  if (item === undefined) return says(desk, card(by.id, { code: 'stock-unknown', named: told.named }));
  if (!Number.isInteger(told.count)) return says(desk, card(by.id, { code: 'whole-pieces', item }));
  if (others.length === 0) return changed(turn, { ...told, item });
  const rows = told.items.flatMap((one) => stockIsButton(turn, { ...told, item: one })).map((button) => [button]);
  return says(desk, card(by.id, { code: 'which-stock', ...told }, { rows }));
}

/** Asks for the count and the item after a verb alone, or for the count of an item, with an example from the shop's own stock. */
export function stockAsked({ world: { shop }, desk, by }: Turn, _rest: string, text: string): Decision | undefined {
  const begun = stockBegun(shop, text);
  if (begun === undefined || by.asked !== null) return undefined;
  const row =
    shop.stock.find(({ item }) => item === begun.item) ?? shop.stock.find(({ item }) => item.startsWith('hook:'));
  const { item, packOf } = row ?? shop.stock[0] ?? { item: '', packOf: 1 };
  return says(desk, card(by.id, { code: 'how-much-stock', verb: begun.verb, item, count: packOf ?? EXAMPLE }));
}

/** A count for an example, of an item that does not come in packs. */
const EXAMPLE = 100;

/** What a button can carry. */
const ARG_MOST = 48;

/** A button that says which item was meant. It carries what was there when it was drawn, so that a second press changes nothing. */
function stockIsButton(turn: Turn, { verb, item, count, day }: Change): readonly CardButton[] {
  const arg = [STOCK_VERBS.indexOf(verb), count, item, seen(turn, verb, item), ...(day === null ? [] : [day])].join(
    '=',
  );
  return arg.length > ARG_MOST ? [] : [{ label: { code: 'stock-is', item }, tap: benchTap('stock-is', '-', arg) }];
}

/** The item chosen for words that fitted several. */
export function stockIs(turn: Turn, { arg }: Tap): Decision {
  const [verbAt = '', count = '', item = '', before = '', day = null] = arg.split('=');
  const verb = STOCK_VERBS[Number(verbAt)];
  if (
    verb === undefined ||
    !turn.world.shop.stock.some((row) => row.item === item) ||
    !/^\d{1,9}$/.test(count) ||
    (day !== null && calendarDay(day) === undefined)
  )
    return { ...nothing(turn.desk), toast: 'stale' };
  if (Number(before) !== seen(turn, verb, item)) return { ...nothing(turn.desk), toast: 'already' };
  return { ...changed(turn, { verb, item, count: Number(count), day }), toast: 'done' };
}

/** What a change of this kind would alter: what comes, or what lies there. */
const seen = ({ world, desk, now }: Turn, verb: StockVerb, item: ItemId): number =>
  verb === 'ordered' ? comingOf(world.shop, desk, now, item) : (onHandOf(world.shop, desk)[item] ?? 0);

const comingOf = (shop: Shop, desk: Desk, now: number, item: ItemId): number =>
  deliveriesOf(shop, shelfOf(shop, desk, now), item).reduce((sum, { count }) => sum + count, 0);

function changed(turn: Turn, { verb, item, count, day }: Change): Decision {
  const { world, desk, by, now } = turn;
  const { shop } = world;
  if (verb === 'ordered') return ordered(turn, item, count, day);
  const there = onHandOf(shop, desk)[item] ?? 0;
  if (verb === 'lost' && count > there)
    return says(desk, card(by.id, { code: 'not-so-many', item, count, onHand: there }));
  const next = { got: there + count, found: there + count, lost: there - count, count }[verb];
  const counted = withCount(shop, verb === 'got' ? delivered(shop, desk, now, item, count) : desk, item, next);
  const short = Math.max(0, -freeOf(shelfOf(shop, counted, now), item));
  const say = { code: 'stock-changed', verb, item, count, onHand: next, day: null, short } as const;
  return says(counted, card(by.id, say, { rows: [[buyButton()]] }));
}

/** A delivery on its way. Without a day it is expected after the item's usual lead time. */
function ordered({ world, desk, by, now }: Turn, item: ItemId, count: number, said: Day | null): Decision {
  const { shop } = world;
  const day = said ?? ifOrdered(shop, item, localDay(now, shop.zone));
  if (count <= 0) return says(desk, card(by.id, { code: 'stock-unknown', named: item }));
  const next = { ...desk, ordered: [...withOrdered(desk.ordered, { item, day, count })] };
  const short = Math.max(0, -freeOf(shelfOf(shop, next, now), item));
  const onHand = onHandOf(shop, next)[item] ?? 0;
  return says(next, card(by.id, { code: 'stock-changed', verb: 'ordered', item, count, onHand, day, short }));
}

/** What came is no longer on its way: deliveries ordered from chat first, then those of the shop file that came whole. */
function delivered(shop: Shop, desk: Desk, now: number, item: ItemId, count: number): Desk {
  const fromChat = desk.ordered.filter((one) => one.item === item).reduce((sum, one) => sum + one.count, 0);
  const left = { ...desk, ordered: [...lessArrived(desk.ordered, item, count)] };
  let rest = count - fromChat;
  const arrived = deliveriesOf(shop, { ...shelfOf(shop, desk, now), ordered: [] }, item).flatMap((one) => {
    rest -= one.count;
    return rest >= 0 ? [deliveryKey(item, one.named)] : [];
  });
  return { ...left, arrived: [...left.arrived, ...arrived] };
}

const buyButton = (): CardButton => ({ label: { code: 'word', word: 'buy' }, tap: benchTap('buy') });

/** Buttons of this many items; the rest come up as these are ordered. */
const BUTTONS = 8;

/** What to buy, by supplier, what accepted orders wait for first; one tap marks an item ordered. */
export function buy({ world, desk, by, now }: Turn): Decision {
  const baskets = toBuy(world.shop, shelfOf(world.shop, desk, now), desk);
  const weeks = weeksOf(desk.usage, desk.began, localDay(now, world.shop.zone));
  const rows = baskets
    .flatMap(({ items }) => items)
    .sort((a, b) => Number(b.needed > 0) - Number(a.needed > 0))
    .slice(0, BUTTONS)
    .map((purchase) => [orderedButton(purchase)]);
  return says(desk, card(by.id, { code: 'to-buy', baskets, untilKnown: Math.max(0, WEEKS_LEAST - weeks) }, { rows }));
}

const orderedButton = ({ item, count, coming, overdue }: Purchase): CardButton => ({
  label: { code: 'bought', item, count },
  tap: benchTap('bought', '-', `${count}=${overdue.reduce((sum, one) => sum + one.count, coming)}=${item}`),
});

/** An item of the buying list is ordered; its delivery is expected from now on. A second press finds it on its way. */
export function bought(turn: Turn, { arg }: Tap): Decision {
  const [count = '', coming = '', item = ''] = arg.split('=');
  const { world, desk, now } = turn;
  if (!world.shop.stock.some((row) => row.item === item) || !/^\d{1,9}$/.test(count))
    return { ...nothing(desk), toast: 'stale' };
  if (Number(coming) !== comingOf(world.shop, desk, now, item)) return { ...nothing(desk), toast: 'already' };
  return { ...ordered(turn, item, Number(count), null), toast: 'done' };
}

/** Changes that are shown at a time. */
const JOURNAL_SHOWN = 20;

/** The last changes of the stock: who, when, why. */
export const journal = ({ desk, by }: Turn): Decision =>
  says(
    desk,
    card(by.id, {
      code: 'journal',
      rows: desk.journal
        .slice(-JOURNAL_SHOWN)
        .reverse()
        .map((row) => ({ ...row, who: row.by === null ? null : (desk.people[row.by]?.name ?? String(row.by)) })),
    }),
  );
