import type { Day, Instant, Minutes } from '../craft/time.ts';

/** A part of a lot's hands step. */
export type Part = Readonly<{ lot: string; start: Instant; end: Instant }>;

/** Parts of one kind that follow on from each other; `start` is the start of the setup. */
export type Session = Readonly<{ do: string; with?: string; start: Instant; end: Instant; parts: readonly Part[] }>;

/** Hands from `start` for the loading and from `out` to `end` for the unloading; heads in it by lot. */
export type Load = Readonly<{
  with?: string;
  hold: Minutes;
  start: Instant;
  out: Instant;
  end: Instant;
  lots: Readonly<Record<string, number>>;
}>;

/** What a lot waits on, in order of time; the words are the caller's. */
export type Because =
  /** Its material is here only then. */
  | Readonly<{ code: 'material'; until: Instant }>
  /** The bench is busy with other work until then. */
  | Readonly<{ code: 'hands'; until: Instant; with: readonly string[] }>
  /** No hours until then. */
  | Readonly<{ code: 'hours'; until: Instant }>
  /** The oven is taken by another load until then. */
  | Readonly<{ code: 'oven'; until: Instant }>
  /** A lag such as `cool` or `cure` runs until then. */
  | Readonly<{ code: 'lag'; do: string; until: Instant }>
  /** Its own steps take that long: the last of them ends then. */
  | Readonly<{ code: 'work'; do: string; until: Instant }>
  /** The post takes it on that day, if ready by `by`. */
  | Readonly<{ code: 'post'; day: Day; by: Instant }>;

export type LotPlan = Readonly<{
  id: string;
  ready: Instant;
  ships: Day;
  /** Calendar days after `due`; 0 without one. */
  late: number;
  because: readonly Because[];
}>;

/** Compared in this order: weight × days late, weight × days to the ship day, setup minutes. */
export type Cost = Readonly<{ late: number; ship: number; setup: Minutes }>;

/** Where a lot's tasks stand in the order of work: kept from plan to plan, so that little moves when little happened. */
export type Place = Readonly<{ lot: string; do: string; key: number }>;

export type Plan = Readonly<{
  id: string;
  sessions: readonly Session[];
  loads: readonly Load[];
  lots: readonly LotPlan[];
  cost: Cost;
  order: Order;
}>;

/** The order of work behind a plan; give it back to the next one. Plain data, ms where it is time. */
export type Order = Readonly<{
  places: readonly Place[];
  grouping: number;
  ahead: number;
  patience: number;
  yields: number;
  crumb: number;
}>;

/** Why a lot can never be done. */
export type Hindrance =
  | Readonly<{ code: 'no-hours' }>
  | Readonly<{ code: 'hours-end' }>
  | Readonly<{ code: 'no-post' }>
  | Readonly<{ code: 'no-rack'; heads: number }>
  | Readonly<{ code: 'setup-too-long'; do: string; minutes: Minutes; longest: Minutes }>
  | Readonly<{ code: 'bake-too-long'; minutes: Minutes; longest: Minutes }>;

export type Impossible = Readonly<{
  id: string;
  impossible: readonly Readonly<{ lot: string; why: Hindrance }>[];
}>;

export const isImpossible = (made: object): made is Impossible => 'impossible' in made;
