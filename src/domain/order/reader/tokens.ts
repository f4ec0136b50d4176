/** The message cut into words, numbers and marks; `from` and `to` point into the message as it was sent. */

export type TokenKind = 'word' | 'number' | 'fraction' | 'aught' | 'day' | 'noise' | 'mark' | 'line';
export type Token = Readonly<{
  kind: TokenKind;
  /** Lower case, accents and plural taken off, so that `Footballs` and `football` are one word. */
  stem: string;
  /** As sent, lower case. */
  text: string;
  from: number;
  to: number;
  /** Whether it touches the token before: `1/2oz` is two tokens, the second glued. */
  glued: boolean;
  /** Whether it is a word written in capitals. */
  large: boolean;
}>;

/** By what each kind is known, tried in this order; the first is only the commonest kind of word, found without asking for more. */
const SHAPES: readonly (readonly [TokenKind, string])[] = [
  ['word', String.raw`[a-zA-Z]+(?![\p{L}\p{M}'’@/:-]|\.\w)`],
  [
    'noise',
    String.raw`https?:\S+|\S+@\S+\.\w+|\+?(?:\d[-. ])?\(?\d{3}\)?[-. ]\d{3}[-. ]\d{4}(?!\d)|(?<!\d)\d{3}-\d{4}(?!\d)|[$€£]\s?\d[\d,]*(?:\.\d\d)?|\d{1,3}(?:,\d{3})*\.\d\d\s?(?:bucks|dollars)|\d{1,2}:\d\d|(?<![\p{L}\d])\p{L}-\d{3,}`,
  ],
  ['day', String.raw`(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[/-]\d{1,2}[/-](?:\d{4}|\d{2}))(?!\d)`],
  ['aught', String.raw`\d{1,2}(?:\s?\/\s?|-)(?:0(?!\d)|[oO](?!\p{L}{2}))`],
  ['fraction', String.raw`\d{1,3}\s?[/⁄]\s?\d{1,3}|[½¼¾⅛⅜⅝⅞⅓⅔]`],
  ['number', String.raw`\d{1,3}(?:,\d{3})+|\d*\.\d+|\d+`],
  ['word', String.raw`[wW]\/(?:[oO](?:ut)?(?!\p{L}))?|\p{L}\p{M}*(?:[\p{L}\p{M}]|['’](?=\p{L}))*`],
  ['line', String.raw`[\n\r]\s*`],
  ['mark', String.raw`\S`],
];
const PATTERN = new RegExp(SHAPES.map(([, shape]) => `(${shape})`).join('|'), 'gu');

/** The tokens of a message, in order.
 *  @example tokensOf('20 1/2oz').map((token) => token.stem) //=> ['20', '1/2', 'oz'] */
export function tokensOf(said: string): readonly Token[] {
  const tokens: Token[] = [];
  let end = -1;
  for (const match of said.matchAll(PATTERN)) {
    const [raw] = match;
    const kind = kindOf(match);
    const { text, stem } = match[COMMONEST] === undefined ? written(kind, raw) : plainly(raw);
    const large = kind === 'word' && !isSmall(raw) && raw === raw.toUpperCase();
    const [from, glued] = [match.index, match.index === end];
    end = from + raw.length;
    tokens.push({ kind, stem, text, from, to: end, glued, large });
  }
  return withoutHyphens(tokens);
}

function kindOf(groups: RegExpExecArray): TokenKind {
  for (let at = 0; at < SHAPES.length; at += 1) if (groups[at + 1] !== undefined) return SHAPES[at]?.[0] ?? 'mark';
  return 'mark';
}

/** The group of the commonest words, which are all ASCII letters. */
const COMMONEST = 1;

function plainly(raw: string): Readonly<{ text: string; stem: string }> {
  const text = raw.toLowerCase();
  return { text, stem: singular(text) };
}

const isSmall = (raw: string): boolean => raw.charCodeAt(0) >= 97 && raw.charCodeAt(0) <= 122;

function written(kind: TokenKind, raw: string): Readonly<{ text: string; stem: string }> {
  const lower = raw.toLowerCase();
  const text = lower.includes('’') ? lower.replaceAll('’', "'") : lower;
  if (kind === 'word') return { text, stem: stemOf(text) };
  if (kind === 'fraction') return { text, stem: VULGAR[text] ?? text.replace('⁄', '/').replaceAll(' ', '') };
  if (kind === 'aught') return { text, stem: `${Number.parseInt(text, 10)}/0` };
  if (kind === 'number') return { text, stem: text.replaceAll(/,(?=\d{3})/g, '') };
  return { text, stem: kind === 'line' ? '\n' : text };
}

/** A word without accents and without its plural's s. @example stemOf('Marrón') //=> 'marron' */
export function stemOf(word: string): string {
  const lower = word.toLowerCase();
  const plain = /^\p{ASCII}*$/u.test(lower) ? lower : lower.normalize('NFD').replaceAll(/\p{M}/gu, '');
  const full = plain.endsWith("'n") ? `${plain.slice(0, -2)}in` : plain;
  const apart = full.endsWith("'re") ? `${full.slice(0, -3)}are` : full;
  const bare = apart.endsWith("'s") ? apart.slice(0, -2) : apart.replaceAll("'", '');
  return singular(bare);
}

const singular = (word: string): string =>
  word.length > 3 && word.endsWith('s') && !'sui'.includes(word.at(-2) ?? '') ? word.slice(0, -1) : word;

/** A hyphen that joins a word to its neighbour only holds them together; between digits it says something. */
function withoutHyphens(tokens: readonly Token[]): readonly Token[] {
  return tokens.filter((token, at) => {
    if (token.kind !== 'mark' || !token.glued || !'-‐‑'.includes(token.stem)) return true;
    const next = tokens[at + 1];
    const before = tokens[at - 1];
    return !(next?.glued && (next.kind === 'word' || before?.kind === 'word'));
  });
}

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};
