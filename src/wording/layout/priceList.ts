import type { Paper } from '../../app/letter.ts';
import { ounces } from '../../domain/craft/weight.ts';
import { usualSpec } from '../../domain/order/choices.ts';
import { priceLine } from '../../domain/quote/price.ts';
import type { Shop } from '../../domain/shop/shop.ts';
import { capital } from '../clip.ts';
import { valueName } from '../names.ts';
import { percent } from '../percent.ts';
import type { Voice } from '../voice.ts';
import type { Block, Words } from './paperParts.ts';

/** The price list as the shop file has it: heads by style and weight, then what comes on top, then the breaks. */
export function priceBlocks(day: string, voice: Voice, words: Words): Paper['blocks'] {
  const { prices } = voice.shop;
  const byMargin = prices.rule === 'margin';
  const lot = typicalLot(voice.shop);
  return [
    {
      kind: 'text',
      heading: '',
      lines: [words.asOf(voice.date(day)), ...(byMargin ? [words.byLot(voice.number(lot))] : [])],
    },
    ...headTables(byMargin ? eachByMargin(voice.shop, lot) : prices.heads, voice, words),
    ...(byMargin ? [] : [extrasTable(voice, words)]),
    {
      kind: 'text',
      heading: '',
      lines: [
        ...prices.breaks.map(({ from, off }) => words.breaks(from, percent(off, voice))),
        ...(prices.minimumOrder === 0 ? [] : [words.least(voice.money(prices.minimumOrder))]),
      ],
    },
  ];
}

/** The number of heads that prices by margin are shown for: the shop's first break. */
const typicalLot = ({ prices, orders }: Shop): number => prices.breaks[0]?.from ?? Math.max(USUAL_LOT, orders.least);
const USUAL_LOT = 25;

type HeadPrices = Shop['prices']['heads'];

/** A head of each style and weight as usual, in a line of so many. */
function eachByMargin(shop: Shop, quantity: number): HeadPrices {
  const cast = shop.molds.flatMap(({ style, cavities }) => cavities.map(({ weight }) => ({ style, weight })));
  return cast.reduce<HeadPrices>((table, { style, weight }) => {
    const spec = usualSpec(shop, { style, weight });
    const each = spec === undefined ? 0 : Math.ceil(priceLine(shop, { spec, quantity }).total / quantity);
    return { ...table, [style]: { ...table[style], [weight]: each } };
  }, {});
}

const extrasTable = (voice: Voice, words: Words): Block => ({
  kind: 'table',
  columns: [
    { title: words.extras, align: 'left', share: 7 },
    { title: words.each, align: 'right', share: 2 },
  ],
  rows: extras(voice).map(([name, cents]) => [capital(name), `+${voice.money(cents)}`]),
});

/** Weights that stand side by side; more go into a table of their own. */
const WEIGHTS_ACROSS = 8;

/** A row a style, a column a weight, in ounces. */
function headTables(heads: HeadPrices, voice: Voice, words: Words): Block[] {
  const weights = [...new Set(Object.values(heads).flatMap((row) => Object.keys(row)))].sort(
    (one, other) => ounces(one) - ounces(other),
  );
  const tables = Array.from({ length: Math.ceil(weights.length / WEIGHTS_ACROSS) }, (_, at) =>
    weights.slice(at * WEIGHTS_ACROSS, (at + 1) * WEIGHTS_ACROSS),
  );
  return tables.map((across): Block => ({
    kind: 'table',
    columns: [
      { title: words.head, align: 'left', share: 2.6 },
      ...across.map((weight) => ({ title: `${weight} oz`, align: 'right' as const, share: 1 })),
    ],
    rows: Object.entries(heads)
      .filter(([, row]) => across.some((weight) => row[weight] !== undefined))
      .map(([style, row]) => [
        capital(valueName(voice, 'style', style)),
        ...across.map((weight) => (row[weight] === undefined ? '·' : voice.money(row[weight]))),
      ]),
  }));
}

/** What costs something on top of a bare head of lead. */
function extras(voice: Voice): readonly (readonly [string, number])[] {
  const { prices } = voice.shop;
  const { terms } = voice;
  const named: readonly (readonly [string, number])[] = [
    [terms.prices.paint, prices.paint],
    [terms.prices.guard, prices.guard],
    [terms.prices.keeper, prices.keeper],
    ...Object.entries(prices.dressings).map(([id, cents]) => [valueName(voice, 'dressing', id), cents] as const),
    ...Object.entries(prices.metals).map(([id, cents]) => [valueName(voice, 'metal', id), cents] as const),
  ];
  return named.filter(([, cents]) => cents > 0);
}
