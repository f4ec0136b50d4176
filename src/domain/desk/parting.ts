import { isMade, type Lot } from '../bench/lot.ts';
import type { Cents, Rate } from '../craft/money.ts';
import type { Instant } from '../craft/time.ts';
import { keepsFor, workDone } from '../quote/credit.ts';
import { closedFor, taxedBy } from '../quote/taxed.ts';
import { PROGRESSES, type WorkDone } from '../shop/business.ts';
import type { Shop } from '../shop/shop.ts';
import { accountOf, written } from './account.ts';
import type { Order } from './order.ts';
import type { Desk } from './state.ts';

/** What a cancelled order comes to: what the work in it keeps by the shop's rule, what goes back, and what is still to be paid. */
export type Parting = Readonly<{
  order: string;
  /** What is kept of the price of heads at each stage that the order has reached, least far first. */
  rule: readonly Readonly<{ stage: WorkDone; kept: Rate }>[];
  /** The shop's rule; or the buyer was told of a delay, and nothing is kept however far the work is; or less was told when they asked. */
  why: 'rule' | 'late' | 'told';
  keeps: Cents;
  paid: Cents;
  back: Cents;
  owed: Cents;
}>;

/** What it would come to now; no more is kept than the buyer was told of when they asked. */
export function partingOf(shop: Shop, desk: Desk, order: Order): Parting {
  const stages = stagesOf(desk, order);
  const { sold } = taxedBy(order.money, order.ledger);
  const byRule = keepsFor(shop, order.money, sold, stages);
  const told = order.cancelKeeps ?? byRule;
  const { asked, kept: paid } = accountOf(order);
  const why = order.slip !== null ? 'late' : told < byRule ? 'told' : 'rule';
  const keeps = why === 'late' ? 0 : Math.min(asked, byRule, told);
  return {
    order: order.id,
    rule: PROGRESSES.filter((stage) => stages.includes(stage)).map((stage) => ({
      stage,
      kept: 100_000 - shop.payment.credit[stage],
    })),
    why,
    keeps,
    paid,
    back: Math.max(0, paid - keeps),
    owed: Math.max(0, keeps - paid),
  };
}

/** How far each line is; heads off the shelf were made before, for somebody else. */
const stagesOf = (desk: Desk, { id, lines }: Order): readonly WorkDone[] =>
  lines.map(({ spec }) =>
    workDone(
      Object.values(desk.lots)
        .filter((lot) => lot.order === id && sameHead(lot.spec, spec))
        .flatMap(({ steps }) => steps.filter(({ state, doneAt }) => state !== 'done' || doneAt !== null)),
    ),
  );

const sameHead = (one: Order['lines'][number]['spec'], other: Order['lines'][number]['spec']): boolean =>
  Object.entries(one).every(([slot, value]) => other[slot as keyof typeof other] === value);

/** The order cancelled: its account closed at what its work keeps, and heads that were not finished written down as scrap. */
export function cancelledOrder(shop: Shop, desk: Desk, order: Order, now: Instant): Order {
  const { keeps } = partingOf(shop, desk, order);
  const lots = lotsOf(desk, order.id).map((lot) =>
    isMade(lot) ? lot : { ...lot, good: 0, scrap: lot.scrap + lot.good },
  );
  const ledger = [...closedFor(order.money, order.ledger, keeps, now)];
  return { ...written(shop, lots, order), state: 'cancelled', cancelAskedAt: null, shippedAt: now, ledger };
}

/** What becomes of the heads of an order that is given up: finished ones go on the shelf, the others are scrap. */
export type Fate = Readonly<{ shelved: number; scrapped: number }>;

export function fateOf(desk: Desk, order: string): Fate {
  const lots = lotsOf(desk, order);
  const heads = (some: readonly Lot[]): number => some.reduce((sum, { good }) => sum + good, 0);
  return { shelved: heads(lots.filter(isMade)), scrapped: heads(lots.filter((lot) => !isMade(lot))) };
}

const lotsOf = (desk: Desk, order: string): readonly Lot[] =>
  Object.values(desk.lots).filter((lot) => lot.order === order);
