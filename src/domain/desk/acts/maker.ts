import { deliveriesOf, deliveryKey } from '../../stock/availability.ts';
import { orderedOn } from '../../stock/ordered.ts';
import { benchTap } from '../benchButtons.ts';
import { inRows, wordButton } from '../draftButtons.ts';
import type { CardButton } from '../card.ts';
import { comingOf } from '../coming.ts';
import { digestOf, stockFacts } from '../digest.ts';
import { shelvedOf } from '../extras.ts';
import { digestCard } from '../digestCard.ts';
import { onHandOf, shelfOf, withCount } from '../shelves.ts';
import { weekOf } from '../week.ts';
import type { Tap } from '../tap.ts';
import { timerFacts } from '../telling.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';
import { orderButton } from '../orderButtons.ts';
import { factsIn } from './orders.ts';

/** All open orders, soonest promise first. */
export function queue(turn: Turn): Decision {
  const { desk, by } = turn;
  const open = Object.values(desk.orders).sort((a, b) => a.promise.ships.localeCompare(b.promise.ships));
  const say = { code: 'queue', orders: open.map(factsIn(turn)) } as const;
  return says(
    desk,
    card(by.id, say, {
      rows: [
        ...inRows(
          open.map(({ id }) => orderButton(id)),
          3,
        ),
        [wordButton('week', benchTap('week'))],
      ],
    }),
  );
}

export function timers({ world, desk, by, now }: Turn): Decision {
  const running = Object.values(desk.timers).sort((a, b) => a.dueAt - b.dueAt);
  return says(
    desk,
    card(
      by.id,
      {
        code: 'timers',
        timers: running.map((timer) => timerFacts(world.shop, desk, timer, now)),
        coming: comingOf(world.shop, desk, now),
      },
      { rows: [[wordButton('bench', benchTap('bench'))]] },
    ),
  );
}

/** Stock as it stands, finished heads too, with a button for each delivery that is due. */
export function stock({ world, desk, by, now }: Turn): Decision {
  const shelf = shelfOf(world.shop, desk, now);
  const due = world.shop.stock
    .flatMap(({ item }) => deliveriesOf(world.shop, shelf, item))
    .map(({ item, named, count }): CardButton => ({
      label: { code: 'arrived', item, count },
      tap: benchTap('arrived', '-', `${item}@${named}`),
    }));
  const say = { code: 'stock', rows: stockFacts(world.shop, desk, now), shelf: shelvedOf(desk) } as const;
  return says(desk, card(by.id, say, { rows: due.map((button) => [button]) }));
}

/** A delivery put away: its count is on hand from now on. A second press finds it already there. */
export function arrived(turn: Turn, tap: Tap): Decision {
  const { world, desk, by } = turn;
  const [item = '', day = ''] = tap.arg.split('@');
  const shopRow = world.shop.stock.find((one) => one.item === item)?.restock.find((one) => one.day === day);
  const isThere = desk.arrived.includes(deliveryKey(item, day));
  const row = shopRow === undefined || isThere ? orderedOn(desk.ordered, item, day) : shopRow;
  if (row === undefined) return { ...nothing(desk), toast: 'already' };
  const onHand = (onHandOf(world.shop, desk)[item] ?? 0) + row.count;
  const counted = withCount(world.shop, desk, item, onHand);
  const putAway =
    row === shopRow
      ? { ...counted, arrived: [...desk.arrived, deliveryKey(item, day)] }
      : { ...counted, ordered: desk.ordered.filter((one) => one !== row) };
  return { ...says(putAway, card(by.id, { code: 'arrived', item, count: row.count, onHand })), toast: 'done' };
}

/** The digest when it is asked for, whatever the hour. */
export function digest({ world, desk, by, now, around }: Turn): Decision {
  const { say, rows } = digestCard(digestOf(world.shop, desk, now, around));
  return says(desk, card(by.id, say, { rows }));
}

/** The plan of the next seven days as a picture, and the same in words under it. */
export function week({ world, desk, by, now }: Turn): Decision {
  const facts = weekOf(world.shop, desk, now);
  const rows = [[wordButton('bench', benchTap('bench')), wordButton('queue', benchTap('queue'))]];
  return says(desk, card(by.id, { code: 'week', week: facts }, { rows, picture: facts }));
}
