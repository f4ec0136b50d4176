import { distance } from 'fastest-levenshtein';

/** The word that `said` was most likely meant to be, capitals aside; undefined when none is near.
 *  @example nearestOf('footbal', ['ball', 'football']) //=> 'football' */
export function nearestOf(said: string, words: readonly string[]): string | undefined {
  if (said.length > LONGEST) return undefined;
  const [best] = words
    .map((word) => [word, distance(said.toLowerCase(), word.toLowerCase())] as const)
    .sort(byDistance);
  return best !== undefined && best[1] <= slips(best[0].length) ? best[0] : undefined;
}

/** Longer than any name, so that pasted text costs nothing. */
const LONGEST = 200;

/** How many slips of the finger still leave a word of so many letters recognizable. */
const slips = (letters: number): number => Math.min(letters / 2, Math.max(2, letters / 3));

const byDistance = (a: readonly [string, number], b: readonly [string, number]): number => a[1] - b[1];
