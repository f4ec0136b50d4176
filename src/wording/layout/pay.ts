import type { UnpaidRow } from '../../domain/desk/business.ts';
import type { Shop } from '../../domain/shop/shop.ts';
import { balanceOf, depositOf } from '../../domain/quote/payment.ts';
import { CANCELLED } from '../../domain/quote/taxed.ts';
import type { Order } from '../../domain/desk/order.ts';
import type { BusinessWords } from '../businessWords.ts';
import { lines, paragraphs } from '../clip.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';

/** The account of one order. */
export function pay(
  { order, balance, deposit, charges }: SayingOf<'pay'>,
  voice: Voice,
  { business }: Phrases,
): string {
  const { pay: words } = business;
  const { asked, paid, refunded, due, over } = balance;
  const open = due + over > 0;
  return paragraphs(
    words.heading(order),
    lines(
      words.asked(voice.money(asked)),
      words.paid(voice.money(paid)),
      refunded === 0 ? null : words.refunded(voice.money(refunded)),
      due === 0 ? null : words.due(voice.money(due)),
      deposit === 0 ? null : words.deposit(voice.money(deposit)),
      over === 0 ? null : words.over(voice.money(over)),
      open ? null : words.settled,
      charges.length === 0 ? null : words.charges(charges.join(', ')),
    ),
    words.byWord(order, voice),
  );
}

/** What was paid of an order so far; nothing while no money has moved. */
export function accountLines({ money, ledger }: Order, voice: Voice, { pay: words }: BusinessWords): string | null {
  if (ledger.length === 0) return null;
  const { asked, paid, refunded, due, over } = balanceOf(money.total, ledger);
  return lines(
    ...changeLines(ledger, voice, words),
    asked === money.total ? null : words.now(voice.money(asked)),
    words.paid(voice.money(paid)),
    refunded === 0 ? null : words.refunded(voice.money(refunded)),
    due === 0 ? null : words.due(voice.money(due)),
    over === 0 ? null : words.over(voice.money(over)),
  );
}

/** Every change of the price since it was agreed, so that the sum can be followed. */
const changeLines = (ledger: Order['ledger'], voice: Voice, words: BusinessWords['pay']): readonly string[] =>
  ledger
    .filter(({ kind }) => kind === 'adjust')
    .map(({ cents, tax = 0, why }) =>
      words.change(
        signed(cents, voice),
        tax === 0 ? null : signed(tax, voice),
        why === CANCELLED ? voice.terms.states.cancelled : why,
      ),
    );

const signed = (cents: number, voice: Voice): string => `${cents > 0 ? '+' : ''}${voice.money(cents)}`;

export function unpaid({ rows }: SayingOf<'unpaid'>, voice: Voice, { business }: Phrases): string {
  const { pay: words } = business;
  if (rows.length === 0) return words.nothingOwed;
  return lines(words.unpaid, ...rows.map((row) => `- ${unpaidRow(row, voice, business)}`));
}

/** One order that is not settled: late, due, or to be paid back. */
export function unpaidRow(
  { order, buyer, due, over, dueOn, late }: UnpaidRow,
  voice: Voice,
  { pay: words }: BusinessWords,
): string {
  if (over > 0) return words.backRow(order, buyer, voice.money(over));
  if (late > 0) return words.lateRow(order, buyer, voice.money(due), words.days(late, voice));
  return words.row(order, buyer, voice.money(due), voice.shortDay(dueOn));
}

/** What has to be here before work begins; nothing where it begins at once. */
export function beginsWhen(
  shop: Shop,
  { money, ledger }: Order,
  voice: Voice,
  { pay: words }: BusinessWords,
): string | null {
  const { startsWhen } = shop.payment;
  if (startsWhen === 'accepted') return null;
  return words.begins(voice.money(depositOf(shop, balanceOf(money.total, ledger))), startsWhen);
}
