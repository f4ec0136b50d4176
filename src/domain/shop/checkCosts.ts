import type { Check } from './check.ts';
import { faultAt, type Fault } from './fault.ts';
import { entries, type SoundParts } from './sound.ts';

/** What must hold where prices are reckoned from costs. */
export const COST_CHECKS: readonly Check[] = [itemsCosted, hourCosted];

/** Whoever prices by margin knows what each item costs, or heads would be sold for less than they cost. */
function itemsCosted({ prices, stock }: SoundParts): Fault[] {
  if (prices?.rule !== 'margin') return [];
  return entries(stock)
    .filter(([, { costPerThousand }]) => costPerThousand === undefined)
    .map(([at, { item }]) =>
      faultAt(
        ['stock', at, 'costPerThousand'],
        undefined,
        `the cost in cents of a thousand of ${item ?? 'it'}, for prices go by cost (prices.rule)`,
      ),
    );
}

/** The same of an hour. */
function hourCosted({ prices, costing }: SoundParts): Fault[] {
  if (prices?.rule !== 'margin' || (costing?.hourCents ?? 0) > 0) return [];
  return [
    faultAt(
      ['costing', 'hourCents'],
      costing?.hourCents,
      'more than 0, the cents of an hour, for prices go by cost (prices.rule)',
    ),
  ];
}
