import type { Change } from '../domain/desk/change.ts';
import type { Coming } from '../domain/desk/coming.ts';
import type { Voice } from './voice.ts';

/** A broken promise, or one that would be: its day, the day it heads for, whether it is late already, and where it stands. */
export type Threat = Readonly<{ promised: string; ships: string | null; late: boolean; at: 'bench' | 'hold' | 'post' }>;

/** Words for each change. */
export type ChangeWords = { readonly [Do in Change['do']]: (change: ChangeTo<Do>, voice: Voice) => string };
type ChangeTo<Do extends Change['do'], One = Change> = One extends Change
  ? Do extends One['do']
    ? One
    : never
  : never;

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
  would: ChangeWords;
  noEffect: string;
  effects: string;
  effect: (order: string, before: string | null, after: string | null) => string;
  late: (promised: string) => string;
  nothingYet: string;
  /** What the buyer typed, quoted. */
  buyerSaid: (quoted: string) => string;
  inDanger: (order: string, buyer: string, threat: Threat) => string;
  waitsOn: string;
  missing: (item: string, amount: string, due: string | null) => string;
  ifOrdered: (time: string) => string;
  handsOn: (orders: string, until: string) => string;
  helps: Readonly<{
    first: (ships: string) => string;
    extra: (hours: string, ships: string) => string;
    release: (ships: string) => string;
    buy: string;
    post: (by: string) => string;
    nothing: string;
  }>;
  hours: string;
  closed: string;
  hoursHow: string;
  coming: string;
  comes: { readonly [What in Exclude<Coming['what'], 'danger'>]: (facts: Comes<What>, voice: Voice) => string };
  comesDanger: (order: string, threat: Threat) => string;
  more: (count: number) => string;
  minutes: string;
  minutesRow: (step: string, file: string, learned: string | null, times: number, voice: Voice) => string;
  scrap: (file: string, learned: string | null, heads: string, bad: string) => string;
  missed: (share: string, missed: string, all: string) => string;
}>;

export type Comes<What extends Coming['what']> = Extract<Coming, Readonly<{ what: What }>>;
