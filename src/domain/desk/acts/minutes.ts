import { factorOf, scrapShareOf, TIMED, timesOf } from '../../bench/learned.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';

/** What start and done have taught, for the maker to see beside the shop file. */
export function minutes({ world, desk, by }: Turn): Decision {
  const { learned } = desk;
  const rows = TIMED.map((step) => ({ step, times: timesOf(learned, step), factor: factorOf(learned, step) }));
  const { hits, misses } = learned.scrap;
  const scrap = { heads: hits + misses, bad: hits, share: scrapShareOf(world.shop, learned) };
  return says(desk, card(by.id, { code: 'minutes', rows, scrap }));
}
