import type { Fate, Parting } from '../../domain/desk/parting.ts';
import type { WorkDone } from '../../domain/shop/business.ts';
import { percent } from '../percent.ts';
import type { Voice } from '../voice.ts';

/** What a cancelled order comes to in money, and by which rule; the same for the buyer and the maker. */
export function partingSaid(parting: Parting, voice: Voice): string {
  const { keeps, paid, back, owed } = parting;
  const sums = [
    paid === 0 ? 'Nothing has been paid' : `${voice.money(paid)} has been paid`,
    ...(back > 0 ? [`${voice.money(back)} goes back`] : []),
    ...(owed > 0 ? [`${voice.money(owed)} is to be paid for the work`] : []),
    ...(back + owed > 0 ? [] : [keeps > 0 ? 'nothing goes back' : 'nothing is owed']),
  ];
  return `${ruleSaid(parting, voice)} ${voice.list(sums)}.`;
}

function ruleSaid({ rule, why, keeps }: Parting, voice: Voice): string {
  if (why === 'late') return 'The delay is not the buyer’s, so nothing is kept.';
  if (keeps === 0) return 'By the shop’s rule nothing is kept.';
  if (why === 'told')
    return `As was told when cancelling was asked for, ${voice.money(keeps)} is kept. Postage and sales tax are not charged.`;
  const parts = rule.map(
    ({ stage, kept }) => `${percent(kept, voice)} of the price of heads that are ${STAGES[stage]}`,
  );
  return `By the shop’s rule ${voice.list(parts)} is kept: ${voice.money(keeps)}. Postage and sales tax are not charged.`;
}

const STAGES: Readonly<Record<WorkDone, string>> = {
  waiting: 'not begun',
  cast: 'cast',
  painted: 'in paint or past it',
  packed: 'packed',
};

/** What becomes of the heads; nothing where none were made. */
export function fateSaid({ shelved, scrapped }: Fate, voice: Voice): string | null {
  const heads = (count: number): string => voice.count(count, voice.terms.heads);
  const parts = [
    ...(shelved === 0 ? [] : [`${heads(shelved)} finished: onto the shelf.`]),
    ...(scrapped === 0 ? [] : [`${heads(scrapped)} not finished: counted as scrap.`]),
  ];
  return parts.length === 0 ? null : parts.join(' ');
}
