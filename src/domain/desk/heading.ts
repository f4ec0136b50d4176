import { isFinished } from '../bench/lot.ts';
import type { Cents } from '../craft/money.ts';
import type { Day, Instant } from '../craft/time.ts';
import { isImpossible, type Because, type LotPlan } from '../plan/plan.ts';
import { depositOf, mayBegin } from '../quote/payment.ts';
import type { Shop } from '../shop/shop.ts';
import type { Missing } from '../stock/materials.ts';
import { accountOf } from './account.ts';
import { lotMaterials } from './lotMaterials.ts';
import type { Order } from './order.ts';
import { planOf } from './planning.ts';
import { nextPost } from './post.ts';
import type { Desk } from './state.ts';

/** What keeps an order off the bench: the maker put it on hold, or by the shop's rule money has to come first. */
export type Waits = Readonly<{ for: 'hold' }> | Readonly<{ for: 'money'; cents: Cents }>;

/** Where an open order heads as the bench stands: the day it leaves, null where nobody can tell one, and why. */
export type Heading = Readonly<{
  ships: Day | null;
  waits: Waits | null;
  /** All its heads are packed, so that only the post is still to come. */
  packed: boolean;
  because: readonly Because[];
  missing: readonly Missing[];
}>;

export function waitsOf(shop: Shop, { held }: Desk, order: Order): Waits | null {
  if (!held.includes(order.id)) return null;
  const account = accountOf(order);
  if (mayBegin(shop, account)) return { for: 'hold' };
  const asked = shop.payment.startsWhen === 'paid' ? account.asked : depositOf(shop, account);
  return { for: 'money', cents: asked - account.kept };
}

/** Of each open order. Off hold it heads for the day of its lot that is ready last; once packed for the next post, be it promised for later or not. */
export function headingsOf(shop: Shop, desk: Desk, now: Instant): (order: Order) => Heading {
  const courses = coursesOf(shop, desk, now);
  const materials = lotMaterials(shop, desk, now);
  const post = nextPost(shop, now);
  return (order) => {
    const lots = Object.values(desk.lots).filter((lot) => lot.order === order.id);
    const packed = lots.length > 0 && lots.every(isFinished);
    const waits = packed ? null : waitsOf(shop, desk, order);
    const course = waits === null ? courses[order.id] : undefined;
    const ships = packed && post !== undefined ? later(post, order.promise.ships) : (course?.ships ?? null);
    const missing = lots.flatMap(({ id }) => materials[id]?.missing ?? []);
    return { ships, waits, packed, because: course?.because ?? [], missing };
  };
}

const later = (one: Day, other: Day): Day => (one > other ? one : other);

/** The day each order with work still to be done would ship as the bench stands; none for what is on hold. */
export const shipDays = (shop: Shop, desk: Desk, now: Instant): Readonly<Record<string, Day>> =>
  Object.fromEntries(Object.entries(coursesOf(shop, desk, now)).map(([order, { ships }]) => [order, ships]));

/** The plan of the lot of each open order that is ready last: when it ships, and the chain of what it waits on. None for what can never be done. */
function coursesOf(shop: Shop, desk: Desk, now: Instant): Readonly<Record<string, LotPlan>> {
  const plan = planOf(shop, desk, now);
  if (isImpossible(plan)) {
    const stuck = plan.impossible.flatMap(({ lot }) => desk.lots[lot]?.order ?? []);
    return stuck.length === 0 ? {} : coursesOf(shop, { ...desk, held: [...desk.held, ...stuck] }, now);
  }
  const last: Record<string, LotPlan> = {};
  for (const lot of plan.lots) {
    const order = desk.lots[lot.id]?.order ?? '';
    const other = last[order];
    if (other === undefined || lot.ships > other.ships || (lot.ships === other.ships && lot.ready > other.ready))
      last[order] = lot;
  }
  return last;
}
