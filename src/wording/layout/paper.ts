import type { Paper } from '../../app/letter.ts';
import { balanceOf } from '../../domain/quote/payment.ts';
import type { PaperKind } from '../../domain/desk/business.ts';
import type { Order } from '../../domain/desk/order.ts';
import type { Shop } from '../../domain/shop/shop.ts';
import type { BusinessWords } from '../businessWords.ts';
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
  const ship = order.shippedAt === null ? words.ships : words.shipped;
  const shipped = order.shippedAt === null ? order.promise.ships : dated.format(order.shippedAt);
  return [
    { name: words.order, text: order.id },
    { name: words.date, text: voice.date(dated.format(order.acceptedAt)) },
    { name: ship, text: voice.date(shipped) },
    { name: words.to, text: order.address ?? voice.place(order.shipTo) },
    ...(buyer === null || kind === 'packing-slip' ? [] : [{ name: words.buyer, text: buyer }]),
    ...(order.needBy === null || kind === 'receipt' ? [] : [{ name: words.needBy, text: voice.date(order.needBy) }]),
  ];
}

function blocks(kind: PaperKind, order: Order, voice: Voice, words: Words): Paper['blocks'] {
  if (kind === 'receipt') return receiptBlocks(order, voice, words);
  const slip = kind === 'packing-slip';
  const table: Block = {
    kind: 'table',
    columns: [
      { title: words.head, align: 'left', share: 7 },
      { title: words.count, align: 'right', share: 1.3 },
      { title: words.checked, align: 'right', share: 1.5 },
    ],
    rows: order.lines.map((line) => [headText(line, voice), voice.number(line.quantity), '☐']),
  };
  const open = balanceOf(order.money.total, order.ledger);
  const sums: Block = { kind: 'sums', rows: [{ name: words.due, amount: voice.money(open.due), weight: 'strong' }] };
  if (slip)
    return [table, weightBlock(order, voice.shop, voice, words), careBlock(order, voice.shop, words), thanks(voice)];
  return [table, sums, stepsBlock(order, voice, words), putAsideBlock(order, voice, words)];
}

const weightBlock = ({ money }: Order, _shop: Shop, voice: Voice, words: Words): Block => ({
  kind: 'text',
  heading: '',
  lines: [words.weight(voice.grams(money.postage.grams))],
});
