import { addDays, localDay, type Day } from '../../craft/time.ts';
import { quarterDays, quarterOf, worksheetFor, type Quarter } from '../../quote/excise.ts';
import { BOOKS, bookOf, type Period } from '../books.ts';
import { allOrders } from '../finished.ts';
import { monthOf, soldBy } from '../month.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';

/** How the month goes, this one or the one named: `month 2026-11`. */
export function month(turn: Turn, rest: string): Decision {
  const { world, desk, by, around } = turn;
  const named = /^\d{4}-(?:0[1-9]|1[0-2])$/.exec(rest)?.[0] ?? todayOf(turn).slice(0, 7);
  const facts = monthOf(world.shop, allOrders(desk, around.archived), named);
  return says(desk, card(by.id, { code: 'month', facts }, { picture: facts.shipped === 0 ? null : facts }));
}

/** The worksheet of a quarter for the federal excise tax: `tax 2026-Q4`, or the quarter that runs. */
export function tax(turn: Turn, rest: string): Decision {
  const { world, desk, by, around } = turn;
  const { shop } = world;
  if (shop.excise === null) return says(desk, card(by.id, { code: 'no-excise' }));
  const quarter: Quarter = /^\d{4}-q[1-4]$/i.exec(rest)?.[0].toUpperCase() ?? quarterOf(todayOf(turn));
  const sales = allOrders(desk, around.archived)
    .filter(({ state, shippedAt }) => state === 'shipped' && shippedAt !== null)
    .map((order) => ({ order: order.id, day: localDay(order.shippedAt ?? 0, shop.zone), cents: soldBy(order) }));
  return says(desk, card(by.id, { code: 'excise', sheet: worksheetFor(sales, quarter, shop.excise.share) }));
}

/** The books of a month, a quarter, a year or between two days, as one file a table: `books 2026-11`, `books 2026-10-01 2026-12-31`. */
export function books(turn: Turn, rest: string): Decision {
  const { world, desk, by, around } = turn;
  const period = periodIn(rest) ?? monthDays(todayOf(turn).slice(0, 7));
  const orders = allOrders(desk, around.archived);
  const cards = BOOKS.map((kind) => {
    const { text, rows } = bookOf(kind, world.shop, orders, period);
    const document = { name: `${kind}-${period.from}-${period.to}.csv`, text };
    return card(by.id, { code: 'books', kind, ...period, rows }, { document });
  });
  return { ...nothing(desk), cards };
}

const todayOf = ({ world, now }: Turn): Day => localDay(now, world.shop.zone);

/** A period as it is written: a year, a quarter, a month, a day, or two days. */
function periodIn(text: string): Period | undefined {
  const [from = '', to = ''] = text.trim().split(/\s+(?:to\s+|-\s+|a\s+)?/i);
  if (/^\d{4}-q[1-4]$/i.test(from)) return quarterDays(from.toUpperCase());
  if (/^\d{4}-(0[1-9]|1[0-2])$/.test(from)) return monthDays(from);
  if (/^\d{4}$/.test(from)) return { from: `${from}-01-01`, to: `${from}-12-31` };
  if (!DAY.test(from)) return undefined;
  return { from, to: DAY.test(to) && to >= from ? to : from };
}

const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

function monthDays(named: string): Period {
  const next = addDays(`${named}-28`, 4).slice(0, 7);
  return { from: `${named}-01`, to: addDays(`${next}-01`, -1) };
}
