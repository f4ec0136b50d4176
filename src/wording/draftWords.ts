import type { Hint } from '../domain/desk/buyerSaying.ts';
import type { Ask } from '../domain/order/draft.ts';
import type { Hindrance } from '../domain/plan/plan.ts';
import type { Voice } from './voice.ts';

/** An example or a question for each thing that can be asked. */
export type PerAsk = Readonly<Record<Ask, (voice: Voice) => string>>;

/** Talk about a draft. */
export type DraftWords = Readonly<{
  soFar: string;
  lineOf: (line: number, lines: number) => string;
  line: (lines: readonly string[], voice: Voice) => string;
  localRules: string;
  now: (value: string) => string;
  wantsGuard: string;
  photos: (count: number, voice: Voice) => string;
  by: (day: string) => string;
  to: (place: string) => string;
  nothingYet: string;
  asks: PerAsk;
  /** After a country alone. */
  whichPart: (country: string) => string;
  soonest: string;
  makes: (head: string) => string;
  usualIs: (list: string) => string;
  tip: (voice: Voice) => string;
  tapOrType: string;
  last: string;
  more: (count: number, voice: Voice) => string;
  unclear: (said: string) => string;
  stuck: string;
  askFirst: string;
  noDay: string;
  hindrances: {
    readonly [Code in Hindrance['code']]: (why: Extract<Hindrance, { code: Code }>, voice: Voice) => string;
  };
  waysBelow: string;
  noWays: string;
  hints: Readonly<Record<Hint, (voice: Voice) => string>>;
  missed: Readonly<{
    hint: (hint: string) => string;
    example: (example: string) => string;
    person: string;
    again: (misses: number, hint: string) => string;
  }>;
  changeWhat: string;
  dropSure: string;
  dropFor: (order: string) => string;
  welcomeBack: (since: string) => string;
  goOn: string;
}>;
