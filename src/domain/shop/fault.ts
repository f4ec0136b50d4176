import { nearestOf } from './nearest.ts';

/** One thing that is wrong in the shop file: where it stands, what stands there, what may stand there, and the right word it most resembles. */
export type Fault = Readonly<{ path: string; found: string; allowed: string; nearest?: string }>;

/** The names and list places that lead to a value, from the outside in. */
export type Path = readonly PropertyKey[];

/** The fault as one line.
 *  @example sayFault({ path: 'molds[2].style', found: '"bal"', allowed: 'ball or swim', nearest: 'ball' })
 *  //=> 'molds[2].style: found "bal"; allowed: ball or swim; nearest: ball' */
export const sayFault = ({ path, found, allowed, nearest }: Fault): string =>
  `${path}: found ${found}; allowed: ${allowed}${nearest === undefined ? '' : `; nearest: ${nearest}`}`;

export const faultAt = (path: Path, found: unknown, allowed: string, nearest?: string): Fault => ({
  path: sayPath(path),
  found: sayFound(found),
  allowed,
  ...(nearest === undefined ? {} : { nearest }),
});

/** A fault for a name that no entry has; none when the name is absent, or when the list of names cannot be trusted. */
export const unknownName = (path: Path, said: string | undefined, known: readonly string[] | undefined): Fault[] =>
  said === undefined || known === undefined || known.includes(said)
    ? []
    : [faultAt(path, said, anyOf(known), nearestOf(said, known))];

/** A fault for every value that was already there under the same key. */
export function repeated(said: readonly (readonly [path: Path, key: string | undefined])[], what: string): Fault[] {
  const firsts = new Map<string, Path>();
  return said.flatMap(([path, key]) => {
    const first = key === undefined ? path : firsts.get(key);
    if (key !== undefined && first === undefined) firsts.set(key, path);
    return first === undefined || first === path
      ? []
      : [faultAt(path, key, `${what} only once, and ${sayPath(first)} has it already`)];
  });
}

/** The way to a value as one would write it. @example sayPath(['molds', 2, 'hooks', 0]) //=> 'molds[2].hooks[0]' */
export const sayPath = (path: Path): string =>
  path.length === 0 ? 'the shop file' : path.map(sayStep).join('').replace(/^\./, '');

/** Words as a choice; a long list is cut. @example anyOf(['a', 'b', 'c']) //=> 'a, b or c' */
export function anyOf(words: readonly string[]): string {
  if (words.length === 0) return 'nothing, for the list is empty';
  if (words.length > MOST_WORDS)
    return `${words.slice(0, MOST_WORDS).join(', ')} or ${words.length - MOST_WORDS} others`;
  return [words.slice(0, -1).join(', '), words.at(-1)].filter(Boolean).join(' or ');
}

const MOST_WORDS = 20;
const MOST_LETTERS = 60;

const sayStep = (step: PropertyKey): string => {
  if (typeof step === 'number') return `[${step}]`;
  return /^[\w-]+$/.test(String(step)) ? `.${String(step)}` : `[${quoted(String(step))}]`;
};

const sayFound = (found: unknown): string => (found === undefined ? 'nothing' : quoted(found));

/** The value as JSON on one line, cut when it is long. */
function quoted(value: unknown): string {
  const said = JSON.stringify(value).replace(/[\u2028\u2029]/g, ' ');
  return said.length > MOST_LETTERS ? `${said.slice(0, MOST_LETTERS)}…` : said;
}
