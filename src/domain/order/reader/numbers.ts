import type { LanguageWords } from './language/language.ts';
import type { Token } from './tokens.ts';

/** A count said in digits or words, and where it ends; `sure` when its words can only count heads (a dozen). */
export type Counted = Readonly<{ count: number; until: number; sure: boolean }>;

/** The count that begins at a token.
 *  @example countAt(tokensOf('a couple dozen'), 0, ENGLISH) //=> { count: 24, until: 3, sure: true } */
export function countAt(tokens: readonly Token[], from: number, language: LanguageWords): Counted | undefined {
  const plain = plainAt(tokens, from, language);
  const dozen = dozenAt(tokens, plain?.until ?? from, plain?.count ?? 1, language);
  const halfDozen = halfDozenAt(tokens, from, language);
  if (halfDozen) return halfDozen;
  if (dozen) return dozen;
  return plain && !isArticle(tokens, from, plain) ? { ...plain, sure: false } : undefined;
}

function plainAt(
  tokens: readonly Token[],
  from: number,
  language: LanguageWords,
): Readonly<{ count: number; until: number }> | undefined {
  const token = tokens[from];
  if (token?.kind === 'number')
    return /^\d{1,5}$/.test(token.stem) ? { count: Number(token.stem), until: from + 1 } : undefined;
  return token?.kind === 'word' ? wordsAt(tokens, from, language.numbers) : undefined;
}

/** Number words add up as they fall (forty five), and multiply before a hundred. */
function wordsAt(
  tokens: readonly Token[],
  from: number,
  numbers: LanguageWords['numbers'],
): Readonly<{ count: number; until: number }> | undefined {
  let count = 0;
  let last = Infinity;
  let until = from;
  for (; until < tokens.length; until += 1) {
    const stem = tokens[until]?.stem ?? '';
    const value = numbers[stem];
    if (value === undefined) {
      if (
        JOINS.has(stem) &&
        count >= 30 &&
        (numbers[tokens[until + 1]?.stem ?? ''] ?? 100) < Math.min(last, 100) &&
        last !== 1
      )
        continue;
      break;
    }
    if (last === 1 && LOOSE.has(stem)) count = value;
    else if (value >= 100 && value > last) count = (count === 0 ? 1 : count) * value;
    else if (value < last && (last === Infinity || (last >= 20 && value < 10) || last >= 100)) count += value;
    else break;
    last = value;
  }
  return until === from ? undefined : { count, until };
}
const JOINS: ReadonlySet<string> = new Set(['and', 'y']);

/** A dozen, five dozen, a couple of dozen, a dozen and a half. */
function dozenAt(tokens: readonly Token[], at: number, count: number, language: LanguageWords): Counted | undefined {
  const place = OF.has(tokens[at]?.stem ?? '') ? at + 1 : at;
  if (!language.dozens.includes(tokens[place]?.stem ?? '')) return undefined;
  const half = HALVES.find((words) => words.every((word, offset) => tokens[place + 1 + offset]?.stem === word));
  return { count: count * 12 + (half ? 6 : 0), until: place + 1 + (half?.length ?? 0), sure: true };
}
const OF: ReadonlySet<string> = new Set(['of', 'de']);
const HALVES = [
  ['and', 'a', 'half'],
  ['and', 'half'],
  ['y', 'media'],
] as const;

function halfDozenAt(tokens: readonly Token[], from: number, language: LanguageWords): Counted | undefined {
  const at = tokens[from]?.stem === 'a' ? from + 1 : from;
  const next = tokens[at + 1]?.stem === 'a' ? at + 2 : at + 1;
  const isHalf = tokens[at]?.stem === 'half' || tokens[at]?.stem === 'media';
  return isHalf && language.dozens.includes(tokens[next]?.stem ?? '')
    ? { count: 6, until: next + 1, sure: true }
    : undefined;
}

/** `a` and `one` alone count nothing; `a couple` alone is too loose. */
const isArticle = (
  tokens: readonly Token[],
  from: number,
  { until, count }: Readonly<{ count: number; until: number }>,
): boolean =>
  tokens[from]?.kind === 'word' && (count === 1 || (LOOSE.has(tokens[until - 1]?.stem ?? '') && count <= 2));
const LOOSE: ReadonlySet<string> = new Set(['couple', 'pair', 'par']);
