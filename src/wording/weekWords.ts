import type { Step } from '../domain/shop/words.ts';
import type { Plural } from './plural.ts';

/** The plan of the next days, in words and on its picture. */
export type WeekWords = Readonly<{
  heading: (from: string, to: string) => string;
  why: string;
  off: string;
  free: string;
  cures: (heads: string, until: string) => string;
  cured: (heads: string, at: string) => string;
  goesOn: (work: string, until: string) => string;
  from: (hour: string, work: string) => string;
  jobs: Plural;
  ships: (orders: string) => string;
  promised: (orders: string) => string;
  late: (order: string) => string;
  danger: (order: string) => string;
  more: (count: number) => string;
  /** A step in one short word. */
  steps: Readonly<Record<Step, string>>;
  rows: Readonly<{ ships: string; promised: string }>;
  now: string;
  cure: string;
  lateMark: string;
}>;
