import { NOTHING_AROUND, type Around } from './around.ts';
import { addDays, localDay, MINUTE, type Day, type Instant, type Minutes } from '../craft/time.ts';
import { isImpossible, type Plan } from '../plan/plan.ts';
import type { Shop } from '../shop/shop.ts';
import { deliveriesOf, freeOf } from '../stock/availability.ts';
import { addAmounts } from '../stock/needs.ts';
import { unpaidOf } from './account.ts';
import { readyAt } from './benchWork.ts';
import { dangersOf } from './coming.ts';
import { doneBefore, leavingToday, meltOn } from './dayFacts.ts';
import type { Digest, StockFacts } from './facts.ts';
import { headingsOf } from './heading.ts';
import { spansOn } from './hours.ts';
import type { Order } from './order.ts';
import { plannedCount } from './planned.ts';
import { planOf } from './planning.ts';
import { shelfOf } from './shelves.ts';
import type { Desk } from './state.ts';
import { timerFacts } from './telling.ts';

/** How many days ahead a promise is named. */
const DAYS_AHEAD = 3;

export function digestOf(shop: Shop, desk: Desk, now: Instant, { health }: Around = NOTHING_AROUND): Digest {
  const day = localDay(now, shop.zone);
  const headingOf = headingsOf(shop, desk, now);
  const open = Object.values(desk.orders);
  const plan = planOf(shop, desk, now);
  const work = isImpossible(plan) ? [] : workOn(shop, desk, plan, day);
  const shelf = shelfOf(shop, desk, now);
  return {
    day,
    work,
    melt: isImpossible(plan) ? [] : meltOn(shop, desk, plan, day),
    done: doneBefore(desk, day),
    leaving: leavingToday(shop, desk, headingOf, now),
    hours: hoursOn(shop, desk, day),
    planned: work.reduce((sum, { minutes }) => sum + minutes, 0),
    ready: readyAt(shop, desk, now),
    due: open
      .filter((order) => isSoon(order, day) && headingOf(order).waits === null)
      .map(({ id, promise }) => ({ order: id, promised: promise.ships })),
    unbegun: open.flatMap((order) => {
      const { waits } = headingOf(order);
      return waits?.for === 'money' ? [{ order: order.id, cents: waits.cents }] : [];
    }),
    toPost: open.filter(({ state }) => state === 'packed').map(({ id }) => id),
    timers: Object.values(desk.timers).map((timer) => timerFacts(shop, desk, timer, now)),
    short: stockFacts(shop, desk, now).filter(({ onHand, reserved }) => onHand < reserved),
    deliveries: shop.stock
      .flatMap(({ item }) => deliveriesOf(shop, shelf, item))
      .filter(({ named }) => named <= addDays(day, 1)),
    undelivered: health?.health.undelivered ?? 0,
    questions: Object.values(desk.questions).filter(({ answeredAt }) => answeredAt === null),
    unpaid: unpaidOf(shop, desk, now).filter(({ over, late }) => over > 0 || late > 0),
    cancels: open.filter(({ cancelAskedAt }) => cancelAskedAt !== null).map(({ id }) => id),
    unaddressed: open.filter(({ address }) => address === null).map(({ id }) => id),
    danger: dangersOf(shop, desk, now),
  };
}

const isSoon = ({ promise }: Order, day: Day): boolean =>
  promise.ships > day && promise.ships <= addDays(day, DAYS_AHEAD);

/** Every stock item with what is reserved, in work and coming. */
export function stockFacts(shop: Shop, desk: Desk, now: Instant): readonly StockFacts[] {
  const shelf = shelfOf(shop, desk, now);
  const used = addAmounts(Object.values(desk.lots).map((lot) => lot.used));
  return shop.stock.map(({ item, unit }) => {
    const reserved = shelf.reserved[item] ?? 0;
    const inWork = used[item] ?? 0;
    const coming = deliveriesOf(shop, shelf, item);
    return { item, unit, onHand: freeOf(shelf, item) + reserved, reserved, inWork, coming };
  });
}

/** The sessions and loads that the plan has on a local day. */
function workOn(shop: Shop, desk: Desk, plan: Plan, day: Day): Digest['work'] {
  const sessions = plan.sessions.map((one) => ({
    step: one.do,
    family: one.with ?? '-',
    start: one.start,
    end: one.end,
    heads: plannedCount(shop, desk, plan, one),
  }));
  const loads = plan.loads.map((one) => ({
    step: 'bake',
    family: one.with ?? '-',
    start: one.start,
    end: one.start + (shop.steps.bake.load + shop.steps.bake.unload) * MINUTE,
    heads: Object.values(one.lots).reduce((sum, heads) => sum + heads, 0),
  }));
  return [...sessions, ...loads]
    .filter(({ start }) => localDay(start, shop.zone) === day)
    .sort((a, b) => a.start - b.start)
    .map(({ step, family, start, end, heads }) => ({
      step,
      family,
      heads,
      minutes: Math.round((end - start) / MINUTE),
    }))
    .reduce<Digest['work']>(withNext, []);
}

/** Work that only the oven interrupts is one row. */
function withNext(rows: Digest['work'], next: Digest['work'][number]): Digest['work'] {
  const last = rows.at(-1);
  if (last === undefined || last.step === 'bake' || last.step !== next.step || last.family !== next.family)
    return [...rows, next];
  const both = { ...last, heads: last.heads + next.heads, minutes: last.minutes + next.minutes };
  return [...rows.slice(0, -1), both];
}

const hoursOn = (shop: Shop, desk: Desk, day: Day): Minutes =>
  spansOn(shop, desk, day).reduce((sum, { from, to }) => sum + (to - from) / MINUTE, 0);
