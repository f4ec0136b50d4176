import { settlingWith, written } from '../account.ts';
import { benchTap } from '../benchButtons.ts';
import { wordButton } from '../draftButtons.ts';
import { putBy } from '../extras.ts';
import { payHereRows } from './payHere.ts';
import type { Order } from '../order.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, without, withPerson, type Decision, type Turn } from '../turn.ts';

/** The parcel is handed in; asks for its tracking number, which may be left out. */
export function posted(turn: Turn, tap: Tap): Decision {
  const { desk, by } = turn;
  const order = desk.orders[tap.on];
  if (order?.state !== 'packed') return { ...nothing(desk), toast: 'already' };
  const rows = [[wordButton('no-tracking', benchTap('untracked', order.id))]];
  return says(
    withPerson(desk, { ...by, asked: { for: 'tracking', order: order.id } }),
    card(by.id, { code: 'ask-tracking', order: order.id }, { rows }),
  );
}

export const untracked = (turn: Turn, tap: Tap): Decision => shipped(turn, tap.on, null);

/** The order leaves the bench for the archive; its buyer hears. */
export function shipped(turn: Turn, id: string, tracking: string | null): Decision {
  const { world, desk, by, now } = turn;
  const order = desk.orders[id];
  const free = withPerson(desk, { ...by, asked: null });
  if (order?.state !== 'packed') return { ...nothing(free), toast: 'already' };
  const gone: Order = {
    ...written(world.shop, desk, order),
    state: 'shipped',
    packedAt: order.packedAt ?? now,
    shippedAt: now,
    tracking,
  };
  const lots = Object.values(desk.lots).filter((lot) => lot.order === id);
  return {
    desk: {
      ...free,
      orders: without(desk.orders, id),
      settling: settlingWith(desk, gone),
      lots: Object.fromEntries(Object.entries(desk.lots).filter(([, lot]) => lot.order !== id)),
      // Nothing is over of a lot that was packed by this book's rules; what an older book left in it goes on the shelf now.
      shelf: lots.reduce((shelf, { spec, good, heads }) => putBy(shelf, spec, Math.max(0, good - heads)), desk.shelf),
      warned: desk.warned.filter((key) => !key.startsWith(`${id}@`)),
    },
    cards: [
      card(by.id, { code: 'posted', order: id }, { rows: [[wordButton('bench', benchTap('bench'))]] }),
      card(
        order.buyer,
        { code: 'shipped', order: id, tracking },
        { kind: 'confirmation', key: `shipped/${id}`, rows: payHereRows(world, gone) },
      ),
    ],
    toast: 'done',
    closed: [gone],
  };
}
