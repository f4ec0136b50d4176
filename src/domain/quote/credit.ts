import { shareOf, total, type Cents } from '../craft/money.ts';
import { PROGRESSES, type WorkDone } from '../shop/business.ts';
import type { Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
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

/** What a cancelled order is not asked for: of each line the share for its stage, with the sales tax on it;
 *  postage is not used, and what brought a small order up goes with its furthest line. */
export function creditFor({ payment }: Shop, money: Money, stages: readonly WorkDone[]): Cents {
  const furthest = PROGRESSES.findLast((stage) => stages.includes(stage)) ?? 'waiting';
  const lines = total(money.lines.map((line, at) => shareOf(line.total, payment.credit[stages[at] ?? furthest])));
  const heads = lines + shareOf(money.topUp + money.rush, payment.credit[furthest]);
  const sold = total(money.lines.map((line) => line.total)) + money.topUp + money.rush;
  const tax = sold === 0 ? 0 : Math.round((money.tax * heads) / sold);
  return Math.min(money.total, heads + tax + money.postage.cents);
}
