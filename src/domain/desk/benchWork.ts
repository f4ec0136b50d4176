import { isHeldBack, type Lot } from '../bench/lot.ts';
import { readyWork, type Ready, type Session } from '../bench/session.ts';
import type { Instant } from '../craft/time.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import { addAmounts, type Amounts } from '../stock/needs.ts';
import { countedUse, usedAt } from '../stock/use.ts';
import { inWorkingOrder } from './inOrder.ts';
import { onHandOf } from './shelves.ts';
import type { Desk } from './state.ts';

/** Everything that may be started now, in the order of the routing; what is held back for others comes last and is not pooled with them. Spare heads take nothing that is put aside for an order:
 *  where no other piece is there for them, they are left out. */
export function readyAt(shop: Shop, desk: Desk, now: Instant): readonly Ready[] {
  let free = freePieces(shop, desk);
  const lots = inWorkingOrder(desk);
  const inTurn = lots.filter((lot) => !isHeldBack(lot, now));
  const later = lots.filter((lot) => isHeldBack(lot, now));
  const ready = [
    ...readyWork(shop, inTurn),
    ...readyWork(shop, later).map((work) => ({ ...work, later: heldUntil(desk, work) })),
  ];
  return ready.map((work) => ({
    ...work,
    shares: work.shares.map((share) => {
      const lot = desk.lots[share.lot];
      const spares = lot === undefined || work.step === 'pour' ? 0 : Math.max(0, share.heads - lot.heads);
      if (lot === undefined || spares === 0) return share;
      const kept = sparesFor(shop, lot, work.step, spares, free);
      free = lessOf(free, beyondReserve(shop, lot, work.step, kept));
      return kept === spares ? share : { lot: share.lot, heads: lot.heads + kept, left: spares - kept };
    }),
  }));
}

const heldUntil = ({ lots }: Desk, { shares }: Ready): Instant =>
  Math.max(...shares.map(({ lot }) => lots[lot]?.from ?? 0));

/** Pieces that lie there and are put aside for nobody. */
function freePieces(shop: Shop, desk: Desk): Amounts {
  const onHand = onHandOf(shop, desk);
  const reserved = addAmounts(Object.values(desk.lots).map((lot) => lot.reserved));
  const pieces = shop.stock.filter(({ unit }) => unit === 'piece');
  return Object.fromEntries(pieces.map(({ item }) => [item, Math.max(0, (onHand[item] ?? 0) - (reserved[item] ?? 0))]));
}

/** How many of a lot's spare heads a step has free pieces for. */
function sparesFor(shop: Shop, lot: Lot, step: Step, spares: number, free: Amounts): number {
  for (let kept = spares; kept > 0; kept--) {
    const wants = Object.entries(beyondReserve(shop, lot, step, kept));
    if (wants.every(([item, amount]) => amount <= (free[item] ?? Infinity))) return kept;
  }
  return 0;
}

/** What a step takes for a lot with so many spare heads beyond what is put aside for it. */
function beyondReserve(shop: Shop, lot: Lot, step: Step, spares: number): Amounts {
  const { used: own } = usedAt(step, lot.reserved);
  const uses = countedUse(shop, lot, step, lot.heads + spares);
  return Object.fromEntries(
    Object.entries(uses).map(([item, amount]) => [item, Math.max(0, amount - (own[item] ?? 0))]),
  );
}

const lessOf = (amounts: Amounts, taken: Amounts): Amounts =>
  Object.fromEntries(Object.entries(amounts).map(([item, amount]) => [item, amount - (taken[item] ?? 0)]));

/** Material that by the book lies there for so many heads of those that want it. */
export type Short = Readonly<{ item: ItemId; heads: number; of: number }>;

/** What a piece of work would use and is not there. */
export function shortAt(shop: Shop, desk: Desk, { step, shares }: Pick<Session, 'step' | 'shares'>): readonly Short[] {
  const onHand = onHandOf(shop, desk);
  const uses = shares.flatMap(({ lot: id, heads }) => {
    const lot = desk.lots[id];
    return lot === undefined ? [] : [{ heads, use: countedUse(shop, { ...lot, good: heads }, step, heads) }];
  });
  return Object.entries(addAmounts(uses.map(({ use }) => use))).flatMap(([item, need]) => {
    const have = onHand[item] ?? 0;
    const of = uses.reduce((sum, { heads, use }) => sum + ((use[item] ?? 0) > 0 ? heads : 0), 0);
    return have >= need ? [] : [{ item, heads: Math.floor((of * have) / need), of }];
  });
}

/** What a step took beyond what was counted: it must have been there. */
export function beyondCount(
  shop: Shop,
  before: Desk,
  after: Desk,
): readonly Readonly<{ item: ItemId; count: number }>[] {
  const [had, has] = [onHandOf(shop, before), onHandOf(shop, after)];
  const used = (desk: Desk): Amounts => addAmounts(Object.values(desk.lots).map((lot) => lot.used));
  const [was, is] = [used(before), used(after)];
  return Object.keys(is).flatMap((item) => {
    const count = (is[item] ?? 0) - (was[item] ?? 0) - ((had[item] ?? 0) - (has[item] ?? 0));
    return count > 0 ? [{ item, count }] : [];
  });
}
