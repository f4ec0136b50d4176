import type { Lot } from '../bench/lot.ts';
import { finished, type Session } from '../bench/session.ts';
import type { Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { useUp } from './bench.ts';
import { fateOf, type Fate } from './parting.ts';
import type { Desk } from './state.ts';
import { noted } from './worked.ts';

/** The desk with what hands are doing for an order counted as done: its heads cast, its scrap told, its material used. An order that is
 *  given up leaves with that; its steps stay as they are, so that they are paid for, and its heads let go, as what they were. */
export const workedOff = (shop: Shop, desk: Desk, order: string, now: Instant): Desk =>
  Object.values(desk.sessions).reduce((next, session) => partDone(shop, next, session, order, now), desk);

/** What becomes of an order's heads if it is given up now, those being cast with the others. */
export const fateNow = (shop: Shop, desk: Desk, order: string, now: Instant): Fate =>
  fateOf(workedOff(shop, desk, order, now), order);

/** A rack in the oven stays in it, and used its powder when it was painted. */
function partDone(shop: Shop, desk: Desk, session: Session, order: string, now: Instant): Desk {
  const shares = session.shares.filter(({ lot }) => desk.lots[lot]?.order === order);
  if (session.step === 'bake' || shares.length === 0) return desk;
  const scrap = Object.fromEntries(shares.map(({ lot }) => [lot, session.scrap[lot] ?? 0]));
  const part: Session = { ...session, shares, scrap, parted: true };
  const lots = finished(Object.values(desk.lots), part, 'kept', now);
  const counted: Desk = { ...desk, lots: Object.fromEntries(lots.map((lot) => [lot.id, lot])) };
  const used = shares.reduce((next, { lot }) => useUp(shop, next, lot, part), counted);
  const asTheyWere = Object.values(used.lots).map((lot): Lot => ({
    ...lot,
    steps: desk.lots[lot.id]?.steps ?? lot.steps,
  }));
  return noted(shop, desk, { ...used, lots: Object.fromEntries(asTheyWere.map((lot) => [lot.id, lot])) }, part, now);
}
