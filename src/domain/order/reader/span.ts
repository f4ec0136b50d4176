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
  | Readonly<{ is: 'stranger'; slot: LineSlot }>
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
    | Readonly<{ is: 'word'; stem: string }>
    | Readonly<{ is: 'mark'; mark: Mark }>
  );
export type Mark = 'comma' | 'stop' | 'question' | 'line' | 'colon' | 'dash' | 'slash' | 'other';

/** A slot said: one value, several, or none that can be written down. */
export type Fact = Place &
  Readonly<{
    is: 'fact';
    slot: LineSlot;
    /** Empty: spoken of, but not understood. */
    values: readonly string[];
    /** How several values stand to each other. */
    joined?: 'and' | 'or';
    /** The slot as the line before has it: same hooks. */
    copied?: true;
  }>;

/** What is left when every stretch has been asked what it says of a head. */
export type Item = Fact | Exclude<Span, { is: 'value' | 'colour' | 'part' | 'stranger' | 'number' | 'pattern' }>;
