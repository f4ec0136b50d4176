import type { Change } from '../domain/desk/change.ts';
import type { Step } from '../domain/shop/words.ts';
import type { Voice } from './voice.ts';

/** The end of an evening, a lot's own card, and changes of hours and order. */
export type EveningWords = Readonly<{
  closing: string;
  ovenOn: string;
  stillRuns: string;
  overnight: string;
  closingCare: string;
  lot: (lot: string, order: string) => string;
  history: string;
  offShelf: (heads: string) => string;
  /** A step with when it began and when it was over; null for what is not there yet. */
  step: (step: string, from: string | null, to: string | null) => string;
  counted: (good: string, scrap: string) => string;
  would: { readonly [Do in Change['do']]: (change: Extract<Change, Readonly<{ do: Do }>>, voice: Voice) => string };
  noEffect: string;
  effects: string;
  effect: (order: string, before: string | null, after: string | null) => string;
  late: (promised: string) => string;
  nothingYet: string;
  minutes: string;
  minutesRow: (step: string, file: string, learned: string | null, times: number, voice: Voice) => string;
  scrap: (file: string, learned: string | null, heads: string, bad: string) => string;
}>;

export type LearnedRow = Readonly<{ step: Step; times: number; factor: number }>;
