import type { Spelling } from './spelling.ts';
import type { Token } from './tokens.ts';

/** The tokens with misspelled trade words set right and words written apart joined: `foot ball`, `flippng`. */
export function respelled(tokens: readonly Token[], spelling: Spelling): readonly Token[] {
  const out: Token[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at] as Token;
    const joined = joinedAt(token, tokens[at + 1], spelling);
    if (joined) at += 1;
    out.push(joined ?? repaired(token, spelling));
  }
  return out;
}

function repaired(token: Token, { repair }: Spelling): Token {
  if (token.kind !== 'word') return token;
  const stem = repair(token.stem);
  return stem === token.stem ? token : { ...token, stem };
}

const LONG_ENOUGH = 7;

function joinedAt(token: Token, next: Token | undefined, { whole, beginnings }: Spelling): Token | undefined {
  if (token.kind !== 'word' || next?.kind !== 'word' || !beginnings.has(token.text)) return undefined;
  const stem = token.text + next.stem;
  return stem.length >= LONG_ENOUGH && whole.has(stem)
    ? { ...token, stem, text: token.text + next.text, to: next.to }
    : undefined;
}
