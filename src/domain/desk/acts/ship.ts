import { settlingWith, written } from '../account.ts';
import { benchTap } from '../benchButtons.ts';
import { wordButton } from '../draftButtons.ts';
import type { CardButton } from '../card.ts';
import { putBy } from '../extras.ts';
import { anyOrder } from '../finished.ts';
import { NOBODY } from '../forgotten.ts';
import { offBench } from '../offBench.ts';
import { payHereRows } from './payHere.ts';
import type { Order } from '../order.ts';
import { orderButton } from '../orderButtons.ts';
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

/** A button that says with one tap that the parcel is handed in; its tracking number may follow. */
export const handedInButton = (order: string): CardButton => ({
  label: { code: 'handed-in', order },
  tap: benchTap('untracked', order),
});

export const trackingButton = (order: string): CardButton => wordButton('add-tracking', benchTap('tracking', order));

/** The next thing the maker types is the tracking number of a parcel that has gone. */
export function tracking(turn: Turn, { on }: Tap): Decision {
  if (anyOrder(turn, on)?.state !== 'shipped') return { ...nothing(turn.desk), toast: 'stale' };
  return says(
    withPerson(turn.desk, { ...turn.by, asked: { for: 'tracking', order: on } }),
    card(turn.by.id, { code: 'ask-tracking-after', order: on }),
  );
}

/** A tracking number, of a parcel that goes with it or of one that has gone already; its buyer hears it. */
export function tracked(turn: Turn, id: string, number: string): Decision {
  const { desk, by } = turn;
  const open = desk.orders[id];
  if (open?.state === 'packed') return shipped(turn, id, number);
  if (open !== undefined) return notPacked(turn, id);
  const free = withPerson(desk, { ...by, asked: null });
  const order = anyOrder(turn, id);
  if (order?.state !== 'shipped') return says(free, card(by.id, { code: 'no-such-order', said: id }));
  const known: Order = { ...order, tracking: number };
  const settling = desk.settling[id] === undefined ? desk.settling : { ...desk.settling, [id]: known };
  const told = card(order.buyer, { code: 'tracking', order: id, tracking: number }, { kind: 'confirmation' });
  return {
    desk: { ...free, settling },
    cards: [card(by.id, { code: 'tracking-kept', order: id }), ...(order.buyer === NOBODY ? [] : [told])],
    toast: 'done',
    closed: [known],
  };
}

/** What is still to be made has no parcel yet. */
const notPacked = ({ desk, by }: Turn, id: string): Decision =>
  says(
    withPerson(desk, { ...by, asked: null }),
    card(by.id, { code: 'not-packed', order: id }, { rows: [[orderButton(id)]] }),
  );

/** `tracking K-1001 LX 1234`; without a number it is asked for. */
export function trackingSaid(turn: Turn, rest: string): Decision {
  const [, digits = '', number = ''] = /^k[\s-]?(\d{3,7})\s*(.*)$/is.exec(rest) ?? [];
  const id = `K-${digits}`;
  if (number !== '') return tracked(turn, id, number.slice(0, TRACKING_MOST));
  const open = turn.desk.orders[id];
  if (open === undefined) return tracking(turn, benchTap('tracking', id));
  return open.state === 'packed' ? posted(turn, benchTap('posted', id)) : notPacked(turn, id);
}

/** Longest tracking number that is kept, in characters. */
export const TRACKING_MOST = 60;

/** The order leaves the bench for the archive; its buyer hears. */
export function shipped(turn: Turn, id: string, tracking: string | null): Decision {
  const { world, desk, by, now } = turn;
  const order = desk.orders[id];
  const free = withPerson(desk, { ...by, asked: null });
  if (order?.state !== 'packed') return { ...nothing(free), toast: 'already' };
  const lots = Object.values(desk.lots).filter((lot) => lot.order === id);
  const gone: Order = {
    ...written(world.shop, lots, order),
    state: 'shipped',
    packedAt: order.packedAt ?? now,
    shippedAt: now,
    tracking,
  };
  return {
    desk: {
      ...offBench(free, id),
      orders: without(desk.orders, id),
      settling: settlingWith(desk, gone),
      // Nothing is over of a lot that was packed by this book's rules; what an older book left in it goes on the shelf now.
      shelf: lots.reduce((shelf, { spec, good, heads }) => putBy(shelf, spec, Math.max(0, good - heads)), desk.shelf),
      warned: desk.warned.filter((key) => !key.startsWith(`${id}@`)),
    },
    cards: [
      card(
        by.id,
        { code: 'posted', order: id },
        { rows: [...(tracking === null ? [[trackingButton(id)]] : []), [wordButton('bench', benchTap('bench'))]] },
      ),
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
