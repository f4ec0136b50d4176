import type { Fault } from './fault.ts';

/** The first place where a text is not JSON, or says a name twice in one group, with its line and column; undefined when all is well.
 *  JSON.parse tells no reliable place, and of a name said twice it silently keeps the last. */
export function textFault(text: string): Fault | undefined {
  const open: Group[] = [];
  let awaited: Awaited = 'value';
  for (let at = 0; ;) {
    const token = tokenAt(text, at);
    const move: Move | undefined = MOVES[awaited][token.kind];
    if (move === 'done') return undefined;
    if (move === undefined) return faultIn(text, token, EXPECTED[awaited]);
    if (move === 'named' && isSaidTwice(token, open)) return faultIn(text, token, 'each name only once in its group');
    awaited = moved(move, token, open);
    at = token.end;
  }
}

type Group = Readonly<{ bracket: '{' | '['; names: Set<string> }>;
type Kind = 'value' | 'text' | '{' | '}' | '[' | ']' | ':' | ',' | 'end' | 'strange';
type Token = Readonly<{ kind: Kind; said: string; start: number; end: number }>;
type Awaited = 'value' | 'value or ]' | 'name' | 'name or }' | ':' | ', or }' | ', or ]' | 'end';
type Move = 'open' | 'close' | 'whole' | 'named' | 'value' | 'name' | 'done';

/** What may come, in words. */
const EXPECTED: Readonly<Record<Awaited, string>> = {
  value: 'a value: text in double quotes, a number, true, false, null, { or [',
  'value or ]': 'a value, or ] to end the list',
  name: 'a name in double quotes, for a comma promises one more',
  'name or }': 'a name in double quotes, or } to end the group',
  ':': 'a colon after the name',
  ', or }': 'a comma, or } to end the group',
  ', or ]': 'a comma, or ] to end the list',
  end: 'nothing after the last bracket',
};

/** The grammar of RFC 8259: where each kind of token leads; nowhere when it may not come. */
const MOVES: Readonly<Record<Awaited, Readonly<Partial<Record<Kind, Move>>>>> = {
  value: { value: 'whole', text: 'whole', '{': 'open', '[': 'open' },
  'value or ]': { value: 'whole', text: 'whole', '{': 'open', '[': 'open', ']': 'close' },
  name: { text: 'named' },
  'name or }': { text: 'named', '}': 'close' },
  ':': { ':': 'value' },
  ', or }': { ',': 'name', '}': 'close' },
  ', or ]': { ',': 'value', ']': 'close' },
  end: { end: 'done' },
};

function moved(move: Exclude<Move, 'done'>, { kind }: Token, open: Group[]): Awaited {
  if (move === 'value' || move === 'name') return move;
  if (move === 'named') return ':';
  if (move === 'open') open.push({ bracket: kind === '{' ? '{' : '[', names: new Set() });
  if (move === 'open') return kind === '{' ? 'name or }' : 'value or ]';
  if (move === 'close') open.pop();
  const around = open.at(-1)?.bracket;
  if (around === undefined) return 'end';
  return around === '{' ? ', or }' : ', or ]';
}

/** Whether the group has the name already; it has it from now on. */
function isSaidTwice({ said }: Token, open: readonly Group[]): boolean {
  const names = open.at(-1)?.names;
  const name = String(JSON.parse(said));
  const isKnown = names?.has(name) ?? false;
  names?.add(name);
  return isKnown;
}

/** White space, then text, another plain value, a mark, the end, or something strange. */
const TOKEN =
  /[ \t\n\r]*(?:("(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*")|(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])|(?:true|false|null)(?!\w))|([{}[\]:,])|($)|([^]\S{0,19}))/y;

function tokenAt(text: string, at: number): Token {
  TOKEN.lastIndex = at;
  const [whole = '', words, value, mark, end] = TOKEN.exec(text) ?? [];
  const said = whole.replace(/^[ \t\n\r]+/, '');
  const place = { said, start: at + whole.length - said.length, end: at + whole.length };
  if (words !== undefined) return { kind: 'text', ...place };
  if (value !== undefined) return { kind: 'value', ...place };
  if (mark !== undefined) return { kind: mark as Kind, ...place };
  return { kind: end === undefined ? 'strange' : 'end', ...place };
}

function faultIn(text: string, { kind, said, start }: Token, allowed: string): Fault {
  const lines = text.slice(0, start).split('\n');
  const path = `line ${lines.length}, column ${(lines.at(-1)?.length ?? 0) + 1}`;
  return { path, found: kind === 'end' ? 'the end of the text' : JSON.stringify(said.slice(0, 40)), allowed };
}
