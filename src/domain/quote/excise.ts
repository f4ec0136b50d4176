import type { Cents } from '../craft/money.ts';
import { isObserved } from '../craft/holidays.ts';
import { addDays, weekdayOf, type Day } from '../craft/time.ts';

/** The share of the price, in per cent, that the federal excise tax on sport fishing articles is reckoned on.
 *  100: the price itself. 75: a maker who sells at retail only (Rev. Rul. 80-273). 60: as Rev. Rul. 81-226 is quoted for fishing articles;
 *  that ruling was not seen, so an adviser has to confirm it first. */
export type ConstructiveShare = 100 | 75 | 60;

/** The tax in a price that includes it: 10 % of the share (26 U.S.C. §4161(a)(1)), which is taken off the price first, so T = 0.1·f·P / (1 + 0.1·f).
 *  Rounded half up, once; a return rounds its sum and not each head.
 *  @example inclusiveTax(1000, 75) //=> 70 */
export const inclusiveTax = (price: Cents, share: ConstructiveShare): Cents =>
  Math.floor((Math.max(0, price) * share * 2 + 1000 + share) / (2 * (1000 + share)));

/** The tax on a price that does not include it, stated beside it: T = 0.1·f·N. @example separateTax(1000, 75) //=> 75 */
export const separateTax = (price: Cents, share: ConstructiveShare): Cents =>
  Math.floor((Math.max(0, price) * share + 500) / 1000);

/** A calendar quarter as it is written: `2026-Q4`. */
export type Quarter = string;

export const quarterOf = (day: Day): Quarter =>
  `${day.slice(0, 4)}-Q${Math.floor((Number(day.slice(5, 7)) - 1) / 3) + 1}`;

/** The first and last day of a quarter and the last day to file for it: the end of the month after it, or the next business day.
 *  @example quarterDays('2026-Q4') //=> { from: '2026-10-01', to: '2026-12-31', due: '2027-02-01' } */
export function quarterDays(quarter: Quarter): Readonly<{ from: Day; to: Day; due: Day }> {
  const [year = 0, number = 1] = quarter.split('-Q').map(Number);
  const firstOf = (months: number): Day =>
    `${year + Math.floor(months / 12)}-${String((months % 12) + 1).padStart(2, '0')}-01`;
  const next = number * 3;
  return { from: firstOf(next - 3), to: addDays(firstOf(next), -1), due: businessDay(addDays(firstOf(next + 1), -1)) };
}

/** A day, or the next that is no Saturday, Sunday or legal holiday (26 U.S.C. §7503). */
function businessDay(day: Day): Day {
  const isFree = ['sat', 'sun'].includes(weekdayOf(day)) || isObserved(day);
  return isFree ? businessDay(addDays(day, 1)) : day;
}

/** A sale for the worksheet: what the articles were sold for, without postage and sales tax, on the day they left. */
export type Sale = Readonly<{ order: string; day: Day; cents: Cents }>;

/** A quarter's worksheet for the line of the return: IRS No. 41, sport fishing equipment. Not advice. */
export type Worksheet = Readonly<{
  quarter: Quarter;
  due: Day;
  orders: number;
  sales: Cents;
  share: ConstructiveShare;
  /** The part of the sales that bears the tax, the tax itself taken off. */
  base: Cents;
  /** When prices include the tax, as a price list does that does not name it. */
  tax: Cents;
  /** What it would be on top of prices that do not include it. */
  onTop: Cents;
}>;

/** Sums the sales of a quarter and rounds once. */
export function worksheetFor(sales: readonly Sale[], quarter: Quarter, share: ConstructiveShare): Worksheet {
  const { due } = quarterDays(quarter);
  const within = sales.filter(({ day }) => quarterOf(day) === quarter);
  const sum = within.reduce((all, { cents }) => all + cents, 0);
  const tax = inclusiveTax(sum, share);
  const base = Math.round(((sum - tax) * share) / 100);
  return { quarter, due, orders: within.length, sales: sum, share, base, tax, onTop: separateTax(sum, share) };
}
