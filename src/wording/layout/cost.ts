import type { OrderCost } from '../../domain/quote/cost.ts';
import { STEPS } from '../../domain/shop/words.ts';
import { lines } from '../clip.ts';
import { itemName } from '../names.ts';
import { percent } from '../percent.ts';
import type { Voice } from '../voice.ts';
import type { BusinessWords } from '../businessWords.ts';

/** What an order costs, part by part, and what it leaves over; a warning where that is too little. */
export function costLines(cost: OrderCost, voice: Voice, { cost: words }: BusinessWords): string {
  const sumOf = (part: 'material' | 'packaging' | 'hands' | 'overhead'): number =>
    cost.lines.reduce((sum, line) => sum + line[part], 0);
  const money = (part: Parameters<typeof sumOf>[0]): string => voice.money(sumOf(part));
  const hourly = Math.round(((cost.margin + sumOf('hands')) * 60) / Math.max(1, cost.minutes));
  return lines(
    words.material(money('material')),
    words.packaging(money('packaging')),
    words.hands(voice.duration(cost.minutes), money('hands')),
    sumOf('overhead') === 0 ? null : words.overhead(money('overhead')),
    cost.excise === 0 ? null : words.excise(voice.money(cost.excise)),
    words.sum(voice.money(cost.cost), voice.money(cost.price)),
    words.margin(voice.money(cost.margin), percent(cost.share, voice)),
    words.anHour(voice.money(hourly)),
    cost.thin ? words.thin(percent(voice.shop.costing.marginFloor, voice)) : null,
    cost.uncosted.length === 0
      ? null
      : words.uncosted(voice.list(cost.uncosted.slice(0, 5).map((item) => itemName(voice, item)))),
  );
}

/** How the minutes of hands fall to the steps, all lines together. */
export function stepMinutes({ lines: costs }: OrderCost, voice: Voice, { cost: words }: BusinessWords): string {
  const all = costs.flatMap(({ steps }) => steps);
  const parts = STEPS.flatMap((step) => {
    const minutes = all.reduce((sum, one) => sum + (one.step === step ? one.minutes : 0), 0);
    return minutes === 0 ? [] : [`${voice.terms.steps[step]} ${voice.number(Math.round(minutes))}`];
  });
  return words.bySteps(parts.join(', '));
}
