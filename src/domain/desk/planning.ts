import { lineInPlan, problemOf, type Bench } from '../bench/inPlan.ts';
import type { Day, Instant } from '../craft/time.ts';
import type { Line } from '../order/spec.ts';
import { isImpossible, type Impossible, type LotPlan, type Plan } from '../plan/plan.ts';
import { schedule } from '../plan/schedule.ts';
import type { Shop } from '../shop/shop.ts';
import { materialsDay, setAside } from '../stock/check.ts';
import { needsOf } from '../stock/needs.ts';
import type { Desk } from './state.ts';
import { shelfOf } from './shelves.ts';

/** The bench as it stands, for the planner. */
export function benchOf(shop: Shop, desk: Desk, now: Instant): Bench {
  const shelf = shelfOf(shop, desk, now);
  return {
    lots: Object.values(desk.lots),
    timers: Object.values(desk.timers),
    garage: garageOf(shop, desk),
    dueOf: (lot) => desk.orders[lot.order]?.promise.ships ?? null,
    // What is reserved is already taken off the shelf, so a lot waits only while the shelf is below nothing.
    materialsOf: (lot) =>
      materialsDay(shop, { ...shelf, reserved: {}, onHand: leftFor(shelf, lot.reserved) }, lot.reserved),
    hours: { ...shop.hours, daysOff: [...shop.hours.daysOff, ...desk.daysOff] },
  };
}

export const garageOf = (shop: Shop, desk: Desk): number => desk.garageCelsius ?? shop.garageCelsius;

/** The plan of everything accepted. */
export const planOf = (shop: Shop, desk: Desk, now: Instant): Plan | Impossible =>
  schedule(problemOf(shop, benchOf(shop, desk, now), now));

/** The day each open order would ship as the bench stands; orders whose lots are all packed are left out. */
export function shipDays(shop: Shop, desk: Desk, now: Instant): Readonly<Record<string, Day>> {
  const plan = planOf(shop, desk, now);
  if (isImpossible(plan)) return {};
  const days: Record<string, Day> = {};
  for (const { id, ships } of plan.lots) {
    const order = desk.lots[id]?.order ?? '';
    days[order] = [days[order] ?? '', ships].sort().at(-1) ?? ships;
  }
  return days;
}

/** The day asked-for lines can ship behind everything accepted, and what that hangs on: the lot that is ready last. */
export function askedShips(shop: Shop, desk: Desk, now: Instant, lines: readonly Line[]): LotPlan | Impossible {
  const problem = problemOf(shop, benchOf(shop, desk, now), now);
  let shelf = shelfOf(shop, desk, now);
  const asked = lines.map((line, index) => {
    const needs = needsOf(shop, line);
    const materials = materialsDay(shop, shelf, needs);
    shelf = setAside(shelf, needs);
    return lineInPlan(shop, garageOf(shop, desk), `asked-${index + 1}`, line, materials);
  });
  const plan = schedule({ ...problem, lots: [...problem.lots, ...asked] });
  if (isImpossible(plan)) return plan;
  const own = plan.lots.filter(({ id }) => id.startsWith('asked-')).sort((a, b) => a.ready - b.ready);
  const last = own.at(-1);
  if (last === undefined) throw new Error('An order has at least one line.');
  return {
    ...last,
    ships:
      own
        .map(({ ships }) => ships)
        .sort()
        .at(-1) ?? last.ships,
  };
}

/** What lies there for one lot: its own share is not taken by itself. */
function leftFor(
  shelf: ReturnType<typeof shelfOf>,
  own: Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(own).map(([item, need]) => [item, (shelf.onHand[item] ?? 0) - (shelf.reserved[item] ?? 0) + need]),
  );
}
