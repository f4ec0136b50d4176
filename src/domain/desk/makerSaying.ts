import type { Offer, Passed } from '../bench/offer.ts';
import type { Ready, Session } from '../bench/session.ts';
import type { Lot } from '../bench/lot.ts';
import type { Timer } from '../bench/timer.ts';
import type { Caution } from '../craft/care.ts';
import type { Day, Instant, Minutes } from '../craft/time.ts';
import type { Draft } from '../order/draft.ts';
import type { Finding } from '../order/finding.ts';
import type { Line, Spec } from '../order/spec.ts';
import type { Step } from '../shop/words.ts';
import type { OrderCost } from '../quote/cost.ts';
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
  ReckonFacts,
  ScrapFacts,
  StockFacts,
  TimerFacts,
  WorkFacts,
} from './facts.ts';
import type { Around } from './around.ts';
import type { Help } from './helps.ts';
import type { UnpaidRow } from './business.ts';
import type { Short } from './benchWork.ts';
import type { Coming, Danger } from './coming.ts';
import type { Obstacle } from './lotChanges.ts';
import type { Order } from './order.ts';
import type { Fate, Parting } from './parting.ts';
import type { Question } from './state.ts';
import type { Week } from './week.ts';

/** What the maker is told at the bench and around it, and what a buyer hears of a promise that slips, as a code with facts. */
export type MakerSaying =
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
  | Readonly<{ code: 'waits-for-money'; order: string }>
  | Readonly<{ code: 'change-effect'; change: Change; effects: readonly Effect[] }>
  | Readonly<{ code: 'changed'; change: Change }>
  | Readonly<{ code: 'fresh-mix'; guards: number; left: number; until: Instant }>
  | Readonly<{ code: 'quote-ends'; until: Instant }>
  | Readonly<{ code: 'buyer-photo'; order: string; number: number; photos: number; line: Line }>
  // a promise that slips
  | Readonly<{ code: 'delay-told'; order: string; ships: Day }>
  | Readonly<{ code: 'delay-over'; order: string }>
  | Readonly<{ code: 'not-packed'; order: string }>
  /** The day of a button holds no longer; `ships` is the one that does, null where nobody can tell one. */
  | Readonly<{ code: 'delay-moved'; order: string; ships: Day | null }>
  | Readonly<{ code: 'delayed'; order: string; promised: Day; ships: Day }>
  | Readonly<{ code: 'waits'; order: string; ships: Day }>
  | Readonly<{ code: 'buyer-waits'; order: string; ships: Day; buyer: string }>;
