import { localDay, type Day } from '../../craft/time.ts';
import { quarterOf, worksheetFor } from '../../quote/excise.ts';
import { BOOKS, bookOf } from '../books.ts';
import { allOrders } from '../finished.ts';
import { monthOf, soldBy } from '../month.ts';
import { monthDays, monthIn, periodIn, quarterIn } from '../periods.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';

/** How the month goes, this one or the one named: `month 2026-11`. */
export function month(turn: Turn, rest: string): Decision {
  const { world, desk, by, around } = turn;
  const named = rest === '' ? todayOf(turn).slice(0, 7) : monthIn(rest);
  if (named === undefined) return noSuchPeriod(turn, 'month', rest);
  const facts = monthOf(world.shop, allOrders(desk, around.archived), named);
  return says(desk, card(by.id, { code: 'month', facts }, { picture: facts.shipped === 0 ? null : facts }));
}

/** The worksheet of a quarter for the federal excise tax: `tax 2026-Q4`, or the quarter that runs. */
export function tax(turn: Turn, rest: string): Decision {
  const { world, desk, by, around } = turn;
  const { shop } = world;
  if (shop.excise === null) return says(desk, card(by.id, { code: 'no-excise' }));
  const quarter = rest === '' ? quarterOf(todayOf(turn)) : quarterIn(rest);
  if (quarter === undefined) return noSuchPeriod(turn, 'tax', rest);
  const sales = allOrders(desk, around.archived)
    .filter(({ state, shippedAt }) => state === 'shipped' && shippedAt !== null)
    .map((order) => ({ order: order.id, day: localDay(order.shippedAt ?? 0, shop.zone), cents: soldBy(order) }));
  return says(desk, card(by.id, { code: 'excise', sheet: worksheetFor(sales, quarter, shop.excise.share) }));
}

/** The books of a month, a quarter, a year or between two days, as one file a table: `books 2026-11`, `books 2026-10-01 2026-12-31`. */
export function books(turn: Turn, rest: string): Decision {
  const { world, desk, by, around } = turn;
  const period = rest === '' ? monthDays(todayOf(turn).slice(0, 7)) : periodIn(rest);
  if (period === undefined) return noSuchPeriod(turn, 'books', rest);
  const orders = allOrders(desk, around.archived);
  const cards = BOOKS.map((kind) => {
    const { text, rows } = bookOf(kind, world.shop, orders, period);
    const document = { name: `${kind}-${period.from}-${period.to}.csv`, text };
    return card(by.id, { code: 'books', kind, ...period, rows }, { document });
  });
  return { ...nothing(desk), cards };
}

/** A period that the calendar does not have is said to be none, with examples of some that it has. */
const noSuchPeriod = (turn: Turn, word: 'month' | 'tax' | 'books', said: string): Decision =>
  says(turn.desk, card(turn.by.id, { code: 'no-such-period', word, said: said.slice(0, 60), today: todayOf(turn) }));

const todayOf = ({ world, now }: Turn): Day => localDay(now, world.shop.zone);
