import type { Step } from '../shop/words.ts';
import { STEPS } from '../shop/words.ts';
import { stepOf, type Lot } from './lot.ts';
import { headsIn, type Ready } from './session.ts';

/** What a start button offers, so that an old one never starts the heads of others: a step, the first of its lots, how many lots, how many heads. */
export type Offer = Readonly<{ step: Step; lot: string; lots: number; heads: number }>;

export const offerOf = (work: Ready): Offer => ({
  step: work.step,
  lot: work.shares[0]?.lot ?? '',
  lots: work.shares.length,
  heads: headsIn(work),
});

/** An offer as a button carries it. @example writeOffer({ step: 'trim', lot: 'K-1001-1', lots: 2, heads: 49 }) //=> 'trim/K-1001-1/2/49' */
export const writeOffer = ({ step, lot, lots, heads }: Offer): string => [step, lot, lots, heads].join('/');

/** The offer that a button carries; undefined for anything else. */
export function parseOffer(said: string): Offer | undefined {
  const [step, lot = '', lots, heads] = said.split('/');
  const known = STEPS.find((one) => one === step);
  const offer = known && { step: known, lot, lots: Number(lots), heads: Number(heads) };
  return offer !== undefined && writeOffer(offer) === said ? offer : undefined;
}

/** The work that an offer is about, where it waits just as it was offered. */
export const offered = (ready: readonly Ready[], offer: Offer): Ready | undefined =>
  ready.find((work) => writeOffer(offerOf(work)) === writeOffer(offer));

/** Why an offer no longer stands: it is over, it runs, its lot has left the bench, or other heads have come to it or gone. */
export type Passed = 'done' | 'running' | 'gone' | 'other';

export function passedBy(lot: Lot | undefined, { step }: Offer): Passed {
  if (lot === undefined) return 'gone';
  const state = stepOf(lot, step)?.state;
  return state === 'done' || state === 'running' ? state : 'other';
}
