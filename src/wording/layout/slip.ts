import { routing } from '../../domain/plan/routing.ts';
import { metalOf } from '../../domain/order/head.ts';
import { addAmounts, needsOf } from '../../domain/stock/needs.ts';
import type { Order } from '../../domain/desk/order.ts';
import type { Shop } from '../../domain/shop/shop.ts';
import { BARE } from '../../domain/shop/words.ts';
import { amountOf, headName, itemName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { Block, Words } from './paperParts.ts';

/** The label texts that go with the heads. */
export const careBlock = ({ lines }: Order, shop: Shop, words: Words): Block => {
  const leaded = lines.some(({ spec }) => (metalOf(shop, spec).composition.Pb ?? 0) > 0);
  const painted = lines.some(({ spec }) => spec.paint !== BARE);
  return {
    kind: 'text',
    heading: words.care,
    lines: [
      ...(leaded ? [words.careLead] : []),
      words.careNotChildren,
      ...(leaded ? [words.careRules] : []),
      ...(painted ? [words.carePaint] : []),
    ],
  };
};

/** The steps of each line, to be ticked off at the bench. */
export const stepsBlock = ({ lines }: Order, voice: Voice, words: Words): Block => ({
  kind: 'text',
  heading: words.steps,
  lines: lines.map(({ spec, quantity }) => {
    const steps = routing(spec).map((step) => `☐\u00A0${voice.terms.steps[step].replaceAll(' ', '\u00A0')}`);
    return `${voice.number(quantity)} × ${headName(voice, spec)}:  ${steps.join('   ')}`;
  }),
});

/** What the shelf gives for the order. */
export const putAsideBlock = ({ lines }: Order, voice: Voice, words: Words): Block => ({
  kind: 'table',
  columns: [
    { title: words.materials, align: 'left', share: 6 },
    { title: words.quantity, align: 'right', share: 2 },
  ],
  rows: Object.entries(addAmounts(lines.map((line) => needsOf(voice.shop, line)))).map(([item, amount]) => [
    itemName(voice, item),
    amountOf(item, amount, voice),
  ]),
});
