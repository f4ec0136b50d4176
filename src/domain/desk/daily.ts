import { HOUR, instantOf, MINUTE, type Day, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { deliveriesOf } from '../stock/availability.ts';
import { closingOn } from './hours.ts';
import { cutOffOn } from './post.ts';
import { shelfOf } from './shelves.ts';
import type { Desk } from './state.ts';

/** What is said once a local day, beside the digest. */
export const DAILY = ['restock-day', 'hand-in', 'close-down'] as const;
export type Daily = (typeof DAILY)[number];

/** From when on something is said on a day, and until when it is of use; nothing where that day has nothing of the kind. */
export type DailyTime = Readonly<{ name: Daily; from: Instant; until: Instant }>;

/** How long before the post's cut-off it is said what must be handed in; our own choice. */
const HAND_IN_MINUTES = 90;
/** How long after closing the close-down card is still of use; our own choice. */
const CLOSING_HOURS = 3;

/** What is to be said on a local day and was not yet, soonest first. */
export function dailyTimes(shop: Shop, desk: Desk, day: Day): readonly DailyTime[] {
  return [...restock(shop, desk, day), ...handIn(shop, desk, day), ...closing(shop, desk, day)]
    .filter(({ name }) => desk.daily[name] !== day)
    .sort((a, b) => a.from - b.from);
}

/** How often it is asked again whether something overdue has come; our own choice. */
const ASKED_EVERY = 7;

/** Deliveries that are asked after on a day: the one they were named for, and each week after it until they come. */
export const dueOn = (shop: Shop, desk: Desk, day: Day): ReturnType<typeof deliveriesOf> => {
  const shelf = shelfOf(shop, desk, instantOf(day, '12:00', shop.zone));
  return shop.stock
    .flatMap(({ item }) => deliveriesOf(shop, shelf, item))
    .filter(({ named, overdue }) => named <= day && overdue % ASKED_EVERY === 0);
};

/** The orders that are packed. */
export const packedOrders = (desk: Desk): readonly string[] =>
  Object.values(desk.orders)
    .filter(({ state }) => state === 'packed')
    .map(({ id }) => id);

function restock(shop: Shop, desk: Desk, day: Day): readonly DailyTime[] {
  if (dueOn(shop, desk, day).length === 0) return [];
  const from = instantOf(day, shop.digestAt, shop.zone);
  return [{ name: 'restock-day', from, until: from + 12 * HOUR }];
}

function handIn(shop: Shop, desk: Desk, day: Day): readonly DailyTime[] {
  const by = cutOffOn(shop, day);
  if (by === undefined || packedOrders(desk).length === 0) return [];
  return [{ name: 'hand-in', from: by - HAND_IN_MINUTES * MINUTE, until: by }];
}

/** With nothing on the bench and nothing done, there is nothing to close down. */
function closing(shop: Shop, desk: Desk, day: Day): readonly DailyTime[] {
  const at = closingOn(shop, desk, day);
  const isBusy = Object.keys(desk.lots).length > 0 || desk.worked.some((one) => one.day === day);
  return at === undefined || !isBusy ? [] : [{ name: 'close-down', from: at, until: at + CLOSING_HOURS * HOUR }];
}
