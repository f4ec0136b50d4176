import { centsIn, type Cents } from '../../craft/money.ts';
import { costOrder } from '../../quote/cost.ts';
import { depositOf, type Entry } from '../../quote/payment.ts';
import { entered, mostOff } from '../../quote/taxed.ts';
import { accountOf, unpaidOf, withAccount } from '../account.ts';
import { begunTold } from '../begunTold.ts';
import type { Card, CardButton } from '../card.ts';
import { anyOrder } from '../finished.ts';
import type { Order } from '../order.ts';
import { orderButton } from '../orderButtons.ts';
import { payButton, settleRow, settleTap } from '../payButtons.ts';
import type { Tap } from '../tap.ts';
import { receiptRows } from './papers.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';
import { adjustedBy } from '../month.ts';

/** `paid K-1001` settles an order whole, `paid K-1001 20` in part. */
export const paid = (turn: Turn, rest: string): Decision =>
  onAccount(turn, rest, 'paid', (order, said) =>
    enter(turn, order, 'paid', said === '' ? accountOf(order).due : amount(turn, said), ''),
  );

/** `refund K-1001 5 broken tails`: given back and not asked for again; without an amount, what is over, else all that was kept. */
export const refund = (turn: Turn, rest: string): Decision =>
  onAccount(turn, rest, 'refund', (order, said) => {
    const { over, kept } = accountOf(order);
    const [first = '', ...why] = said.split(/\s+/);
    return enter(turn, order, 'refund', said === '' ? over || kept : amount(turn, first), why.join(' '));
  });

/** `price K-1001 -5 thin paint`: the maker's own adjustment of what the heads cost, up or down, with its reason. Sales tax follows. */
export const reprice = (turn: Turn, rest: string): Decision =>
  onAccount(turn, rest, 'price', (order, said) => {
    const [first = '', ...why] = said.split(/\s+/);
    return enter(turn, order, 'adjust', amount(turn, first), why.join(' '));
  });

/** What an order costs to make and what it leaves over. */
export const cost = (turn: Turn, rest: string): Decision =>
  onAccount(turn, rest, 'cost', (order) => {
    const costs = costOrder(turn.world.shop, order.lines, order.money, adjustedBy(order));
    return says(turn.desk, card(turn.by.id, { code: 'cost', order, cost: costs }, { rows: [[orderButton(order.id)]] }));
  });

/** Everything that is owed, with a button for each order. */
export function unpaid({ world, desk, by, now }: Turn): Decision {
  const rows = unpaidOf(world.shop, desk, now);
  const buttons = rows.slice(0, UNPAID_BUTTONS).map(settleRow);
  return says(desk, card(by.id, { code: 'unpaid', rows }, { rows: buttons }));
}

const UNPAID_BUTTONS = 10;

/** Without an amount shows the account; `whole`, `deposit` and `back` enter what they say, at most once: the button carries what was kept. */
export function pay(turn: Turn, { on, arg }: Tap): Decision {
  const order = anyOrder(turn, on);
  if (order === undefined) return { ...nothing(turn.desk), toast: 'already' };
  const account = accountOf(order);
  if (arg === '-') return says(turn.desk, accountCard(turn, order));
  const [what = '', kept = '', told = ''] = arg.split('=');
  if (Number(kept) !== account.kept) return { ...says(turn.desk, accountCard(turn, order)), toast: 'already' };
  const deposit = Math.min(account.due, depositOf(turn.world.shop, account));
  const cents = { whole: account.due, deposit, back: account.over }[what] ?? 0;
  // The price was changed since the button was drawn.
  if (told !== '' && Number(told) !== cents) return { ...says(turn.desk, accountCard(turn, order)), toast: 'stale' };
  return { ...enter(turn, order, what === 'back' ? 'refund' : 'paid', cents, ''), toast: 'done' };
}

function accountCard({ world, by }: Turn, order: Order): Card {
  const balance = accountOf(order);
  const deposit = Math.max(0, depositOf(world.shop, balance) - balance.kept);
  const button = (what: 'whole' | 'deposit' | 'back', cents: Cents): readonly (readonly CardButton[])[] =>
    cents === 0
      ? []
      : [[{ label: { code: 'paid', what, cents }, tap: settleTap(order.id, what, balance.kept, cents) }]];
  const rows = [
    ...button('whole', balance.due),
    ...(deposit < balance.due ? button('deposit', deposit) : []),
    ...button('back', balance.over),
    [orderButton(order.id)],
  ];
  const charges = order.ledger.flatMap(({ charge }) => charge ?? []);
  return card(by.id, { code: 'pay', order: order.id, balance, deposit, charges }, { rows });
}

/** Enters money on an order's account; both sides hear. What cannot stand is said and changes nothing. */
function enter(turn: Turn, order: Order, kind: Entry['kind'], cents: Cents | undefined, why: string): Decision {
  const { world, desk, by, now } = turn;
  const done = entered(order.money, order.ledger, {
    at: now,
    kind,
    cents: cents ?? 0,
    why: why.slice(0, WHY_MOST),
  });
  if (!done.ok)
    return says(
      desk,
      card(by.id, {
        code: 'not-paid',
        order: order.id,
        why: done.why,
        balance: accountOf(order),
        mostOff: mostOff(order.money, order.ledger),
      }),
    );
  if (why === '' && wantsWhy(order, kind, cents ?? 0))
    return says(
      desk,
      card(by.id, { code: 'why-then', order: order.id, kind: kind === 'refund' ? 'refund' : 'adjust' }),
    );
  const next: Order = { ...order, ledger: [...done.ledger] };
  const { cents: moved, tax = 0 } = next.ledger[order.ledger.length] ?? { cents: 0 };
  const balance = accountOf(next);
  const { desk: after, settled, begins } = withAccount(world.shop, desk, next, now);
  const say = { code: 'paid', order: order.id, kind, cents: moved, tax, balance, begins } as const;
  return {
    ...nothing(after),
    cards: [
      card(by.id, say, { rows: [[payButton(order.id)]] }),
      ...toBuyer(turn, next, { kind, cents: moved, tax, why }),
      ...(begins ? begunTold(after, order.id) : []),
    ],
    closed: settled,
  };
}

const WHY_MOST = 200;

/** A higher price, and money given back that was owed, are not without a reason: the buyer is told it. */
const wantsWhy = (order: Order, kind: Entry['kind'], cents: Cents): boolean =>
  kind === 'refund' ? cents > accountOf(order).over : kind === 'adjust' && cents > 0;

/** What the buyer hears of it, unless they are the maker or are not known any more. */
function toBuyer(
  { desk, by, now }: Turn,
  order: Order,
  { kind, cents, tax, why }: Readonly<{ kind: Entry['kind']; cents: Cents; tax: Cents; why: string }>,
): readonly Card[] {
  if (order.buyer === by.id || desk.people[order.buyer] === undefined) return [];
  const { due, asked } = accountOf(order);
  const say = {
    paid: { code: 'payment-in', order: order.id, cents, due },
    refund: { code: 'refunded', order: order.id, cents, why },
    adjust: { code: 'price-changed', order: order.id, cents, tax, why, asked },
  } as const;
  const rows = kind === 'paid' ? receiptRows(order) : [];
  return [
    card(order.buyer, say[kind], {
      kind: 'confirmation',
      rows,
      key: `money/${order.id}/${order.ledger.length}/${now}`,
    }),
  ];
}

const amount = ({ world }: Turn, said: string): Cents | undefined => centsIn(said, world.shop.currency);

/** Runs an act on the order that words begin with, wherever it is by now; asks which when they name none. */
function onAccount(turn: Turn, rest: string, word: string, act: (order: Order, said: string) => Decision): Decision {
  const named = /^(?:k[\s-]?)?(\d{3,7})\b\s*(.*)$/is.exec(rest.trim());
  const order = named && anyOrder(turn, `K-${named[1]}`);
  if (named && !order) return says(turn.desk, card(turn.by.id, { code: 'no-such-order', said: `K-${named[1]}` }));
  return order
    ? act(order, (named?.[2] ?? '').trim())
    : says(turn.desk, card(turn.by.id, { code: 'which-order', word }));
}
