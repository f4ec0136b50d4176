import type { Passed } from '../domain/bench/offer.ts';
import type { Timer } from '../domain/bench/timer.ts';
import type { Saying } from '../domain/desk/card.ts';
import type { Label, LabelWord } from '../domain/desk/label.ts';
import type { Fate, Parting } from '../domain/desk/parting.ts';
import type { Because } from '../domain/desk/quoted.ts';
import type { Toast } from '../domain/desk/turn.ts';
import type { Thing } from '../domain/desk/command.ts';
import type { Remark } from '../domain/order/finding.ts';
import type { DraftWords } from './draftWords.ts';
import type { DigestWords } from './digestWords.ts';
import type { EveningWords } from './eveningWords.ts';
import { BUSINESS_LAID_OUT, type BusinessWords } from './businessWords.ts';
import type { Voice } from './voice.ts';
import type { WeekWords } from './weekWords.ts';

/** Sayings that look the same in each language; a layout builds them from a frame of phrases. */
export const LAID_OUT = [
  'question',
  'summary',
  'stuck',
  'not-understood',
  'change-what',
  'makes',
  'drop-sure',
  'continue',
  'accepted',
  'orders',
  'order',
  'maker-welcome',
  'new-order',
  'order-address',
  'order-sheet',
  'reckoner',
  'garage-set',
  'queue',
  'buyer-asks',
  'buyer-wishes',
  'wish-sent',
  'wish-answered',
  'ask-reply',
  'buyer-cancels',
  'bench',
  'session',
  'start-passed',
  'oven-taken',
  'count',
  'step-done',
  'timer-due',
  'timers-due',
  'timers',
  'digest',
  'stock',
  'close-down',
  'hours',
  'in-danger',
  'lot-card',
  'change-effect',
  'changed',
  'minutes',
  'week',
  ...BUSINESS_LAID_OUT,
] as const;
export type LaidOut = (typeof LAID_OUT)[number];

/** The facts that go with a code; a member of the union may stand for several codes. */
type FactsOf<Union extends Readonly<{ code: string }>, Code> = Union extends unknown
  ? Code extends Union['code']
    ? Union
    : never
  : never;

export type SayingOf<Code extends Saying['code']> = FactsOf<Saying, Code>;

/** One sentence or few for each of some codes; a code without its sentence does not compile. */
export type Sentences<Union extends Readonly<{ code: string }>, Code extends Union['code'] = Union['code']> = {
  readonly [One in Code]: (facts: FactsOf<Union, One>, voice: Voice) => string;
};

/** The sayings that are sentences only. */
export type PlainWords = Sentences<Saying, Exclude<Saying['code'], LaidOut>>;
export type FindingWords = Sentences<Remark>;
export type BecauseWords = Sentences<Because>;
/** Buttons, but for those that show a value: a value's own name is its label. */
export type LabelWords = Readonly<{
  words: Readonly<Record<LabelWord, string>>;
  /** Heads as usual, so many. */
  usual: (heads: number, voice: Voice) => string;
}> &
  Sentences<Label, Exclude<Label['code'], 'word' | 'choice'>>;

/** A quote and an order that was made of it. */
export type QuoteWords = Readonly<{
  notYet: string;
  missed: (wanted: string, ships: string) => string;
  usual: (list: string) => string;
  made: (metal: string, ounces: string) => string;
  each: (parts: string, each: string) => string;
  off: (money: string, quantity: number, voice: Voice) => string;
  /** As many heads cost the same, so many of them free. */
  same: (count: number, free: number, voice: Voice) => string;
  topUp: (money: string, least: string) => string;
  rush: (money: string) => string;
  postage: (place: string, money: string, parcels: number, voice: Voice) => string;
  tax: (money: string) => string;
  total: (money: string) => string;
  ships: (day: string) => string;
  /** Where money has to come before work begins. */
  shipsOncePaid: (day: string) => string;
  why: (reasons: string) => string;
  because: BecauseWords;
  neededBy: (day: string) => string;
  goodUntil: (time: string) => string;
  unclear: (said: string) => string;
  howToAccept: string;
}>;

export type OrderWords = Readonly<{
  placed: (order: string) => string;
  promised: (day: string) => string;
  pay: (words: string, days: number, voice: Voice) => string;
  askAddress: string;
  yours: string;
  heading: (order: string, state: string) => string;
  likely: (day: string) => string;
  late: (promised: string, now: string) => string;
  noDay: (promised: string) => string;
  /** What stands for the state of an order that is kept off the bench. */
  onHold: string;
  waitsForMoney: (money: string) => string;
  held: (promised: string) => string;
  dayWithMoney: string;
  paidToday: (day: string) => string;
  /** After a later day was told, while the buyer has not answered. */
  slip: (promised: string, told: string) => string;
  slipYours: (promised: string, told: string) => string;
  step: (step: number, steps: number, doing: string) => string;
  next: (step: number, steps: number, next: string) => string;
  done: string;
  /** A parcel that has gone, and its number. */
  gone: (time: string) => string;
  tracking: (number: string) => string;
  noAddress: string;
  address: string;
  cancelAsked: string;
  fresh: (order: string, buyer: string) => string;
  offShelf: (heads: string) => string;
  addressOf: (order: string, buyer: string) => string;
  /** The address names another place than the price is for. */
  elsewhere: (place: string, priced: string) => string;
  buyer: (buyer: string) => string;
  queue: (count: number, voice: Voice) => string;
  emptyQueue: string;
  asks: (buyer: string, order: string | null) => string;
  wishes: (buyer: string, about: string) => string;
  wishSent: (about: string) => string;
  granted: (said: string, extra: string | null) => string;
  denied: (said: string) => string;
  drafting: string;
  reply: (buyer: string) => string;
  wantsOut: (buyer: string, order: string) => string;
  /** What letting it go comes to. */
  leaving: (facts: Readonly<{ parting: Parting; fate: Fate }>, voice: Voice) => string;
  wantsOutHow: string;
}>;

/** The bench: what is big and cannot be mistaken is in capitals. */
export type BenchWords = Readonly<{
  makerWelcome: string;
  makerHow: string;
  care: string;
  running: string;
  ready: string;
  /** Why a start button starts nothing any more. */
  passed: Readonly<Record<Passed, (step: string, lot: string) => string>>;
  nothing: string;
  timers: string;
  noTimers: string;
  sinceTime: (time: string) => string;
  slots: Readonly<{ hook: string; paint: string; guard: string; keeper: string; dressing: string; metal: string }>;
  pin: Readonly<{ in: string; none: string; pullAfter: string; pull: string }>;
  short: (item: string, heads: string, of: string) => string;
  countAnew: string;
  left: (heads: string) => string;
  later: (time: string) => string;
  leftOut: (heads: string) => string;
  beyond: (items: string) => string;
  melt: (grams: string) => string;
  countTo: (lot: string, from: number, to: number) => string;
  bake: (heat: string, comeUp: string, hold: string) => string;
  lightest: (times: string) => string;
  glue: (mixes: number, each: number, life: string, voice: Voice) => string;
  cure: (time: string) => string;
  /** Of several lots each with its own count, else an empty list. */
  scrapped: (count: number, lots: string, voice: Voice) => string;
  localCodes: string;
  ovenTaken: string;
  howMany: (lot: string, heads: string) => string;
  stepDone: (step: string) => string;
  good: (lot: string, good: string) => string;
  next: (step: string) => string;
  finished: string;
  /** What of a lot goes into the parcel, and what is over. */
  packs: (parcel: string, over: string) => string;
  shelved: (heads: string) => string;
  /** Heads made over that a load leaves out, before and after it. */
  sparesOut: (count: number, voice: Voice) => string;
  letGo: (lot: string, count: number, voice: Voice) => string;
  topUp: (lot: string, heads: string) => string;
  garage: (temperature: string) => string;
  curesGoOn: string;
  curesStill: (least: string) => string;
  setNone: (least: string) => string;
  reckoned: (quantity: string, cast: string) => string;
  weights: string;
  weighs: (metal: string, grams: string, ounces: string) => string;
  noBake: string;
  powder: (grams: string) => string;
  cured: (full: string, overnight: string, garage: string) => string;
  noCure: (garage: string) => string;
}>;

export type TimerWords = Readonly<{
  due: Readonly<Record<Timer['kind'], (voice: Voice) => string>>;
  late: (duration: string) => string;
  overbaked: (times: string) => string;
  /** So long over its hold does powder stand. */
  stillGood: (over: string) => string;
  wasOff: (duration: string, count: number, voice: Voice) => string;
  at: (name: string, time: string) => string;
  over: (name: string, late: string) => string;
  /** What a mix of glue can set, and what is left after it. */
  mix: (guards: number, after: number, voice: Voice) => string;
  mixNext: (after: number, voice: Voice) => string;
  /** A cure in a garage that is too cold for it. */
  still: (name: string) => string;
}>;

/** Everything the program can say in one language. */
export type Phrases = Readonly<{
  plain: PlainWords;
  findings: FindingWords;
  labels: LabelWords;
  toasts: Readonly<Record<Toast, string | null>>;
  draft: DraftWords;
  quote: QuoteWords;
  order: OrderWords;
  bench: BenchWords;
  timer: TimerWords;
  digest: DigestWords;
  business: BusinessWords;
  evening: EveningWords;
  week: WeekWords;
}>;

/** What to answer to a thing that is no words. */
export type ThingWords = Readonly<Record<Thing, string>>;
