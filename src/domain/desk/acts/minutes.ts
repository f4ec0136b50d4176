import { factorOf, missedShareOf, TIMED, timesOf } from '../../bench/learned.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';

/** What start and done have taught, for the maker to see beside the shop file. */
export function minutes({ world, desk, by }: Turn): Decision {
  const { learned } = desk;
  const rows = TIMED.map((step) => ({ step, times: timesOf(learned, step), factor: factorOf(learned, step) }));
  // The shop that decides has the learned share in it already.
  const scrap = { heads: learned.counted.poured, bad: learned.counted.bad, share: world.shop.casting.scrapShare };
  const { missed } = learned;
  const evenings = { all: missed.hits + missed.misses, missed: missed.hits, share: missedShareOf(learned) };
  return says(desk, card(by.id, { code: 'minutes', rows, scrap, evenings }));
}
