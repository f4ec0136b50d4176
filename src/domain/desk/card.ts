import type { Offer, Passed } from '../bench/offer.ts';
import type { Ready, Session } from '../bench/session.ts';
import type { Lot } from '../bench/lot.ts';
import type { Timer } from '../bench/timer.ts';
import type { Caution } from '../craft/care.ts';
import type { Cents } from '../craft/money.ts';
import type { Day, Instant, Minutes } from '../craft/time.ts';
import type { Ask, Draft } from '../order/draft.ts';
import type { Finding } from '../order/finding.ts';
import type { Line, PartialSpec, Spec } from '../order/spec.ts';
import type { SpecSlot, Step } from '../shop/words.ts';
import type { OrderCost } from '../quote/cost.ts';
import type { Hindrance } from '../plan/plan.ts';
import type { Delivery } from '../stock/availability.ts';
import type { About, Change, Effect } from './change.ts';
import type {
  ClosingFacts,
  DayHours,
  EveningsFacts,
  Digest,
  LearnedFacts,
  LetGo,
  LotFacts,
  OrderFacts,
  Progress,
  ReckonFacts,
  ScrapFacts,
  StockFacts,
  TimerFacts,
  WorkFacts,
} from './facts.ts';
import type { Around } from './around.ts';
import type { Help } from './helps.ts';
import type { BusinessSaying, UnpaidRow } from './business.ts';
import type { Short } from './benchWork.ts';
import type { Coming, Danger } from './coming.ts';
import type { MonthFacts } from './month.ts';
import type { Label } from './label.ts';
import type { Obstacle } from './lotChanges.ts';
import type { Order } from './order.ts';
import type { Fate, Parting } from './parting.ts';
import type { PersonId } from './person.ts';
import type { Quote } from './quoted.ts';
import type { Sooner } from './sooner.ts';
import type { Question } from './state.ts';
import type { Tap } from './tap.ts';
import type { Week } from './week.ts';
import type { Thing } from './command.ts';

export type CardButton = Readonly<{ label: Label; tap: Tap }>;

/** What an answer that is not understood may be helped with: a question, a draft that cannot be made as it stands, or a whole one. */
export type Hint = Ask | 'stuck' | 'whole';

/** Everything the program can say, as a code with facts. The words, in each language, are in wording/, complete by type. */
export type Saying =
  // to the maker, on stock and money, and what the buyer hears of theirs
  | BusinessSaying
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
  | Readonly<{ code: 'reshipped'; order: Order }>
  | Readonly<{ code: 'ask-address'; order: string }>
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
  | Readonly<{ code: 'maker-says'; text: string; about: string }>
  // to the maker
  | Readonly<{ code: 'maker-welcome'; cautions: readonly Caution[] }>
  | Readonly<{ code: 'maker-help' }>
  | Readonly<{ code: 'for-maker-only' }>
  | Readonly<{ code: 'health'; around: Around['health'] }>
  /** `shelf` counts the heads of it that lie on the shelf already. */
  | Readonly<{ code: 'new-order'; order: Order; buyer: string; shelf: number; cost: OrderCost }>
  | Readonly<{ code: 'order-address'; order: Order; buyer: string }>
  | Readonly<{ code: 'order-photo'; order: string; buyer: string; line: Line; said: string }>
  | Readonly<{ code: 'buyer-asks'; question: Question; buyer: string; draft: Draft | null }>
  | Readonly<{ code: 'buyer-wishes'; question: Question; buyer: string; draft: Draft | null; finding: Finding | null }>
  | Readonly<{ code: 'ask-reply'; question: Question; buyer: string }>
  | Readonly<{ code: 'reply-sent'; buyer: string }>
  | Readonly<{ code: 'buyer-cancels'; order: Order; buyer: string; parting: Parting; fate: Fate }>
  | Readonly<{ code: 'buyer-cancelled'; buyer: string; parting: Parting; fate: Fate }>
  | Readonly<{
      code: 'bench';
      ready: readonly (Ready & Readonly<{ short: readonly Short[] }>)[];
      running: readonly Session[];
      lots: readonly Lot[];
      timers: readonly TimerFacts[];
    }>
  | Readonly<{ code: 'session'; session: Session; lots: readonly LotFacts[]; facts: WorkFacts }>
  /** A start button whose work is not there as it named it; `offer` is null for a button of another make. */
  | Readonly<{ code: 'start-passed'; offer: Offer | null; why: Passed; ready: readonly Ready[] }>
  | Readonly<{ code: 'too-cold'; below: number }>
  | Readonly<{ code: 'ready-to-post'; order: string }>
  | Readonly<{ code: 'count'; session: Session; lot: Lot; heads: number }>
  | Readonly<{
      code: 'step-done';
      session: Session;
      lots: readonly Lot[];
      topUps: readonly Lot[];
      letGo: readonly LetGo[];
      /** Material taken beyond what was counted. */
      beyond: readonly Readonly<{ item: string; count: number }>[];
    }>
  | Readonly<{ code: 'oven-taken'; session: Session }>
  | Readonly<{ code: 'undone'; what: string }>
  | Readonly<{ code: 'nothing-to-undo' }>
  | Readonly<{ code: 'undo-old'; what: string; at: Instant }>
  | Readonly<{ code: 'goes-on'; order: string }>
  | Readonly<{ code: 'put-off'; timer: Timer; minutes: Minutes }>
  | Readonly<{ code: 'timer-due'; facts: TimerFacts }>
  | Readonly<{ code: 'timers-due'; timers: readonly TimerFacts[]; wasOff: Minutes }>
  | Readonly<{ code: 'timers'; timers: readonly TimerFacts[]; coming: readonly Coming[] }>
  | Readonly<{ code: 'digest'; digest: Digest }>
  | Readonly<{ code: 'week'; week: Week }>
  | Readonly<{ code: 'queue'; orders: readonly OrderFacts[] }>
  | Readonly<{
      code: 'order-sheet';
      facts: OrderFacts;
      buyer: string;
      danger: Danger | null;
      leaving: Readonly<{ parting: Parting; fate: Fate }> | null;
    }>
  | Readonly<{
      code: 'stock';
      rows: readonly StockFacts[];
      /** Finished heads that belong to no order. */
      shelf: readonly Readonly<{ spec: Spec; count: number }>[];
    }>
  | Readonly<{ code: 'arrived'; item: string; count: number; onHand: number }>
  | Readonly<{ code: 'garage-set'; celsius: number; cures: readonly TimerFacts[]; leastCelsius: number }>
  | Readonly<{ code: 'which-temperature' }>
  | Readonly<{ code: 'which-oven' }>
  | Readonly<{ code: 'maker-unclear' }>
  | Readonly<{ code: 'oven-at'; celsius: number; hold: Minutes; wanted: Minutes; verdict: 'short' | 'enough' | 'long' }>
  | Readonly<{ code: 'reckoner'; facts: ReckonFacts }>
  | Readonly<{ code: 'which-head' }>
  | Readonly<{ code: 'ask-tracking'; order: string }>
  | Readonly<{ code: 'ask-tracking-after'; order: string }>
  | Readonly<{ code: 'tracking-kept'; order: string }>
  | Readonly<{ code: 'posted'; order: string }>
  | Readonly<{ code: 'in-danger'; danger: Danger; helps: readonly Help[] }>
  // around an evening
  | Readonly<{ code: 'which-work' }>
  | Readonly<{ code: 'nothing-runs' }>
  | Readonly<{ code: 'minutes'; rows: readonly LearnedFacts[]; scrap: ScrapFacts; evenings: EveningsFacts }>
  | Readonly<{ code: 'close-down'; facts: ClosingFacts }>
  | Readonly<{ code: 'hours'; days: readonly DayHours[] }>
  | Readonly<{ code: 'lot-card'; lot: Lot; said: readonly string[] }>
  | Readonly<{ code: 'unpaid-due'; rows: readonly UnpaidRow[] }>
  | Readonly<{ code: 'hand-in'; orders: readonly string[]; by: Instant }>
  | Readonly<{ code: 'restock-day'; deliveries: readonly Delivery[] }>
  // hours, order of orders, lots
  | Readonly<{ code: 'which-change'; about: About }>
  /** `why` is what stands against a change of a lot, `step` where that lot is. */
  | Readonly<{ code: 'no-change'; change: Change; why: Obstacle | null; step: Step | null }>
  | Readonly<{ code: 'change-effect'; change: Change; effects: readonly Effect[] }>
  | Readonly<{ code: 'changed'; change: Change }>
  | Readonly<{ code: 'fresh-mix'; guards: number; left: number; until: Instant }>
  | Readonly<{ code: 'quote-ends'; until: Instant }>
  | Readonly<{ code: 'buyer-photo'; order: string; number: number; photos: number; line: Line }>
  // a promise that slips
  | Readonly<{ code: 'delay-told'; order: string; ships: Day }>
  | Readonly<{ code: 'delayed'; order: string; promised: Day; ships: Day }>
  | Readonly<{ code: 'waits'; order: string; ships: Day }>
  | Readonly<{ code: 'buyer-waits'; order: string; ships: Day; buyer: string }>;

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
