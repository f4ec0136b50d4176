import type { Spec } from '../order/spec.ts';
import type { BusinessSaying } from './business.ts';
import type { MonthFacts } from './month.ts';
import type { Label } from './label.ts';
import type { PersonId } from './person.ts';
import type { Tap } from './tap.ts';
import type { Week } from './week.ts';
import type { BuyerSaying } from './buyerSaying.ts';
import type { MakerSaying } from './makerSaying.ts';

export type CardButton = Readonly<{ label: Label; tap: Tap }>;

/** Everything the program can say, as a code with facts. The words, in each language, are in wording/, complete by type. */
export type Saying = BusinessSaying | BuyerSaying | MakerSaying;

/** Lots whose heads differ, each head drawn once with the lots that it is of. */
export type HeadsOfLots = Readonly<{
  each: readonly Readonly<{ spec: Spec; lots: readonly Readonly<{ lot: string; heads: number }>[] }>[];
}>;

/** One message to somebody: what it says, its buttons, its picture, and whether it takes an earlier card's place. */
export type Card = Readonly<{
  to: PersonId;
  say: Saying;
  rows: readonly (readonly CardButton[])[];
  kind: 'answer' | 'confirmation' | 'reminder' | 'digest' | 'news';
  slot: string | null;
  place: 'over' | 'below';
  /** A head to draw, the heads of several lots, the week's plan, how a month went, the paper that the card is about, or a photo that somebody sent, by the platform's id. */
  picture: Spec | HeadsOfLots | Week | MonthFacts | 'paper' | Readonly<{ photo: string }> | null;
  /** A text file that goes along, whole. */
  document?: Readonly<{ name: string; text: string }>;
  /** A key that never goes out twice, for what the clock or a state may cause again. */
  key: string | null;
}>;
