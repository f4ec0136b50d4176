import type { Clock, Day, Instant, Minutes, Weekday, Zone } from '../craft/time.ts';

/** Hands work on a whole lot; it may be cut at the end of an evening. Steps of one `do` and one `with` share a setup. */
export type HandsStep = Readonly<{ do: string; with?: string; minutes: Minutes }>;
/** Oven time: hands at both ends, `hold` between them, all inside one stretch of hours. */
export type BakeStep = Readonly<{ do: 'bake'; with?: string; hold: Minutes }>;
/** A lag that needs nobody and runs through the night. */
export type WaitStep = Readonly<{ do: string; wait: Minutes }>;
export type PlanStep = HandsStep | BakeStep | WaitStep;

/** Heads that go through the bench together. For an accepted lot `due` is the promised ship day. */
export type PlanLot = Readonly<{
  id: string;
  heads: number;
  due: Day | null;
  /** How much one day late costs against another lot's; 1 is usual. */
  weight: number;
  /** The first step starts no earlier: the instant its last material is here. */
  release: Instant | null;
  steps: readonly PlanStep[];
}>;

export type Span = readonly [from: Clock, to: Clock];
export type WeeklyHours = Readonly<Partial<Record<Weekday, readonly Span[]>>>;
export type ExtraHours = Readonly<{ date: Day; from: Clock; to: Clock }>;

/** Wall-clock hours in the shop's zone; `to` may be 24:00; extra hours count on a day off too. */
export type Hours = Readonly<{ weekly: WeeklyHours; daysOff: readonly Day[]; extra: readonly ExtraHours[] }>;

/** Parcels leave on these weekdays when they are ready by the clock time, that minute included. */
export type Post = Readonly<{ days: readonly Weekday[]; by: Clock; closed: readonly Day[] }>;

export type Oven = Readonly<{
  /** Heads that hang in it at once. */
  rack: number;
  load: Minutes;
  unload: Minutes;
  /** A load that is in it now: hands are wanted at `out` whatever the hours say. */
  running?: Readonly<{ out: Instant }>;
}>;

/** Everything the plan is made from: what is owed, and when hands and oven are there for it. */
export type Problem = Readonly<{
  id: string;
  zone: Zone;
  now: Instant;
  hours: Hours;
  post: Post;
  /** Minutes of hands before each session, by what is done; 0 where not named. */
  setup: Readonly<Record<string, Minutes>>;
  oven: Oven;
  lots: readonly PlanLot[];
  /** A session once begun takes in all that is ready for it, whatever else would be more urgent: work is started for all lots at a time. */
  pooled?: boolean;
}>;

export const isWait = (step: PlanStep): step is WaitStep => 'wait' in step;
export const isBake = (step: PlanStep): step is BakeStep => 'hold' in step;
export const isHands = (step: PlanStep): step is HandsStep => 'minutes' in step;
