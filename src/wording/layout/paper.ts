import type { Paper } from '../../app/letter.ts';
import { balanceOf } from '../../domain/quote/payment.ts';
import type { PaperKind } from '../../domain/desk/business.ts';
import type { Order } from '../../domain/desk/order.ts';
import type { Shop } from '../../domain/shop/shop.ts';
import type { BusinessWords } from '../businessWords.ts';
import { headsToPour } from '../../domain/plan/routing.ts';
import { clipped, lines } from '../clip.ts';
import type { Voice } from '../voice.ts';
import type { SayingOf } from '../words.ts';
import { headText, thanks, type Block, type Words } from './paperParts.ts';
import { priceBlocks } from './priceList.ts';
import { receiptBlocks } from './receipt.ts';
import { careBlock, putAsideBlock, stepsBlock } from './slip.ts';

/** A paper in words, ready to be printed: letter size where letter paper is usual, else A4. */
export function paperOf(
  { kind, order, buyer, day }: SayingOf<'paper'>,
  voice: Voice,
  { paper: words }: BusinessWords,
): Paper {
  const { shop } = voice;
  return {
    name: `${kind}${order === null ? '' : `-${order.id}`}.pdf`,
    size: LETTER_PLACES.includes(shop.place.slice(0, 2)) ? 'letter' : 'a4',
    shop: shop.name,
    title: words.names[kind],
    foot: voice.own(shop.about),
    pages: words.page('{page}', '{of}'),
    facts: order === null ? [] : facts(kind, order, buyer, voice, words),
    blocks: order === null ? priceBlocks(day, voice, words) : blocks(kind, order, voice, words),
  };
}

/** Countries that print on letter paper; common practice. */
const LETTER_PLACES: readonly string[] = ['US', 'CA', 'MX', 'PH', 'CL', 'CO', 'VE', 'GT', 'CR', 'PA', 'DO', 'PR'];

function facts(kind: PaperKind, order: Order, buyer: string | null, voice: Voice, words: Words): Paper['facts'] {
  const { zone } = voice.shop;
  const dated = new Intl.DateTimeFormat('en-CA', { timeZone: zone, dateStyle: 'short' });
  const left = order.state === 'cancelled' ? words.cancelled : words.shipped;
  const ship = order.shippedAt === null ? words.ships : left;
  const shipped = order.shippedAt === null ? order.promise.ships : dated.format(order.shippedAt);
  return [
    { name: words.order, text: order.id },
    { name: words.date, text: voice.date(dated.format(order.acceptedAt)) },
    { name: ship, text: voice.date(shipped) },
    ...(order.state === 'cancelled' ? [] : [{ name: words.to, text: order.address ?? voice.place(order.shipTo) }]),
    ...(buyer === null || kind === 'packing-slip' ? [] : [{ name: words.buyer, text: buyer }]),
    ...(order.needBy === null || kind === 'receipt' ? [] : [{ name: words.needBy, text: voice.date(order.needBy) }]),
  ];
}

function blocks(kind: PaperKind, order: Order, voice: Voice, words: Words): Paper['blocks'] {
  if (kind === 'receipt') return receiptBlocks(order, voice, words);
  if (kind === 'order-sheet') return sheetBlocks(order, voice, words);
  const table: Block = {
    kind: 'table',
    columns: [
      { title: words.head, align: 'left', share: 7 },
      { title: words.count, align: 'right', share: 1.3 },
      { title: words.checked, align: 'right', share: 1.5 },
    ],
    rows: order.lines.map((line) => [headText(line, voice), voice.number(line.quantity), '☐']),
  };
  return [table, weightBlock(order, voice.shop, voice, words), careBlock(order, voice.shop, words), thanks(voice)];
}

/** Room for the buyer's words of one line on paper. */
const SAID_MOST = 240;

/** For the bench: each head with the buyer's words, how many are wanted and how many to pour for them; then steps and material. */
function sheetBlocks(order: Order, voice: Voice, words: Words): Paper['blocks'] {
  const table: Block = {
    kind: 'table',
    columns: [
      { title: words.head, align: 'left', share: 6.2 },
      { title: words.count, align: 'right', share: 1.3 },
      { title: words.pour, align: 'right', share: 1.3 },
      { title: words.checked, align: 'right', share: 1.5 },
    ],
    rows: order.lines.map((line, at) => {
      const said = (order.said[at] ?? []).map(voice.terms.quote).join(' ');
      const head = lines(headText(line, voice), clipped(said, SAID_MOST));
      const pour = headsToPour(voice.shop, line.spec, line.quantity);
      return [head, voice.number(line.quantity), voice.number(pour), '☐'];
    }),
  };
  const { due } = balanceOf(order.money.total, order.ledger);
  const sums: Block = { kind: 'sums', rows: [{ name: words.due, amount: voice.money(due), weight: 'strong' }] };
  return [table, sums, stepsBlock(order, voice, words), putAsideBlock(order, voice, words)];
}

const weightBlock = ({ money }: Order, _shop: Shop, voice: Voice, words: Words): Block => ({
  kind: 'text',
  heading: '',
  lines: [words.weight(voice.grams(money.postage.grams))],
});
