import { z } from 'zod';
import { shareOf, type Cents } from '../craft/money.ts';
import type { Shop } from '../shop/shop.ts';

/** One entry of an order's account: money that came, money that went back, or a price that was changed, up or down. Entries are only added. */
export const entrySchema = z.strictObject({
  at: z.number(),
  kind: z.enum(['paid', 'refund', 'adjust']),
  /** Above nothing, but for an adjustment, which may take off. */
  cents: z.number().int(),
  why: z.string().max(200),
  /** Of an adjustment, the part of its cents that is sales tax. */
  tax: z.number().int().optional(),
  /** The provider's id of a payment that was made in the chat. */
  charge: z.string().max(256).optional(),
});
export type Entry = Readonly<z.infer<typeof entrySchema>>;

/** Where an account stands. All are nothing or above. */
export type Balance = Readonly<{
  /** The total as adjusted. */
  asked: Cents;
  paid: Cents;
  refunded: Cents;
  /** What was paid and not given back. */
  kept: Cents;
  due: Cents;
  /** Kept beyond what is asked: to be given back. */
  over: Cents;
}>;

/** The account of an order with this total. */
export function balanceOf(total: Cents, ledger: readonly Entry[]): Balance {
  const sumOf = (kind: Entry['kind']): Cents =>
    ledger.filter((entry) => entry.kind === kind).reduce((sum, { cents }) => sum + cents, 0);
  const asked = total + sumOf('adjust');
  const [paid, refunded] = [sumOf('paid'), sumOf('refund')];
  const kept = paid - refunded;
  return { asked, paid, refunded, kept, due: Math.max(0, asked - kept), over: Math.max(0, kept - asked) };
}

/** Why an entry cannot stand: no amount, paid in full already, more than is due, more than was kept, or a price below nothing. */
export type Refused = 'no-amount' | 'paid-already' | 'more-than-due' | 'more-than-kept' | 'below-nothing';
export type Posted = Readonly<{ ok: true; ledger: readonly Entry[] }> | Readonly<{ ok: false; why: Refused }>;

/** The account with an entry more. What is given back is not asked for again, so a refund beyond what is over lowers the price by the rest. */
export function posted(total: Cents, ledger: readonly Entry[], entry: Entry): Posted {
  const balance = balanceOf(total, ledger);
  const why = refusedOf(balance, entry);
  if (why !== undefined) return { ok: false, why };
  const { over } = balance;
  const lowered: readonly Entry[] =
    entry.kind === 'refund' && entry.cents > over
      ? [{ at: entry.at, kind: 'adjust', cents: over - entry.cents, why: entry.why }]
      : [];
  return { ok: true, ledger: [...ledger, entry, ...lowered] };
}

function refusedOf({ asked, due, kept }: Balance, { kind, cents }: Entry): Refused | undefined {
  if (kind === 'paid' && due === 0) return 'paid-already';
  if (kind === 'refund' && kept === 0) return 'more-than-kept';
  if (!Number.isInteger(cents) || (kind === 'adjust' ? cents === 0 : cents <= 0)) return 'no-amount';
  if (kind === 'paid' && cents > due) return 'more-than-due';
  if (kind === 'refund' && cents > kept) return 'more-than-kept';
  return kind === 'adjust' && asked + cents < 0 ? 'below-nothing' : undefined;
}

/** The account with money that has come already, be it more than is due: what is over is to be given back. A charge counts once. */
export const received = (ledger: readonly Entry[], entry: Entry & Readonly<{ charge: string }>): readonly Entry[] =>
  ledger.some(({ charge }) => charge === entry.charge) ? ledger : [...ledger, entry];

/** What is asked for before work begins; nothing where the shop asks for no deposit. */
export const depositOf = ({ payment }: Shop, { asked }: Balance): Cents => shareOf(asked, payment.deposit);

/** Whether the bench may begin an order, by the shop's rule. */
export function mayBegin(shop: Shop, balance: Balance): boolean {
  const { startsWhen } = shop.payment;
  if (startsWhen === 'accepted') return true;
  return startsWhen === 'paid' ? balance.due === 0 : balance.kept >= depositOf(shop, balance);
}
