import type { Finding } from './finding.ts';

/** Slots in which the maker can agree to something that the shop file does not hold: what is put on a head, not what it is cast in. */
export const WISH_SLOTS = ['paint', 'guard', 'dressing'] as const;
export type WishSlot = (typeof WISH_SLOTS)[number];

export const isWishSlot = (slot: string): slot is WishSlot => WISH_SLOTS.some((one) => one === slot);

/** Names a finding so that the maker's word on it can be kept: its line, its code and what it is about.
 *  Postage has to be priced first, so it cannot simply be let pass. */
export function passKey({ line, why }: Finding): string {
  const about = 'item' in why ? why.item : 'row' in why ? why.row : '';
  return `${line}:${why.code}:${about}`;
}

export const mayPass = ({ kind, why }: Finding): boolean => kind === 'ask' && why.code !== 'no-postage';
