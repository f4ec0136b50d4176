import type { Lot } from '../bench/lot.ts';
import type { Timed } from '../bench/learned.ts';
import type { Ready, Session } from '../bench/session.ts';
import type { Timer } from '../bench/timer.ts';
import type { Caution } from '../craft/care.ts';
import type { Cents } from '../craft/money.ts';
import type { Day, Instant, Minutes } from '../craft/time.ts';
import type { Spec } from '../order/spec.ts';
import type { Step } from '../shop/words.ts';
import type { Delivery } from '../stock/availability.ts';
import type { Short } from './benchWork.ts';
import type { UnpaidRow } from './business.ts';
import type { Danger } from './coming.ts';
import type { Waits } from './heading.ts';
import type { Order } from './order.ts';
import type { Question } from './state.ts';

/** Facts that cards carry: worked out by the rules, worded later. */

/** A lot with what its card shows beside the spec; `said` is what the buyer typed of it. */
export type LotFacts = Readonly<{ lot: Lot; heads: number; said: readonly string[] }>;

/** What a bench card tells of the work: how hot, how long, how much. */
export type WorkFacts = Readonly<{
  /** What is not there for all the heads. */
  short: readonly Short[];
  melt: number | null;
  counts: readonly Readonly<{ lot: string; from: number; to: number }>[];
  /** `overbaked` is how many times its hold the lightest head gets, where that is more than powder stands; else null. */
  bake: Readonly<{ comeUp: Minutes; hold: Minutes; overbaked: number | null }> | null;
  glue: Readonly<{ mixes: number; guardsPerMix: number; potLife: Minutes }> | null;
  /** Full cure in hours at the garage's temperature; null when no glue is in it or it is too cold. */
  cureHours: number | null;
  tooColdBelow: number | null;
  cautions: readonly Caution[];
}>;

/** Heads of a lot made over that were let go. */
export type LetGo = Readonly<{ lot: string; heads: number }>;

/** A timer as it is told of. */
export type TimerFacts = Readonly<{
  timer: Timer;
  /** With the heads that the timer is about: those on the rack, not the whole lot. */
  lots: readonly Pick<Lot, 'id' | 'spec' | 'heads'>[];
  /** Lots on its rack whose order was cancelled since. */
  cancelled: readonly string[];
  lateMinutes: Minutes;
  /** Past the first due time, however often it was put off. */
  overMinutes: Minutes;
  glue: GluePart | null;
}>;

/** The most guards that a mix of glue can set, and how many are left after it. */
export type GluePart = Readonly<{ guards: number; after: number }>;

/** What the ready reckoner says of a head and a number. Grams; minutes; hours; °C. */
export type ReckonFacts = Readonly<{
  spec: Spec;
  quantity: number;
  /** Heads to cast for it, usual scrap counted in. */
  heads: number;
  /** One head, hook included, in each metal that can be cast, and whether that metal stands the oven. */
  weights: readonly Readonly<{ metal: string; grams: number; bakes: boolean }>[];
  count: Readonly<{ from: number; to: number }> | null;
  bake: Readonly<{ comeUp: Minutes; hold: Minutes }> | null;
  powder: number | null;
  /** Null when the garage is too cold to cure. */
  cure: Readonly<{ full: number; overnight: number }> | null;
  garage: number;
  melt: number;
}>;

/** A step's minutes as learned: how often it was timed, and how many times the shop file's it takes; 1 while there is not enough. */
export type LearnedFacts = Readonly<{ step: Timed; times: number; factor: number }>;

/** Heads poured and found bad, and the share of scrap that is reckoned with. */
export type ScrapFacts = Readonly<{ heads: number; bad: number; share: number }>;

/** Evenings with work, how many of them fell out, and the share that is reckoned with. */
export type EveningsFacts = Readonly<{ all: number; missed: number; share: number }>;

/** What the end of the bench hours finds: the oven's load, other work not yet done, and what could cure overnight. */
export type ClosingFacts = Readonly<{
  baking: Session | null;
  running: readonly Session[];
  overnight: readonly Ready[];
  cautions: readonly Caution[];
}>;

/** The bench hours of a day; none on a day off. */
export type DayHours = Readonly<{ day: Day; spans: readonly Readonly<{ from: Instant; to: Instant }>[] }>;

/** Question 3 of 6, on line 2 of 3. */
export type Progress = Readonly<{ line: number; lines: number; left: number }>;

export type OrderFacts = Readonly<{
  order: Order;
  lots: readonly Lot[];
  /** The day it would ship as the bench stands now; null where nobody can tell one, and once posted. */
  ships: Day | null;
  waits: Waits | null;
}>;

export type StockFacts = Readonly<{
  item: string;
  unit: 'piece' | 'gram';
  onHand: number;
  reserved: number;
  /** Used up by lots that are still on the bench. */
  inWork: number;
  /** Deliveries still to come. */
  coming: readonly Delivery[];
}>;

/** What the maker should know in the morning, short enough for a phone. */
export type Digest = Readonly<{
  day: Day;
  /** Work planned for today, in working order. */
  work: readonly Readonly<{ step: string; family: string; heads: number; minutes: Minutes }>[];
  /** Grams of each metal that the day's pours take through the pot. */
  melt: readonly Readonly<{ metal: string; grams: number }>[];
  /** Heads that had a step yesterday. */
  done: readonly Readonly<{ step: Step; heads: number }>[];
  /** Orders that must leave today, as they still can, and when the post leaves; null where there are none. */
  leaving: Readonly<{ orders: readonly string[]; by: Instant }> | null;
  /** Minutes of the day's hours, and how many the plan fills. */
  hours: Minutes;
  planned: Minutes;
  ready: readonly Ready[];
  due: readonly Readonly<{ order: string; promised: Day }>[];
  /** Orders that wait for money before anything is made of them. */
  unbegun: readonly Readonly<{ order: string; cents: Cents }>[];
  /** Packed and waiting for the post. */
  toPost: readonly string[];
  timers: readonly TimerFacts[];
  short: readonly StockFacts[];
  deliveries: readonly Delivery[];
  questions: readonly Question[];
  /** Letters that were given up within the last week. */
  undelivered: number;
  unpaid: readonly UnpaidRow[];
  cancels: readonly string[];
  unaddressed: readonly string[];
  danger: readonly Danger[];
}>;
