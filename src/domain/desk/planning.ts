import { problemOf, type Bench } from '../bench/inPlan.ts';
import { spreadFrom } from '../bench/learned.ts';
import { addDays, type Day, type Instant } from '../craft/time.ts';
import type { Line } from '../order/spec.ts';
import { isImpossible, type Impossible, type LotPlan, type Plan } from '../plan/plan.ts';
import { dayFor, promise, risks, TERMS, type Terms } from '../plan/promise.ts';
import { follow, schedule } from '../plan/schedule.ts';
import type { Shop } from '../shop/shop.ts';
import { setAside } from '../stock/check.ts';
import { materialsFor } from '../stock/materials.ts';
import { partInPlan, partNeeds, partsOf } from './extras.ts';
import type { Desk } from './state.ts';
import { lotMaterials } from './lotMaterials.ts';
import { postFrom } from './post.ts';
import { shelfOf } from './shelves.ts';

/** The bench as it stands, for the planner. */
export function benchOf(shop: Shop, desk: Desk, now: Instant): Bench {
  const materials = lotMaterials(shop, desk, now);
  return {
    lots: Object.values(desk.lots).filter(({ order }) => !desk.held.includes(order)),
    timers: Object.values(desk.timers),
    garage: garageOf(shop, desk),
    dueOf: (lot) => desk.orders[lot.order]?.promise.ships ?? null,
    materialsOf: ({ id }) => materials[id]?.day ?? null,
    hours: hoursOf(shop, desk),
  };
}

/** The shop file's hours with what was told in chat. */
export const hoursOf = ({ hours }: Shop, desk: Desk): Shop['hours'] => ({
  weekly: hours.weekly,
  daysOff: [...hours.daysOff.filter((day) => !desk.daysOn.includes(day)), ...desk.daysOff],
  extra: [...hours.extra.filter(({ date }) => !desk.daysOff.includes(date)), ...desk.extraHours],
});

export const garageOf = (shop: Shop, desk: Desk): number => desk.garageCelsius ?? shop.garageCelsius;

/** The plan of everything accepted. */
export function planOf(shop: Shop, desk: Desk, now: Instant): Plan | Impossible {
  const problem = problemOf(shop, benchOf(shop, desk, now), now);
  return desk.planOrder === null ? schedule(problem) : follow(problem, desk.planOrder);
}

/** The desk with the order of work of its plan kept, to be followed by the next one. */
export function withPlan(shop: Shop, desk: Desk, now: Instant): Desk {
  const plan = planOf(shop, desk, now);
  return isImpossible(plan) ? desk : { ...desk, planOrder: { ...plan.order, places: [...plan.order.places] } };
}

/** What asked-for lines may be promised, and what it hangs on. */
export type Prospect = Readonly<{
  /** The day to promise: met in the shop's share of likely courses of the bench. */
  ships: Day;
  /** The day if all goes as planned. */
  planned: Day;
  confidence: number;
  because: LotPlan['because'];
  /** Not to be begun before then, so that nothing accepted is pushed; null where that holds by itself. */
  from: Instant | null;
  /** The order of work with the asked-for lines in it, as `asked-1`, `asked-2`… */
  order: Plan['order'];
}>;

/** When asked-for lines can ship, in turn behind everything accepted or in a rush ahead of it, with all accepted promises kept; and the
 *  chain of the lot that is ready last. */
export function askedShips(
  shop: Shop,
  desk: Desk,
  now: Instant,
  lines: readonly Line[],
  place: Terms['place'] = 'turn',
): Prospect | Impossible {
  const problem = problemOf(shop, benchOf(shop, desk, now), now);
  let shelf = shelfOf(shop, desk, now);
  const asked = partsOf(desk.shelf, lines).map((part, index) => {
    const needs = partNeeds(shop, part);
    const { day } = materialsFor(shop, shelf, needs);
    shelf = setAside(shelf, needs);
    return partInPlan(shop, garageOf(shop, desk), `asked-${index + 1}`, part, day);
  });
  const promised = promise(problem, asked, { ...termsOf(shop, desk), place });
  if (isImpossible(promised)) return promised;
  const own = promised.plan.lots.filter(({ id }) => id.startsWith('asked-')).sort((a, b) => a.ready - b.ready);
  const { day: ships, planned } = promised;
  const { from, plan } = promised;
  return {
    ships,
    planned,
    from,
    order: plan.order,
    confidence: shop.promise.confidence,
    because: own.at(-1)?.because ?? [],
  };
}

/** The order of work once the asked-for parts are lots of an order. */
export const renamed = (
  { places, ...order }: Plan['order'],
  lots: readonly string[],
): NonNullable<Desk['planOrder']> => ({
  ...order,
  places: places.map((place) => ({
    ...place,
    lot: lots[Number(/^asked-(\d+)$/.exec(place.lot)?.[1] ?? 0) - 1] ?? place.lot,
  })),
});

/** Days looked ahead for one that holds. */
const LATER_MOST = 21;

/** The first day from `day` on that an order, as the bench stands, holds as surely as a promise does; `day` plus three weeks if none
 *  does. One look at the likely courses of the bench answers for all orders. */
export function sureDays(shop: Shop, desk: Desk, now: Instant): (order: string, day: Day) => Day {
  const { confidence } = shop.promise;
  const sure = outlooks(shop, desk, now).map(({ order, outlook }) => ({
    order,
    day: outlook.find(({ chance }) => chance >= confidence)?.day,
  }));
  return (order, day) => {
    const last = postFrom(shop, addDays(day, LATER_MOST)) ?? day;
    const days = sure.filter((lot) => lot.order === order).map((lot) => lot.day ?? last);
    const [latest = day] = [day, ...days].sort().reverse();
    return latest < last ? latest : last;
  };
}

/** The day an order would be promised for as the bench stands; undefined where it can never be made. */
export function promiseDay(shop: Shop, desk: Desk, order: string, now: Instant): Day | undefined {
  const own = outlooks(shop, desk, now).filter((lot) => lot.order === order);
  if (own.length === 0 || own.some(({ outlook }) => outlook.length === 0)) return undefined;
  const days = own.map(({ outlook }) => dayFor(outlook, shop.promise.confidence).day);
  return days.sort().at(-1);
}

/** The chance of each lot at the bench to have left by each day, with its order. */
const outlooks = (shop: Shop, desk: Desk, now: Instant) =>
  risks(problemOf(shop, benchOf(shop, desk, now), now), termsOf(shop, desk)).map(({ lot, outlook }) => ({
    order: desk.lots[lot]?.order,
    outlook,
  }));

/** How promises are made here: the shop's confidence, and what the bench has taught. */
const termsOf = (shop: Shop, desk: Desk): Terms => ({
  ...TERMS,
  ...(desk.planOrder ? { before: desk.planOrder } : {}),
  confidence: shop.promise.confidence,
  spread: spreadFrom(shop, desk.learned),
});
