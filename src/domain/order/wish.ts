import type { Finding } from './finding.ts';

/** Slots in which the maker can agree to something that the shop file does not hold: what is put on a head, not what it is cast in. */
export const WISH_SLOTS = ['paint', 'guard', 'dressing'] as const;
export type WishSlot = (typeof WISH_SLOTS)[number];

export const isWishSlot = (slot: string): slot is WishSlot => WISH_SLOTS.some((one) => one === slot);

/** Longest wish that fits a spec's slot. */
const LONGEST = 38;

/** A slot's value for something agreed with the maker, in the buyer's own words.
 *  @example agreedValue('pink glitter') //=> '~pink glitter' */
export const agreedValue = (said: string): string => `~${said.slice(0, LONGEST)}`;

/** The buyer's words in an agreed value; undefined for a word of the shop file.
 *  @example wordsAgreed('~pink glitter') //=> 'pink glitter' */
export const wordsAgreed = (value: string | undefined): string | undefined =>
  value?.startsWith('~') ? value.slice(1) : undefined;

/** Names a finding so that the maker's word on it can be kept: its line, its code and what it is about.
 *  Postage has to be priced first, so it cannot simply be let pass. */
export function passKey({ line, why }: Finding): string {
  const about = 'item' in why ? why.item : 'row' in why ? why.row : '';
  return `${line}:${why.code}:${about}`;
}

export const mayPass = ({ kind, why }: Finding): boolean => kind === 'ask' && why.code !== 'no-postage';
