import type { Balance } from '../quote/payment.ts';
import type { Cents } from '../craft/money.ts';
import type { Day, Instant } from '../craft/time.ts';
import type { Ask, Draft } from '../order/draft.ts';
import type { Finding } from '../order/finding.ts';
import type { Line, PartialSpec, Spec } from '../order/spec.ts';
import type { SpecSlot } from '../shop/words.ts';
import type { Hindrance } from '../plan/plan.ts';
import type { OrderFacts, Progress } from './facts.ts';
import type { Order } from './order.ts';
import type { Parting } from './parting.ts';
import type { Quote } from './quoted.ts';
import type { Sooner } from './sooner.ts';
import type { Thing } from './command.ts';

/** What an answer that is not understood may be helped with: a question, a draft that cannot be made as it stands, or a whole one. */
export type Hint = Ask | 'stuck' | 'whole';

/** What a buyer is told on their draft and their orders, as a code with facts. */
export type BuyerSaying =
  // to a buyer, on the draft
  | Readonly<{ code: 'welcome' }>
  | Readonly<{
      code: 'question';
      draft: Draft;
      ask: Ask;
      findings: readonly Finding[];
      usual: Spec | null;
      progress: Progress;
    }>
  | Readonly<{
      code: 'summary';
      draft: Draft;
      quote: Quote;
      /** What one head of each line weighs as made, hook included. */
      madeGrams: readonly number[];
      usual: readonly (readonly string[])[];
      notes: readonly Finding[];
      missed: Day | null;
      sooner: readonly Sooner[];
    }>
  | Readonly<{ code: 'stuck'; draft: Draft; findings: readonly Finding[]; why: readonly Hindrance[] }>
  | Readonly<{ code: 'not-understood'; draft: Draft; misses: number; hint: Hint }>
  | Readonly<{ code: 'change-what'; draft: Draft }>
  | Readonly<{ code: 'too-many-lines'; over: number; most: number }>
  | Readonly<{ code: 'started-over' }>
  | Readonly<{
      code: 'range';
      about: SpecSlot;
      all: readonly string[];
      fitting: readonly string[] | null;
      /** What was asked for and is not there, in the buyer's words. */
      lacks: string | null;
    }>
  | Readonly<{ code: 'makes'; spec: PartialSpec; findings: readonly Finding[] }>
  /** `total` is for `count` heads, where a number was asked about. */
  | Readonly<{ code: 'quote-later'; each: Cents; count: number | null; total: Cents }>
  | Readonly<{ code: 'day-later' }>
  /** `from` is the least postage to the place asked about; null where none is named or nothing is sent there. */
  | Readonly<{ code: 'posts-to'; to: string | null; from: Cents | null; places: readonly string[] }>
  | Readonly<{ code: 'gladly' }>
  | Readonly<{ code: 'you-are-welcome' }>
  | Readonly<{ code: 'yes-to-which' }>
  | Readonly<{ code: 'drop-sure'; draft: Draft; again: string | null }>
  | Readonly<{ code: 'stale' }>
  | Readonly<{ code: 'fitting-answer'; thing: Thing; kept: boolean }>
  | Readonly<{ code: 'photos-full'; most: number }>
  | Readonly<{ code: 'photo-of-which' }>
  | Readonly<{ code: 'photo-kept'; order: string; line: Line; photos: number }>
  | Readonly<{ code: 'pass-on'; said: string; orders: number }>
  | Readonly<{ code: 'help' }>
  | Readonly<{ code: 'privacy' }>
  | Readonly<{ code: 'export' }>
  | Readonly<{ code: 'export-lately' }>
  | Readonly<{ code: 'forget-sure'; orders: readonly string[] }>
  | Readonly<{ code: 'forget-later'; orders: readonly string[] }>
  | Readonly<{ code: 'forgotten' }>
  | Readonly<{ code: 'too-many-open'; most: number }>
  | Readonly<{ code: 'too-many-questions'; most: number }>
  | Readonly<{ code: 'edited'; text: string }>
  | Readonly<{ code: 'continue'; draft: Draft; since: Instant }>
  // to a buyer, on an order
  | Readonly<{ code: 'accepted'; order: Order }>
  | Readonly<{ code: 'already-accepted'; order: string }>
  | Readonly<{ code: 'quote-over'; draft: Draft }>
  | Readonly<{ code: 'begun'; order: string; ships: Day }>
  | Readonly<{ code: 'address-kept'; order: Order }>
  /** The address names another place than the price is for; `moved` is the order as it would be to there, null where the maker has to say. */
  | Readonly<{ code: 'address-elsewhere'; order: Order; place: string; moved: Order | null }>
  | Readonly<{ code: 'reshipped'; order: Order; balance: Balance }>
  /** `before` is the address that stands until then. */
  | Readonly<{ code: 'ask-address'; order: string; before: string | null }>
  | Readonly<{ code: 'orders'; orders: readonly OrderFacts[] }>
  | Readonly<{ code: 'order'; facts: OrderFacts }>
  | Readonly<{ code: 'no-orders' }>
  | Readonly<{ code: 'no-such-order'; said: string }>
  /** `asks`: the maker has to be asked, for work has begun. */
  | Readonly<{ code: 'cancel-sure'; parting: Parting; asks: boolean }>
  | Readonly<{ code: 'cancelled'; parting: Parting }>
  | Readonly<{ code: 'cancel-asked'; parting: Parting }>
  | Readonly<{ code: 'cancel-refused'; order: string }>
  | Readonly<{ code: 'making'; order: string }>
  | Readonly<{ code: 'packed'; order: string }>
  | Readonly<{ code: 'shipped'; order: string; tracking: string | null }>
  | Readonly<{ code: 'tracking'; order: string; tracking: string }>
  // the maker's answers to a buyer
  | Readonly<{ code: 'ask-question' }>
  | Readonly<{ code: 'question-sent'; question: string }>
  | Readonly<{ code: 'wish-sent'; said: string; finding: Finding | null }>
  | Readonly<{ code: 'wish-answered'; said: string; slot: string; cents: number | null }>
  | Readonly<{ code: 'maker-says'; text: string; about: string }>;
