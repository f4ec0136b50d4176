import { fraction, grams, type Weight } from '../../craft/weight.ts';
import type { LanguageWords } from './language/language.ts';
import { countAt, type Counted } from './numbers.ts';
import type { Token } from './tokens.ts';
import { listed } from './phrases.ts';

export type Sized = Readonly<{ slot: 'weight' | 'hook'; value: string | null; until: number }>;

/** Words that mark a number as a weight or as a hook, ready to be looked up. */
export type SizeWords = Readonly<Record<'unit' | 'gram' | 'size' | 'aught', ReadonlySet<string>>>;

export const sizeWordsOf = ({ grammar }: LanguageWords): SizeWords => ({
  unit: setOf(grammar.unit),
  gram: setOf(grammar.gram),
  size: setOf(grammar.size),
  aught: setOf(grammar.aught),
});

/** The weight or the hook that begins at a token; `count` is the count that begins there; a metric weight is read against the weights that the molds have.
 *  @example sizeAt(tokensOf('3/8ths'), 0, …) //=> { slot: 'weight', value: '3/8', until: 2 } */
export function sizeAt(
  tokens: readonly Token[],
  at: number,
  count: Counted | undefined,
  { language, sizes, weights }: SizeLight,
): Sized | undefined {
  return hookAt(tokens, at, count, { language, sizes }) ?? weightAt(tokens, at, language, sizes, weights);
}

/** What a size is read by. */
export type SizeLight = Readonly<{ language: LanguageWords; sizes: SizeWords; weights: readonly Weight[] }>;

function hookAt(
  tokens: readonly Token[],
  at: number,
  count: Counted | undefined,
  { language, sizes: { size, aught } }: Omit<SizeLight, 'weights'>,
): Sized | undefined {
  const token = tokens[at];
  if (token?.kind === 'aught') return { slot: 'hook', value: token.stem, until: past(tokens, at + 1) };
  const counted = count ?? single(tokens, at);
  if (counted && counted.count <= MOST && aught.has(tokens[counted.until]?.stem ?? ''))
    return isOunceZero(tokens, counted.until)
      ? undefined
      : { slot: 'hook', value: `${counted.count}/0`, until: counted.until + 1 };
  if (token?.stem !== '#' && !size.has(token?.stem ?? '')) return undefined;
  return sizedAt(tokens, at + 1, language, { size, aught });
}
const MOST = 12;
/** A bare nought after a number is an aught only if written as a word. */
const isOunceZero = (tokens: readonly Token[], at: number): boolean =>
  /^[0o]$/.test(tokens[at]?.stem ?? '') && !tokens[at]?.glued;

/** What follows `size`, `number` or `#`. */
function sizedAt(
  tokens: readonly Token[],
  from: number,
  language: LanguageWords,
  { size, aught }: Pick<SizeWords, 'size' | 'aught'>,
): Sized | undefined {
  let at = from;
  while (SKIPPED.has(tokens[at]?.stem ?? '') || size.has(tokens[at]?.stem ?? '')) at += 1;
  const token = tokens[at];
  if (token?.kind === 'aught') return { slot: 'hook', value: token.stem, until: past(tokens, at + 1) };
  const counted = countAt(tokens, at, language) ?? single(tokens, at);
  if (!counted || counted.sure || counted.count > MOST || counted.count === 0) return undefined;
  const isAught = aught.has(tokens[counted.until]?.stem ?? '');
  return {
    slot: 'hook',
    value: isAught ? `${counted.count}/0` : String(counted.count),
    until: counted.until + Number(isAught),
  };
}
const SKIPPED: ReadonlySet<string> = new Set(['#', ':', '.', 'is', 'hook', 'of', '=']);

/** `one`, which is no count of heads but is a size. */
const single = (tokens: readonly Token[], at: number) =>
  tokens[at]?.stem === 'one' || tokens[at]?.stem === 'uno' ? { count: 1, until: at + 1, sure: false } : undefined;

function weightAt(
  tokens: readonly Token[],
  at: number,
  language: LanguageWords,
  words: SizeWords,
  weights: readonly Weight[],
): Sized | undefined {
  const mixed = mixedAt(tokens, at, words);
  if (mixed) return mixed;
  const token = tokens[at];
  if (token?.kind === 'fraction') return fractionAt(token, tokens, at, words);
  if (token?.kind === 'number')
    return decimalAt(token, tokens, at, words, weights) ?? wordFraction(tokens, at, language, words);
  return token?.kind === 'word'
    ? (wordFraction(tokens, at, language, words) ?? wholeAt(tokens, at, language, words))
    : undefined;
}

function fractionAt(token: Token, tokens: readonly Token[], at: number, words: SizeWords): Sized | undefined {
  const [over = 0, under = 0] = token.stem.split('/').map(Number);
  const isWeighed = DIVISIONS.has(under) || words.unit.has(tokens[at + 1]?.stem ?? '');
  if (!isWeighed || under === 0 || over >= under * 2) return undefined;
  return weightSaid(fraction(over, under) ?? null, tokens, at + 1, words);
}
const DIVISIONS: ReadonlySet<number> = new Set([2, 4, 8, 16, 32, 64]);

/** `1 1/2 oz`; `12 1/2 oz` is twelve heads of half an ounce. */
function mixedAt(tokens: readonly Token[], at: number, words: SizeWords): Sized | undefined {
  const [whole, part] = [tokens[at], tokens[at + 1]];
  if (whole?.kind !== 'number' || part?.kind !== 'fraction' || !/^[1-3]$/.test(whole.stem)) return undefined;
  if (!part.glued && !words.unit.has(tokens[at + 2]?.stem ?? '')) return undefined;
  const [over = 0, under = 1] = part.stem.split('/').map(Number);
  return weightSaid(fraction(Number(whole.stem) * under + over, under) ?? null, tokens, at + 2, words);
}

/** `.25`, `0.375 oz`, `1 oz`, `7 g`. */
function decimalAt(
  token: Token,
  tokens: readonly Token[],
  at: number,
  words: SizeWords,
  weights: readonly Weight[],
): Sized | undefined {
  const next = tokens[at + 1]?.stem ?? '';
  const said = Number(token.stem);
  if (words.gram.has(next) && (tokens[at + 1]?.glued || next !== 'gr'))
    return { slot: 'weight', value: metric(token.stem, weights) ?? null, until: at + 2 };
  if (token.stem.includes('.'))
    return said < 2 || words.unit.has(next)
      ? weightSaid(ofDecimal(said, token.stem), tokens, at + 1, words)
      : undefined;
  return words.unit.has(next) && said <= 8 ? weightSaid(String(said), tokens, at + 1, words) : undefined;
}

/** The nearest sixty-fourth, if the decimal is that sixty-fourth rounded or cut. */
function ofDecimal(said: number, written: string): Weight | null {
  const parts = Math.round(said * 64);
  const step = 10 ** -(written.split('.')[1]?.length ?? 0);
  return parts > 0 && Math.abs(parts / 64 - said) < step ? (fraction(parts, 64) ?? null) : null;
}

/** The mold's rating that these grams are, rounded, cut, or within a sixtieth. */
function metric(written: string, weights: readonly Weight[]): Weight | undefined {
  const said = Number(written);
  const step = 10 ** -(written.split('.')[1]?.length ?? 0);
  const near = weights.filter(
    (weight) =>
      (grams(weight) - said < step && said - grams(weight) <= step / 2) || Math.abs(grams(weight) / said - 1) < 1 / 60,
  );
  const best = near.toSorted((a, b) => Math.abs(grams(a) - said) - Math.abs(grams(b) - said));
  return best[0];
}

/** `half ounce`, `three eighths`, `quarter`, `one oz`. */
function wordFraction(
  tokens: readonly Token[],
  at: number,
  { fractions, numbers }: LanguageWords,
  words: SizeWords,
): Sized | undefined {
  const over = topOf(tokens[at], numbers);
  const counted = over !== undefined && fractions[tokens[at + 1]?.stem ?? ''] !== undefined;
  const place = counted ? at + 1 : at;
  const named = tokens[place];
  const under = fractions[named?.stem ?? ''];
  if (under === undefined || named?.kind !== 'word') return undefined;
  const hasUnit = words.unit.has(tokens[place + 1]?.stem ?? '');
  if (!hasUnit && (under === 2 || (under === 8 && named.stem === 'eight'))) return undefined;
  if (!hasUnit && !counted && !isPlural(named) && !STANDS_ALONE.has(named.stem)) return undefined;
  const value = fraction(counted ? over : 1, under) ?? null;
  return over !== undefined && counted && over >= under ? undefined : weightSaid(value, tokens, place + 1, words);
}
const STANDS_ALONE: ReadonlySet<string> = new Set(['quarter', 'eighth', 'eigth', 'cuarto', 'octavo', 'sixteenth']);
const isPlural = ({ text }: Token): boolean => text.endsWith('s');
const topOf = (token: Token | undefined, numbers: LanguageWords['numbers']): number | undefined =>
  token?.kind === 'number' && /^\d{1,2}$/.test(token.stem) ? Number(token.stem) : numbers[token?.stem ?? ''];

function wholeAt(
  tokens: readonly Token[],
  at: number,
  { numbers }: LanguageWords,
  words: SizeWords,
): Sized | undefined {
  const said = numbers[tokens[at]?.stem ?? ''];
  return said !== undefined && said <= 8 && words.unit.has(tokens[at + 1]?.stem ?? '')
    ? weightSaid(String(said), tokens, at + 1, words)
    : undefined;
}

const weightSaid = (value: Weight | null, tokens: readonly Token[], from: number, { unit }: SizeWords): Sized => {
  const until = past(tokens, from);
  const [of, an, ounce] = [tokens[until]?.stem, tokens[until + 1]?.stem, tokens[until + 2]?.stem ?? ''];
  if (of === 'of' && an === 'an' && unit.has(ounce)) return { slot: 'weight', value, until: until + 3 };
  if (of === 'de' && unit.has(an ?? '')) return { slot: 'weight', value, until: until + 2 };
  return { slot: 'weight', value, until: unit.has(of ?? '') ? until + 1 : until };
};

/** Past an ending that was written on to a number: 1/4's, 3/8ths. */
const past = (tokens: readonly Token[], at: number): number => {
  const token = tokens[at];
  if (token?.stem === "'" && tokens[at + 1]?.stem === 's') return at + 2;
  return token?.glued && ENDINGS.has(token.stem) ? at + 1 : at;
};
const ENDINGS: ReadonlySet<string> = new Set(['s', 'th', 'ths', "'s", 'nd', 'er', 'ers']);

const setOf = (phrases: string | undefined): ReadonlySet<string> => new Set(listed(phrases ?? ''));
