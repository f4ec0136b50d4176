import { addDays, instantOf, localDay, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { unpaidOf } from './account.ts';
import type { UnpaidRow } from './business.ts';
import type { Card } from './card.ts';
import { settleRow } from './payButtons.ts';
import { isQuiet } from './quiet.ts';
import type { Desk } from './state.ts';
import { toMakers, type World } from './turn.ts';

const nameOf = (order: string): string => `unpaid/${order}`;

/** Orders that were not paid by the day on which payment was due, each told to the maker once, from the digest's hour of the day after. */
export function unpaidTold(world: World, desk: Desk, now: Instant): Readonly<{ desk: Desk; cards: readonly Card[] }> {
  const rows = isQuiet(world.shop, now) ? [] : untold(world.shop, desk, now).filter(({ from }) => from <= now);
  if (rows.length === 0) return { desk, cards: [] };
  const day = localDay(now, world.shop.zone);
  const buttons = rows.map(settleRow);
  return {
    desk: { ...desk, daily: { ...desk.daily, ...Object.fromEntries(rows.map(({ order }) => [nameOf(order), day])) } },
    cards: toMakers(
      world,
      { code: 'unpaid-due', rows },
      { kind: 'reminder', key: `unpaid/${rows.map(({ order }) => order).join('+')}`, rows: buttons },
    ),
  };
}

/** Rows that are still to be told of, each with the instant from which on. */
export const untold = (shop: Shop, desk: Desk, now: Instant): readonly (UnpaidRow & Readonly<{ from: Instant }>)[] =>
  unpaidOf(shop, desk, now)
    .filter(({ order, due }) => due > 0 && desk.daily[nameOf(order)] === undefined)
    .map((row) => ({ ...row, from: instantOf(addDays(row.dueOn, 1), shop.digestAt, shop.zone) }));
