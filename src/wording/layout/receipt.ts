import type { Paper } from '../../app/letter.ts';
import { balanceOf } from '../../domain/quote/payment.ts';
import { taxedBy } from '../../domain/quote/taxed.ts';
import type { Order } from '../../domain/desk/order.ts';
import type { Voice } from '../voice.ts';
import { headText, thanks, type Block, type Words } from './paperParts.ts';

/** What was bought, what came on top, and what was paid; the lines and what is added make the total to the cent. */
export function receiptBlocks(order: Order, voice: Voice, words: Words): Paper['blocks'] {
  const table: Block = {
    kind: 'table',
    columns: [
      { title: words.head, align: 'left', share: 6 },
      { title: words.each, align: 'right', share: 1.4 },
      { title: words.count, align: 'right', share: 1.3 },
      { title: words.amount, align: 'right', share: 1.6 },
    ],
    rows: order.lines.map((line, at) => {
      const price = order.money.lines[at];
      const [each, total] = [price?.each ?? 0, (price?.each ?? 0) * line.quantity];
      return [headText(line, voice), voice.money(each), voice.number(line.quantity), voice.money(total)];
    }),
  };
  const told: Block[] = [table, { kind: 'sums', rows: sums(order, voice, words) }];
  return order.state === 'cancelled' ? told : [...told, thanks(voice)];
}

type Sum = Extract<Block, { kind: 'sums' }>['rows'][number];

function sums({ state, money, ledger, shipTo }: Order, voice: Voice, words: Words): Sum[] {
  const off = money.lines.reduce((sum, line) => sum + line.off, 0);
  const { asked, paid, refunded, due, over } = balanceOf(money.total, ledger);
  const taxed = taxedBy(money, ledger);
  const isGivenUp = state === 'cancelled';
  const row = (name: string, cents: number): Sum[] =>
    cents === 0 ? [] : [{ name, amount: voice.money(cents), weight: 'plain' }];
  const strong = (name: string, cents: number): Sum => ({ name, amount: voice.money(cents), weight: 'strong' });
  return [
    ...row(words.off, -off),
    ...row(words.topUp, money.topUp),
    ...row(words.rush, money.rush),
    ...row(words.postage(voice.place(shipTo)), money.postage.cents),
    ...row(words.tax, taxed.tax),
    ...row(isGivenUp ? words.cancelled : words.adjusted, asked - money.total - (taxed.tax - money.tax)),
    strong(isGivenUp ? words.kept : words.total, asked),
    ...row(words.paid, paid),
    ...row(words.refunded, -refunded),
    ...(due === 0 ? [] : [strong(words.due, due)]),
    ...(over === 0 ? [] : [strong(words.over, over)]),
  ];
}
