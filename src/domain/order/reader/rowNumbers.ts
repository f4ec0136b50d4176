import type { Token } from './tokens.ts';

/** `#1: 30 1/8 ball #2: 20 1/4 ball`: numbers that count the rows of a list from 1, at the start of a line or with a colon behind, are no
 *  hooks; not `ball #1. 20 swim #2.`, nor the hooks of `#1: 20 #2: 10`. Each becomes the beginning of its row. */
export function withoutRowNumbers(tokens: readonly Token[]): readonly Token[] {
  const rows = tokens.flatMap((_, at) => rowNumberAt(tokens, at) ?? []);
  if (rows.length < 2 || rows.some(({ number }, place) => number !== place + 1)) return tokens;
  const ends = new Map(rows.map(({ at, until }) => [at, until]));
  let next = 0;
  return tokens.flatMap((token, at) => {
    if (at < next) return [];
    next = ends.get(at) ?? at + 1;
    return next > at + 1 ? [{ ...token, kind: 'line' as const, stem: '\n', text: '\n' }] : [token];
  });
}

type Row = Readonly<{ at: number; until: number; number: number }>;

function rowNumberAt(tokens: readonly Token[], at: number): Row | undefined {
  const [sign, number, behind] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (sign?.text !== '#' || number?.kind !== 'number' || !number.glued) return undefined;
  const isMarked = behind !== undefined && BEHIND.has(behind.text);
  if (!isMarked && at > 0 && tokens[at - 1]?.kind !== 'line') return undefined;
  const until = at + (isMarked ? 3 : 2);
  const isRow = tokens[until]?.kind === 'number' && !ENDS.has(tokens[until + 1]?.text ?? '\n');
  return isRow ? { at, until, number: Number(number.stem) } : undefined;
}

const BEHIND: ReadonlySet<string> = new Set([':', ')']);
/** What a row that says no more than a number is ended by. */
const ENDS: ReadonlySet<string> = new Set(['#', ',', ';', '.', '\n']);
