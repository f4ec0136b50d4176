import type { Grammar } from './language/language.ts';
import type { Fact, Item, Mark } from './span.ts';

/** How a clause begins. */
export type Opening = 'start' | 'comma' | 'stop' | 'line' | 'colon' | 'and' | 'number';

/** A stretch of facts that belong together, and the words around them that say what to do with them. */
export type Clause = Readonly<{
  opens: Opening;
  /** Its sentence, counted from 0. */
  sentence: number;
  facts: readonly Fact[];
  /** Values taken back: not 20, instead of black. */
  taken: readonly Fact[];
  words: ReadonlySet<Grammar>;
  asks: boolean;
}>;

type Open = {
  opens: Opening;
  sentence: number;
  facts: Fact[];
  taken: Fact[];
  words: Set<Grammar>;
  asks: boolean;
  negated: boolean;
};

/** The clauses of a message: cut at marks, at `and`, and before a quantity when there is one already. */
export function clausesOf(items: readonly Item[]): readonly Clause[] {
  const clauses: Open[] = [];
  let open = opened('start', 0);
  const cut = (opens: Opening, sentence = open.sentence) => {
    if (open.facts.length + open.taken.length + open.words.size > 0) {
      clauses.push(open);
      open = opened(opens, sentence);
    } else
      open = {
        ...open,
        opens: open.opens === 'start' && clauses.length === 0 ? 'start' : stronger(open.opens, opens),
        sentence,
      };
  };
  const ends = countedLast(items);
  for (const [at, item] of items.entries()) {
    if (item.is === 'mark') {
      if (item.mark === 'question') open.asks = true;
      const opens = OPENINGS[item.mark];
      if (opens) cut(opens, open.sentence + Number(opens === 'stop' || opens === 'line'));
    } else if (item.is === 'fact') {
      takeFact(item, open, cut, () => open);
      if (ends.has(at)) cut('comma');
    } else if (item.is === 'grammar') {
      const refused = refusal(items, at);
      takeWord(refused ?? item.word, open, cut, () => open);
      if (refused) open.words.add('no');
    }
  }
  cut('stop');
  return clauses;
}

/** `black 20 white 20`: where each quantity comes last, it ends its clause. */
function countedLast(items: readonly Item[]): ReadonlySet<number> {
  const ends = new Set<number>();
  let run: number[] = [];
  for (let at = 0; at <= items.length; at += 1) {
    const item = items[at];
    if (item?.is === 'fact') run.push(at);
    else if (item === undefined || item.is === 'mark' || item.is === 'grammar') {
      const counts = run.filter((place) => isQuantity(items[place]));
      if (counts.length > 1 && !isQuantity(items[run[0] ?? -1]) && counts.at(-1) === run.at(-1))
        for (const place of counts) ends.add(place);
      run = [];
    }
  }
  return ends;
}
const isQuantity = (item: Item | undefined): boolean => item?.is === 'fact' && item.slot === 'quantity';

/** `no footballs` takes footballs back; `wait no, purple` does not take back purple. */
function refusal(items: readonly Item[], at: number): Grammar | undefined {
  const [item, next, before] = [items[at], items[at + 1], items[at - 1]];
  const isWord = item?.is === 'grammar' && item.word === 'no' && next?.is === 'fact' && next.slot !== 'quantity';
  return isWord && !(before?.is === 'grammar' && before.word === 'wrong' && item.to - item.from === 'no'.length)
    ? 'not'
    : undefined;
}

function takeFact(item: Fact, open: Open, cut: (opens: Opening) => void, current: () => Open): void {
  if (open.negated) {
    open.taken.push(item);
    open.negated = false;
    return;
  }
  const isNext = item.slot === 'quantity' && open.facts.some(({ slot }) => slot === 'quantity');
  if (isNext && !open.words.has('make')) cut('number');
  current().facts.push(item);
}

function takeWord(word: Grammar, open: Open, cut: (opens: Opening) => void, current: () => Open): void {
  if (word === 'and') return cut('and');
  if (word === 'but' || word === 'because') {
    cut('comma');
    current().words.add(word);
    return;
  }
  if (word === 'not') {
    open.negated = true;
    open.words.add(word);
    return;
  }
  if (word === 'all' && open.facts.some(({ slot }) => CORE.has(slot))) cut('comma');
  if (CUTS.has(word) && open.facts.length > 0) cut('comma');
  if (word !== 'link' || current().facts.length > 0) current().words.add(word);
}
const CUTS: ReadonlySet<Grammar> = new Set([
  'wrong',
  'drop',
  'half',
  'third part',
  'rest',
  'add',
  'first',
  'second',
  'third',
]);
const CORE: ReadonlySet<string> = new Set(['quantity', 'style', 'weight']);

const opened = (opens: Opening, sentence: number): Open => ({
  opens,
  sentence,
  facts: [],
  taken: [],
  words: new Set(),
  asks: false,
  negated: false,
});

const ORDER: readonly Opening[] = ['number', 'comma', 'and', 'colon', 'stop', 'line', 'start'];
const stronger = (a: Opening, b: Opening): Opening => (ORDER.indexOf(a) > ORDER.indexOf(b) ? a : b);

const OPENINGS: Readonly<Partial<Record<Mark, Opening>>> = {
  comma: 'comma',
  stop: 'stop',
  question: 'stop',
  line: 'line',
  colon: 'colon',
  dash: 'comma',
};
