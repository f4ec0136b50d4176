import { localDay } from '../../craft/time.ts';
import { accountOf, withAccount } from '../account.ts';
import { begunTold } from '../begunTold.ts';
import type { CardButton } from '../card.ts';
import { wordButton } from '../draftButtons.ts';
import { elsewhere, movedTo } from '../elsewhere.ts';
import type { Order } from '../order.ts';
import { onOrder } from '../orderButtons.ts';
import { payButton } from '../payButtons.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, withPerson, type Decision, type Turn } from '../turn.ts';
import { own } from './orders.ts';
import { payHereRows } from './payHere.ts';

/** What answers an address: it is kept, or, where it is in another place than the price is for, what the order costs to there. */
export function addressCard(turn: Turn, order: Order): Decision['cards'][number] {
  const { by } = turn;
  const again: readonly CardButton[] = [onOrder('readdress', 'readdress', order.id)];
  const place = elsewhere(order);
  if (place === undefined) return card(by.id, { code: 'address-kept', order }, { kind: 'confirmation', rows: [again] });
  const moved = move(turn, order);
  const yes: readonly CardButton[] =
    moved === undefined
      ? [wordButton('ask-maker', { act: 'ask-maker', on: order.id, version: 0, arg: '-' })]
      : [
          {
            label: { code: 'reship', place, cents: accountOf(moved).asked },
            tap: { act: 'reship', on: order.id, version: 0, arg: `${place}=${accountOf(moved).asked}` },
          },
        ];
  const say = { code: 'address-elsewhere', order, place, moved: moved ?? null } as const;
  return card(by.id, say, { kind: 'confirmation', rows: [yes, again] });
}

const move = ({ world, now }: Turn, order: Order): Order | undefined => {
  const place = elsewhere(order);
  return place === undefined ? undefined : movedTo(world, order, place, localDay(now, world.shop.zone));
};

/** The buyer's yes: postage and tax of the place that the address names, as they were told. */
export const reship = (turn: Turn, { on, arg, ...tap }: Tap): Decision =>
  own(turn, { ...tap, on, arg }, (order) => {
    const { world, desk, by, now } = turn;
    const moved = move(turn, order);
    if (moved === undefined) return { ...nothing(desk), toast: 'already' };
    if (arg !== `${moved.shipTo}=${accountOf(moved).asked}`)
      return { ...says(desk, addressCard(turn, order)), toast: 'stale' };
    const known = withPerson(desk, { ...by, place: moved.shipTo });
    const { desk: after, begins } = withAccount(world.shop, known, moved, now);
    const balance = accountOf(moved);
    const told = card(
      by.id,
      { code: 'reshipped', order: moved, balance },
      { kind: 'confirmation', rows: payHereRows(world, moved) },
    );
    const say = { code: 'order-moved', order: moved, buyer: by.name, balance } as const;
    const begun = begins ? begunTold(after, order.id) : [];
    return {
      ...says(after, told, ...begun, ...toMakers(world, say, { rows: [[payButton(order.id)]] })),
      toast: 'done',
    };
  });
