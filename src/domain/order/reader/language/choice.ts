import type { Token } from '../tokens.ts';

/** The language of a message: that of which it holds the most small words, the first when it holds none. */
export function languageOf<L extends Readonly<{ lexicon: Readonly<{ signs: ReadonlySet<string> }> }>>(
  tokens: readonly Token[],
  languages: readonly [L, ...L[]] | readonly L[],
): L {
  const counts = languages.map(({ lexicon: { signs } }) =>
    tokens.reduce((sum, { stem }) => sum + Number(signs.has(stem)), 0),
  );
  const best = counts.indexOf(Math.max(...counts));
  return languages[best] as L;
}
