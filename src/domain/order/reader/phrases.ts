import { stemOf } from './tokens.ts';

/** A tree of phrases, by first word, then by second…: the longest that the words at hand begin with is found in as many steps as it has words. */
export type Phrases<T> = { readonly next: Map<string, Phrases<T>>; found?: T };

export const noPhrases = <T>(): Phrases<T> => ({ next: new Map() });

/** Adds a phrase while the tree is being built; the first meaning given to a phrase stays unless `join` joins them. */
export function addPhrase<T>(
  tree: Phrases<T>,
  words: readonly string[],
  meaning: T,
  join: (a: T, b: T) => T = (a) => a,
): void {
  let at = tree;
  for (const word of words) {
    const next: Phrases<T> = at.next.get(word) ?? noPhrases<T>();
    at.next.set(word, next);
    at = next;
  }
  at.found = at.found === undefined ? meaning : join(at.found, meaning);
}

/** The longest phrase that begins at `from`, and the place just after it. */
export function phraseAt<T>(
  tree: Phrases<T>,
  words: readonly Readonly<{ stem: string }>[],
  from: number,
): Readonly<{ found: T; until: number }> | undefined {
  let found: T | undefined;
  let end = from;
  let at: Phrases<T> | undefined = tree.next.get(words[from]?.stem ?? '');
  for (let until = from + 1; at; until += 1) {
    if (at.found !== undefined) [found, end] = [at.found, until];
    at = at.next.get(words[until]?.stem ?? '');
  }
  return found === undefined ? undefined : { found, until: end };
}

/** The phrases of a list written with commas. */
export const listed = (phrases: string): readonly string[] =>
  phrases
    .split(',')
    .map((phrase) => phrase.trim().replaceAll(/\s+/g, ' '))
    .filter((phrase) => phrase !== '');

/** The words of a phrase as tokens carry them; a slash stays a word. */
export const stemsOf = (phrase: string): readonly string[] =>
  (phrase.toLowerCase().match(/w\/(?:o(?:ut)?)?(?![\p{L}])|[\p{L}\p{M}'’]+|\d+(?:\/\d+)?|[^\s\p{L}\d-]/gu) ?? []).map(
    stemOf,
  );
