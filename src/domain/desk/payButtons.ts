import type { Cents } from '../craft/money.ts';
import { benchTap } from './benchButtons.ts';
import type { UnpaidRow } from './business.ts';
import type { CardButton } from './card.ts';
import type { Tap } from './tap.ts';

/** A button that opens an order's account. */
export const payButton = (order: string): CardButton => ({
  label: { code: 'pay', order },
  tap: benchTap('pay', order, '-'),
});

/** What a tap on an order's account enters. It carries what was kept and what it says, so that it counts once and enters nothing else. */
export const settleTap = (order: string, what: 'whole' | 'deposit' | 'back', kept: Cents, cents: Cents): Tap =>
  benchTap('pay', order, `${what}=${kept}=${cents}`);

/** An open account settled with one tap, or looked at. */
export function settleRow({ order, due, over, kept }: UnpaidRow): readonly CardButton[] {
  const [what, cents] = due > 0 ? (['whole', due] as const) : (['back', over] as const);
  return [
    { label: { code: 'settle', order, what, cents }, tap: settleTap(order, what, kept, cents) },
    payButton(order),
  ];
}
