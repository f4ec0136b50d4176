import { MINUTE } from '../craft/time.ts';
import { shipDay } from './calendar.ts';
import type { Outcome } from './dispatch.ts';
import type { Model } from './model.ts';
import type { Cost } from './plan.ts';

/** What a course of work costs; Infinity late when a lot never gets ready or never ships. */
export function costOf(model: Model, { ready, setup }: Outcome): Cost {
  const { due, weight } = model;
  let late = 0;
  let ship = 0;
  for (let lot = 0; lot < ready.length; lot++) {
    const day = shipDayOf(model, ready[lot] as number);
    const heavy = weight[lot] as number;
    ship += heavy * day;
    const over = day - (due[lot] as number);
    if (over > 0) late += heavy * over;
  }
  return { late: Number.isFinite(ship) ? late : Infinity, ship, setup: setup / MINUTE };
}

/** The ship day of something ready then, counted from today; Infinity for never. */
export function shipDayOf({ calendar }: Model, ready: number): number {
  if (ready === Infinity) return Infinity;
  const day = shipDay(calendar, ready);
  return day < 0 ? Infinity : day;
}

/** Whether `a` costs less than `b`, compared late days first, then ship days, then setups. */
export const isBetter = (a: Cost, b: Cost): boolean =>
  a.late !== b.late ? a.late < b.late : a.ship !== b.ship ? a.ship < b.ship : a.setup < b.setup;
