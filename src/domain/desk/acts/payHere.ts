import type { Cents } from '../../craft/money.ts';
import { depositOf, received } from '../../quote/payment.ts';
import { accountOf, orderWithAccount, withAccount } from '../account.ts';
import { begunTold } from '../begunTold.ts';
import type { CardButton } from '../card.ts';
import type { CheckoutAsked, PaidHere } from '../command.ts';
import type { Order } from '../order.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, type Decision, type Turn, type World } from '../turn.ts';
import { payButton } from '../payButtons.ts';

/** Payment inside the chat: an invoice to tap, one more question before any money moves, and the word that it has. */

/** What can be paid at once: all that is due, or the deposit while that is still to come. */
export const PAY_WHATS = ['whole', 'deposit'] as const;
export type PayWhat = (typeof PAY_WHATS)[number];

/** Buttons that pay an order in the chat; none where the shop cannot, or where nothing is due. */
export function payHereRows(world: World, order: Order): readonly (readonly CardButton[])[] {
  if (world.pays !== 'in-chat') return [];
  return PAY_WHATS.flatMap((what) => {
    const cents = askedFor(world, order)[what];
    const tap: Tap = { act: 'invoice', on: order.id, version: 0, arg: what };
    return cents === 0 ? [] : [[{ label: { code: 'pay-here', what, cents }, tap }]];
  });
}

/** Sends the invoice for the sender's own order. */
export function invoice(turn: Turn, { on, arg }: Tap): Decision {
  const { world, desk, by } = turn;
  const order = orderWithAccount(desk, on);
  const what = PAY_WHATS.find((one) => one === arg);
  if (order?.buyer !== by.id || what === undefined) return { ...nothing(desk), toast: 'not-yours' };
  const cents = askedFor(world, order)[what];
  if (world.pays !== 'in-chat' || cents === 0) return { ...nothing(desk), toast: 'already' };
  return says(desk, card(by.id, { code: 'invoice', order, what, cents }));
}

/** Whether a payment may go through: for the payer's own order, and for just what is due of it now. Changes nothing. */
export function checkout(turn: Turn, { reason, cents, currency }: CheckoutAsked): Decision {
  const { world, desk, by } = turn;
  const [id = '', arg = ''] = reason.split('=');
  const order = orderWithAccount(desk, id);
  const what = PAY_WHATS.find((one) => one === arg);
  const isDue = order?.buyer === by.id && what !== undefined && askedFor(world, order)[what] === cents;
  return { ...nothing(desk), toast: isDue && currency === world.shop.currency ? null : 'not-payable' };
}

/** Enters money that has come, once a charge. What cannot be entered, for its order is closed, the makers hear of, for it has come all the same. */
export function paidHere(turn: Turn, { reason, cents, currency, charge }: PaidHere): Decision {
  const { world, desk, by, now } = turn;
  const [id = ''] = reason.split('=');
  const order = orderWithAccount(desk, id);
  if (order === undefined || currency !== world.shop.currency) {
    const say = { code: 'payment-astray', order: id, buyer: by.name, cents, currency, charge } as const;
    return says(desk, ...toMakers(world, say, { key: `astray/${charge}` }));
  }
  const ledger = received(order.ledger, { at: now, kind: 'paid', cents, why: '', charge });
  if (ledger === order.ledger) return nothing(desk);
  const next: Order = { ...order, ledger: [...ledger] };
  const { desk: after, settled, begins } = withAccount(world.shop, desk, next, now);
  const balance = accountOf(next);
  const say = { code: 'paid-here', order: id, buyer: by.name, cents, balance, begins } as const;
  return {
    ...nothing(after),
    cards: [
      card(by.id, { code: 'payment-in', order: id, cents, due: balance.due }, { kind: 'confirmation' }),
      ...(begins ? begunTold(after, id) : []),
      ...toMakers(world, say, { key: `paid/${charge}`, rows: [[payButton(id)]] }),
    ],
    closed: settled,
  };
}

/** What a buyer may pay now. A deposit that is all there is to pay is no deposit. */
function askedFor({ shop }: World, order: Order): Readonly<Record<PayWhat, Cents>> {
  const account = accountOf(order);
  const deposit = Math.max(0, depositOf(shop, account) - account.kept);
  return { whole: account.due, deposit: deposit < account.due ? deposit : 0 };
}
