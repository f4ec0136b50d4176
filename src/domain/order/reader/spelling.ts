import { distance } from 'fastest-levenshtein';

/** Sets misspelled words of the trade right, and leaves every other word alone. */
export type Spelling = Readonly<{
  /** Trade words of one word. */
  whole: ReadonlySet<string>;
  /** With what a longer trade word may begin: `foot` of `football`. */
  beginnings: ReadonlySet<string>;
  /** Trade words, and the words of everyday. */
  known: ReadonlySet<string>;
  repair: (stem: string) => string;
}>;

const SHORTEST = 5;
const LONG = 9;

/** Words are compared only if a letter left out of both leaves the same rest, so that a look-up costs a few map reads.
 *  @example spellingOf(['flipping'], []).repair('flippng') //=> 'flipping' */
export function spellingOf(
  words: readonly string[],
  common: readonly string[],
  short: Readonly<Record<string, string>> = {},
): Spelling {
  const known = new Set([...words, ...common]);
  const near = new Map<string, string[]>();
  for (const word of new Set(words.filter((word) => word.length >= SHORTEST - 1 && /^\p{L}+$/u.test(word))))
    for (const rest of rests(word)) near.set(rest, [...(near.get(rest) ?? []), word]);
  // A longer word cannot be a slip of any of them; looking would cost the cube of its length.
  const longest = Math.max(0, ...words.map((word) => word.length)) + 2;
  const isLeftAlone = (stem: string): boolean => known.has(stem) || stem.length < SHORTEST - 1 || stem.length > longest;
  const whole = new Set(words);
  return {
    whole,
    known,
    beginnings: new Set(words.flatMap((word) => Array.from(word, (_, at) => word.slice(0, at)))),
    repair: remembered(
      (stem) => short[stem] ?? (isLeftAlone(stem) ? stem : (nearest(stem, near) ?? undoubled(stem, whole))),
    ),
  };
}

/** `swimm`, `balll`: a short word with a letter typed twice. */
function undoubled(stem: string, whole: ReadonlySet<string>): string {
  const at = [...stem].findIndex((letter, place) => letter === stem[place + 1]);
  const once = stem.slice(0, at) + stem.slice(at + 1);
  return at !== -1 && whole.has(once) ? once : stem;
}

/** People use the same words again and again: the last few thousand answers are kept. */
function remembered(answer: (word: string) => string): (word: string) => string {
  const kept = new Map<string, string>();
  return (word) => {
    const before = kept.get(word);
    if (before !== undefined) return before;
    if (kept.size >= KEPT) kept.clear();
    const found = answer(word);
    kept.set(word, found);
    return found;
  };
}
const KEPT = 4096;

/** The one word that a slip of the finger makes of another; undefined when there is none, or two. */
function nearest(stem: string, near: ReadonlyMap<string, readonly string[]>): string | undefined {
  const found = new Set(
    rests(stem)
      .flatMap((rest) => near.get(rest) ?? [])
      .filter((word) => isSlip(stem, word)),
  );
  const best = [...found].toSorted((a, b) => distance(stem, a) - distance(stem, b));
  const [first, second] = best;
  return first !== undefined && (second === undefined || distance(stem, first) < distance(stem, second))
    ? first
    : undefined;
}

function isSlip(stem: string, word: string): boolean {
  if (word.length < SHORTEST) return stem[0] === word[0] && isSwap(stem, word);
  if (stem[0] !== word[0] && stem.length < LONG) return distance(stem, word) === 1 && stem.length > word.length;
  const far = distance(stem, word);
  return far === 1 || (far === 2 && (isSwap(stem, word) || (word.length >= LONG && stem.length >= LONG - 1)));
}

/** Two neighbouring letters the other way round. */
function isSwap(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  const at = [...a].findIndex((letter, place) => letter !== b[place]);
  return a[at] === b[at + 1] && a[at + 1] === b[at] && a.slice(at + 2) === b.slice(at + 2);
}

/** The word, and the word with one letter left out; two for a long one. */
function rests(word: string): readonly string[] {
  const one = without(word);
  return word.length < LONG - 1 ? [word, ...one] : [word, ...one, ...one.flatMap(without)];
}

const without = (word: string): readonly string[] =>
  Array.from(word, (_, at) => word.slice(0, at) + word.slice(at + 1));
