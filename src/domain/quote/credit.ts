import { shareOf, total, type Cents } from '../craft/money.ts';
import { PROGRESSES, type WorkDone } from '../shop/business.ts';
import type { Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import { soldFor } from './cost.ts';
import type { Money } from './quote.ts';

/** How far a lot's work is, by the steps it has had or is having. */
export function workDone(steps: readonly Readonly<{ step: Step; state: string }>[]): WorkDone {
  const begun = steps.filter(({ state }) => state === 'running' || state === 'done').map(({ step }) => STAGE[step]);
  return PROGRESSES.findLast((stage) => begun.includes(stage)) ?? 'waiting';
}

const STAGE: Readonly<Record<Step, WorkDone>> = {
  pour: 'cast',
  trim: 'cast',
  paint: 'painted',
  'clear-eyes': 'painted',
  bake: 'painted',
  cool: 'painted',
  guard: 'painted',
  cure: 'painted',
  dress: 'painted',
  pack: 'packed',
  post: 'packed',
};

/** What a cancelled order keeps of what its heads are sold for: of each line what its stage does not give back; what brought a small order
 *  up, and haste, go with its furthest line. Nothing is sold, so no sales tax is kept, and postage is not used. */
export function keepsFor({ payment }: Shop, money: Money, sold: Cents, stages: readonly WorkDone[]): Cents {
  const furthest = PROGRESSES.findLast((stage) => stages.includes(stage)) ?? 'waiting';
  const keeps = (cents: Cents, stage: WorkDone): Cents => cents - shareOf(cents, payment.credit[stage]);
  const lines = total(money.lines.map((line, at) => keeps(line.total, stages[at] ?? furthest)));
  const quoted = soldFor(money);
  // A price changed since weighs on all of it alike.
  const share = quoted === 0 ? 0 : (lines + keeps(money.topUp + money.rush, furthest)) / quoted;
  return Math.round(Math.max(0, sold) * share);
}
