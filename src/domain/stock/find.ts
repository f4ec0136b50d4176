import { distance } from 'fastest-levenshtein';
import type { ItemId } from '../shop/shop.ts';
import type { NamedItem } from './words.ts';

/** The items that words may mean: one when they are clear, several when they fit more than one, none when a word fits nothing.
 *  A name said whole wins over one said in part, so “lead” is lead and not hard lead. */
export function itemsMeant(items: readonly NamedItem[], said: readonly string[]): readonly ItemId[] {
  if (said.length === 0) return [];
  const words = said.map((word) => spelled(items, word));
  const fit = items.filter((one) => words.every((word) => one.words.has(word)));
  const whole = fit.filter((one) => one.names.some((name) => name.every((word) => words.includes(word))));
  return (whole.length > 0 ? whole : fit).map(({ item }) => item);
}

/** Shorter words are too easily one letter away from another. */
const LEAST_LETTERS = 4;

/** The word as the shop writes it, if it is one letter, or two that changed places, away from just one of the shop's words. */
function spelled(items: readonly NamedItem[], word: string): string {
  if (word.length < LEAST_LETTERS || items.some(({ words }) => words.has(word))) return word;
  const near = new Set(items.flatMap(({ words }) => [...words].filter((known) => isNear(known, word))));
  const [only, ...others] = near;
  return only !== undefined && others.length === 0 ? only : word;
}

const isNear = (known: string, word: string): boolean =>
  known.length >= LEAST_LETTERS && !/\d/.test(word) && (distance(known, word) === 1 || isSwapped(known, word));

const isSwapped = (known: string, word: string): boolean =>
  known.length === word.length && distance(known, word) === 2 && [...known].sort().join() === [...word].sort().join();
