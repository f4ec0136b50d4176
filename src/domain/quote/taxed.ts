import { shareOf, type Cents } from '../craft/money.ts';
import type { Instant } from '../craft/time.ts';
import { soldFor } from './cost.ts';
import { balanceOf, posted, type Entry, type Posted } from './payment.ts';
import type { Money } from './quote.ts';

/** The sales tax follows the price: an order bears it on what its heads are sold for in the end. */

/** What the heads are sold for and the sales tax on that, with every change of the price so far. */
export type Taxed = Readonly<{ sold: Cents; tax: Cents }>;

export function taxedBy(money: Money, ledger: readonly Entry[]): Taxed {
  const changes = ledger.filter(({ kind }) => kind === 'adjust');
  const tax = changes.reduce((sum, change) => sum + (change.tax ?? 0), 0);
  const whole = changes.reduce((sum, { cents }) => sum + cents, 0);
  return { sold: soldFor(money) + whole - tax, tax: money.tax + tax };
}

/** The account with an entry more. A changed price is what the heads cost, and its sales tax comes with it;
 *  what is given back and not asked for again has its tax in it. */
export function entered(money: Money, ledger: readonly Entry[], entry: Entry): Posted {
  if (isGivenUp(money, ledger)) return posted(money.total, ledger, entry);
  const isPrice = entry.kind === 'adjust' && entry.cents !== 0;
  if (isPrice && entry.cents < 0 && -entry.cents > mostOff(money, ledger)) return { ok: false, why: 'below-nothing' };
  const whole = isPrice ? { ...entry, ...onHeads(money, ledger, entry.cents) } : entry;
  const done = posted(money.total, ledger, whole);
  if (!done.ok) return done;
  return {
    ok: true,
    ledger: done.ledger.map((one, at) =>
      at < ledger.length || one.kind !== 'adjust' || one.tax !== undefined
        ? one
        : { ...one, tax: taxIn(money, ledger, one.cents) },
    ),
  };
}

/** How much can be taken off a price: what the heads are sold for; of an order that was given up, all that is asked. */
export const mostOff = (money: Money, ledger: readonly Entry[]): Cents =>
  Math.max(0, isGivenUp(money, ledger) ? balanceOf(money.total, ledger).asked : taxedBy(money, ledger).sold);

/** The reason that stands on a cancelled order's account. */
export const CANCELLED = 'cancelled';

/** An order that was given up bears no sales tax, whatever becomes of its account. */
const isGivenUp = (money: Money, ledger: readonly Entry[]): boolean =>
  ledger.some(({ kind, why }) => kind === 'adjust' && why === CANCELLED) && taxedBy(money, ledger).tax === 0;

/** The account of an order that is given up for `keeps`: so much is asked for, be it paid already or not, and no sales tax on it. */
export function closedFor(money: Money, ledger: readonly Entry[], keeps: Cents, at: Instant): readonly Entry[] {
  const cents = keeps - balanceOf(money.total, ledger).asked;
  const tax = 0 - taxedBy(money, ledger).tax;
  return cents === 0 && tax === 0 ? ledger : [...ledger, { at, kind: 'adjust', cents, why: CANCELLED, tax }];
}

/** A change of what the heads cost, with the sales tax that goes with it. @example −$10.00 at 6.875 % //=> −$10.69, −$0.69 of it tax */
function onHeads(money: Money, ledger: readonly Entry[], cents: Cents): Readonly<{ cents: Cents; tax: Cents }> {
  const { sold, tax } = taxedBy(money, ledger);
  const change = taxOn(money, sold + cents) - tax;
  return { cents: cents + change, tax: change };
}

/** The sales tax in a change of the whole price: heads and their tax share it, and only what is beyond both is postage. */
function taxIn(money: Money, ledger: readonly Entry[], cents: Cents): Cents {
  const { sold, tax } = taxedBy(money, ledger);
  const left = Math.max(0, sold + tax + cents);
  const about = Math.round((left * 100_000) / (100_000 + rateOf(money)));
  const heads = [about, about - 1, about + 1].find((one) => one + taxOn(money, one) === left) ?? about;
  return left - heads - tax;
}

/** The sales tax on heads sold for so much, at the order's own rate. */
const taxOn = (money: Money, sold: Cents): Cents => shareOf(Math.max(0, sold), rateOf(money));

/** The rate the order was quoted at; of an order from before it was written down, what its tax comes to. */
const rateOf = (money: Money): number =>
  money.taxRate ?? Math.round((money.tax * 100_000) / Math.max(1, soldFor(money)));
