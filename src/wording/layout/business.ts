import type { Purchase } from '../../domain/stock/buy.ts';
import type { BUSINESS_LAID_OUT } from '../businessWords.ts';
import { lines, paragraphs } from '../clip.ts';
import { amountOf, itemName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';
import { costLines, stepMinutes } from './cost.ts';
import { month } from './month.ts';
import { pay, unpaid } from './pay.ts';

type Laid = (typeof BUSINESS_LAID_OUT)[number];

/** The layouts of what is said on stock and money. */
export const BUSINESS_LAYOUTS: {
  readonly [Code in Laid]: (say: SayingOf<Code>, voice: Voice, phrases: Phrases) => string;
} = {
  'to-buy': toBuy,
  journal,
  cost: ({ order, cost }, voice, { business }) =>
    lines(business.cost.heading(order.id), costLines(cost, voice, business), stepMinutes(cost, voice, business)),
  excise,
  pay,
  unpaid,
  month,
};

/** By supplier, each item with why it is on the list. */
function toBuy({ baskets, untilKnown }: SayingOf<'to-buy'>, voice: Voice, { business }: Phrases): string {
  const { stock: words } = business;
  const tooNew = untilKnown === 0 ? null : words.tooNew(untilKnown, voice);
  if (baskets.length === 0) return paragraphs(words.nothingToBuy, tooNew);
  return paragraphs(
    words.toBuy,
    ...baskets.map(({ supplier, items }) => {
      const cents = items.reduce((sum, one) => sum + (one.cents ?? 0), 0);
      const rows = items.map((one) => `- ${purchaseRow(one, voice, words)}`);
      return lines(words.supplier(supplier), ...rows, cents === 0 ? null : words.sum(voice.money(cents)));
    }),
    tooNew,
  );
}

function purchaseRow(purchase: Purchase, voice: Voice, words: Phrases['business']['stock']): string {
  const { item, count, needed, onHand, coming, overdue, reserved, reorderAt } = purchase;
  const amount = (of: number): string => amountOf(item, of, voice);
  const why =
    needed > 0 ? words.needed(amount(needed)) : words.low(amount(onHand + coming - reserved), amount(reorderAt));
  const asked = overdue.map((one) => words.askAfter(amount(one.count), voice.shortDay(one.named)));
  return `${amount(count)} ${itemName(voice, item)}: ${[why, ...asked].join('. ')}`;
}

/** Newest first: when, who, what, why, what is left. */
function journal({ rows }: SayingOf<'journal'>, voice: Voice, { business }: Phrases): string {
  const { stock: words } = business;
  if (rows.length === 0) return words.noJournal;
  return lines(
    words.journal,
    ...rows.map(({ at, who, item, change, onHand, why, ref }) => {
      const sign = change < 0 ? '−' : '+';
      const moved = `${sign}${amountOf(item, Math.abs(change), voice)} ${itemName(voice, item)}`;
      const left = words.left(amountOf(item, onHand, voice));
      return `- ${voice.time(at)}, ${who ?? words.clock}: ${moved}, ${words.whys[why](ref)}, ${left}`;
    }),
  );
}

/** The worksheet, and above all that it is one. */
function excise({ sheet }: SayingOf<'excise'>, voice: Voice, { business }: Phrases): string {
  const { excise: words } = business;
  return paragraphs(
    words.heading(sheet.quarter),
    lines(
      words.sales(business.orderCount(sheet.orders, voice), voice.money(sheet.sales)),
      words.base(sheet.share, voice.money(sheet.base)),
      words.tax(voice.money(sheet.tax)),
      words.onTop(voice.money(sheet.onTop)),
      words.due(`${voice.weekday(sheet.due)}, ${voice.date(sheet.due)}`),
    ),
    lines(words.notAdvice, ...words.ask.map((question) => `- ${question}`)),
  );
}
