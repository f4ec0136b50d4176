import type { Invoice } from '../../app/letter.ts';
import type { BusinessWords } from '../businessWords.ts';
import { clipped } from '../clip.ts';
import type { Voice } from '../voice.ts';
import type { SayingOf } from '../words.ts';
import { fullLine } from './summary.ts';

/** The platform's limits for an invoice. */
const TITLE_MOST = 32;
const DESCRIPTION_MOST = 255;

/** A bill for an order or its deposit: one price, so that nothing has to be added up again. */
export function invoiceOf(
  { order, what, cents }: SayingOf<'invoice'>,
  voice: Voice,
  { pay: words }: BusinessWords,
): Invoice {
  const title = clipped(words.invoice[what](order.id), TITLE_MOST);
  return {
    title,
    description: clipped(order.lines.map((line) => fullLine(line, voice)).join('; '), DESCRIPTION_MOST),
    reason: `${order.id}=${what}`,
    currency: voice.shop.currency,
    prices: [{ label: title, amount: cents }],
  };
}
