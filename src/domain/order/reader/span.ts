import type { Day } from '../../craft/time.ts';
import type { LineSlot } from '../../shop/words.ts';
import type { Grammar, Part } from './language/language.ts';

/** Where in the message something stands: characters `from`, up to `to`; tokens `at`, up to `until`. */
export type Place = Readonly<{ from: number; to: number; at: number; until: number }>;

/** What a colour name is the name of in this shop; empty for a colour that the shop does not have. */
export type Colour = Readonly<{ paint?: string; guard?: string; dressing?: string }>;

/** What a phrase of the lexicon means. */
export type Sense =
  | Readonly<{ is: 'value'; slot: LineSlot; value: string }>
  | Readonly<{ is: 'colour'; colour: Colour }>
  | Readonly<{ is: 'part'; part: Part }>
  | Readonly<{
      is: 'stranger';
      slot: LineSlot;
      /** Whether a value of the slot that follows is what was meant: lead free, so tin. */
      isAnswered?: true;
    }>
  | Readonly<{ is: 'place'; code: string | null }>
  | Readonly<{ is: 'pattern' }>
  | Readonly<{ is: 'grammar'; word: Grammar }>;

/** What a stretch of the message means, before its neighbours are asked. */
export type Span = Place &
  (
    | Sense
    | Readonly<{ is: 'number'; count: number; sure: boolean }>
    | Readonly<{ is: 'day'; day: Day | null }>
    | Readonly<{ is: 'noise' }>
    | Readonly<{ is: 'row'; row: number }>
    | Readonly<{ is: 'word'; stem: string }>
    | Readonly<{ is: 'mark'; mark: Mark }>
  );
export type Mark = 'comma' | 'stop' | 'question' | 'line' | 'colon' | 'dash' | 'slash' | 'bracket' | 'other';

type Distributed<S> = S extends unknown ? Omit<S, keyof Place> : never;
/** What a stretch means, apart from where it stands. */
export type Meaning = Distributed<Span>;

/** A meaning at its place; written out by kind because copying objects of every shape is what reading would spend its time on. */
export function placed(means: Meaning, from: number, to: number, at: number, until: number): Span {
  switch (means.is) {
    case 'grammar':
      return { is: 'grammar', word: means.word, from, to, at, until };
    case 'word':
      return { is: 'word', stem: means.stem, from, to, at, until };
    case 'mark':
      return { is: 'mark', mark: means.mark, from, to, at, until };
    case 'value':
      return { is: 'value', slot: means.slot, value: means.value, from, to, at, until };
    case 'colour':
      return { is: 'colour', colour: means.colour, from, to, at, until };
    case 'part':
      return { is: 'part', part: means.part, from, to, at, until };
    case 'stranger':
      return means.isAnswered
        ? { is: 'stranger', slot: means.slot, isAnswered: true, from, to, at, until }
        : { is: 'stranger', slot: means.slot, from, to, at, until };
    case 'place':
      return { is: 'place', code: means.code, from, to, at, until };
    case 'number':
      return { is: 'number', count: means.count, sure: means.sure, from, to, at, until };
    case 'day':
      return { is: 'day', day: means.day, from, to, at, until };
    case 'row':
      return { is: 'row', row: means.row, from, to, at, until };
    case 'pattern':
      return { is: 'pattern', from, to, at, until };
    case 'noise':
      return { is: 'noise', from, to, at, until };
  }
}

/** A slot said: one value, several, or none that can be written down. */
export type Fact = Place &
  Readonly<{
    is: 'fact';
    slot: LineSlot;
    /** Empty, or an empty word among others: spoken of, but not understood. */
    values: readonly string[];
    /** Where each of several values stands. */
    places?: readonly Place[];
    /** How several values stand to each other. */
    joined?: 'and' | 'or';
    /** Not undone by a word after it in the same breath: a collar with no skirt, eyes of a colour. */
    firm?: true;
    /** The slot as the line before has it: same hooks. */
    copied?: true;
  }>;

/** What is left when every stretch has been asked what it says of a head. */
export type Item = Fact | Exclude<Span, { is: 'value' | 'colour' | 'part' | 'stranger' | 'number' | 'pattern' }>;
