import type { Draft } from './draft.ts';
import { DIVIDED } from './reader/language/places.ts';

/** A country that was named where its state or province is wanted; undefined where none was. @example dividedCountry('Canada') //=> 'CA' */
export function dividedCountry(said: string): string | undefined {
  const named = plain(said);
  return Object.keys(DIVIDED).find((country) => DIVIDED[country]?.split(',').some((name) => plain(name) === named));
}

/** The country whose part is still to be said. */
export const partAsked = ({ shipTo, unclear }: Draft): string | undefined =>
  shipTo === null
    ? unclear.flatMap(({ slot, said }) => (slot === 'shipTo' ? (dividedCountry(said) ?? []) : []))[0]
    : undefined;

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replaceAll(/^(?:the|to|in|los|las|a|en)\s+|[.!]/g, '')
    .replaceAll(/\s+/g, ' ');
