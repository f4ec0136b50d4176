import type { LineSlot } from '../../../shop/words.ts';

/** Words that carry the grammar of an order, whatever the shop sells. */
export const GRAMMAR = [
  'no', // takes a part away: no, without, skip the
  'not', // takes a value back: not, instead of
  'none', // the answer "none" after what it is about
  'off', // refuses the part named before it: the guard, leave it off
  'roughly', // a number follows, more or less
  'yes',
  'wrong', // what was just said is about to be replaced: wait no, scratch that
  'make', // make that, change the, switch
  'drop', // drop the, cancel, remove
  'instead',
  'and',
  'or',
  'either',
  'all', // what follows or came before holds for every line
  'each', // one quantity for each value named
  'likewise', // the rest as the line before
  'same',
  'rest', // what is left of a total
  'others', // on the others: the lines that do not have it yet
  'half',
  'split',
  'more', // another, more
  'add',
  'lastTime', // like last time
  'ones', // stands for heads already named
  'want', // begins what is ordered
  'past', // begins what is only told
  'lose', // the same before heads; before a part it is refused
  'keep', // what the buyer has already
  'stocked', // asks what there is: what is counted next is of it
  'ask', // begins a question
  'may', // begins a request put as a question: can I get
  'because',
  'but',
  'open', // hmm, not sure, whatever you think
  'plain', // goes with the word beside it
  'naked',
  'first', // the first one: a line by its place
  'second',
  'third',
  'third part', // a third of a total
  'leave', // leave the guard off
  'aim', // on the: the line that what was said goes to
  'for',
  'aside', // holds a word of the trade but says nothing of heads: lead time, brown trout
  'link', // in, with, of, the: what holds a phrase together
  'count', // pieces, of them: the number before is a quantity
  'times', // x20, qty 20
  'unit', // ounce
  'gram',
  'size', // size 2, number 1
  'aught',
  'measure', // inches, pounds, years: the number before is no slot
  'order', // order number 1042
  'row', // line 2: the number is the place of a line
  'only',
  'match', // to match
  'usual',
  'tint', // makes another colour of the colour after it
  'shade', // says nothing about the colour after it
  'due', // the day that follows is when the heads are wanted
  'veto', // the day that follows is something else
  'fits', // the day before is when the heads are wanted
  'toPlace', // ship to
  'atPlace', // I'm in
  'notPlace', // fishing in
  'water', // lake, river: the name beside it is water
] as const;
export type Grammar = (typeof GRAMMAR)[number];

/** The parts of a head that are spoken of by a noun. */
export const PARTS = ['guard', 'skirt', 'collar', 'keeper', 'hook', 'head', 'paint', 'metal', 'eye'] as const;
export type Part = (typeof PARTS)[number];

/** When a day is, as far as words say it without a calendar. */
export type DayWords = Readonly<{
  months: Readonly<Record<string, number>>;
  /** 0 is Monday. */
  weekdays: Readonly<Record<string, number>>;
  ordinals: Readonly<Record<string, number>>;
  suffixes: readonly string[];
  spans: Readonly<Record<string, 'day' | 'week' | 'month'>>;
  holidays: Readonly<Record<string, Holiday>>;
  near: Readonly<Record<string, number>>;
  lead: readonly string[];
  within: readonly string[];
  next: readonly string[];
  this: readonly string[];
  end: readonly string[];
  around: readonly string[];
  /** Every sunday is no day. */
  habit: readonly string[];
  from: readonly string[];
  /** Spoken of, but no one day. */
  vague: readonly string[];
  /** The same, but only after by or before. */
  loose: readonly string[];
}>;
export type Holiday =
  | 'christmas'
  | 'christmas-eve'
  | 'new-year'
  | 'independence'
  | 'halloween'
  | 'thanksgiving'
  | 'easter'
  | 'memorial'
  | 'labor'
  | 'fathers'
  | 'mothers'
  | 'valentine';

/** Everything the reader knows of one language; all lists hold phrases parted by commas. */
export type LanguageWords = Readonly<{
  grammar: Readonly<Partial<Record<Grammar, string>>>;
  parts: Readonly<Record<Part, string>>;
  /** Whole wishes: unpainted, weedless, open hook. */
  wishes: readonly Readonly<{ slot: LineSlot; value: string; said: string }>[];
  /** Things of the trade that a shop may not have: spoken of, not understood, unless the shop's own words say otherwise. */
  strangers: Readonly<Partial<Record<LineSlot, string>>>;
  /** Wishes that say no value and that a value after them answers: lead free, tin; a bigger hook, 6/0. */
  answered: Readonly<Partial<Record<LineSlot, string>>>;
  numbers: Readonly<Record<string, number>>;
  /** Words that are written short. */
  short: Readonly<Record<string, string>>;
  dozens: readonly string[];
  fractions: Readonly<Record<string, number>>;
  days: DayWords;
  /** Common words that are no misspelling of a shop's word. */
  common: string;
  /** Words by which a message shows its language. */
  signs: string;
}>;
