import type { Threat } from './eveningWords.ts';
import type { Voice } from './voice.ts';

/** The morning in short. */
export type DigestWords = Readonly<{
  heading: (day: string) => string;
  hours: (hours: string, planned: string) => string;
  fits: string;
  doesNotFit: string;
  melt: (metals: string) => string;
  meltOf: (metal: string, grams: string) => string;
  done: (steps: string) => string;
  leaving: (orders: string, by: string) => string;
  unbegun: (orders: string) => string;
  unbegunRow: (order: string, money: string) => string;
  noHours: string;
  quiet: string;
  work: string;
  ready: string;
  due: (orders: string) => string;
  dueRow: (order: string, promised: string) => string;
  moreWork: (count: number, duration: string) => string;
  toPost: (orders: string) => string;
  danger: string;
  late: string;
  dangerRow: (order: string, buyer: string, threat: Threat) => string;
  timers: (running: string) => string;
  short: (items: string) => string;
  shortRow: (item: string, needed: string, there: string) => string;
  deliveries: (items: string) => string;
  deliveryRow: (item: string, amount: string, day: string) => string;
  overdueRow: (item: string, amount: string, day: string) => string;
  questions: string;
  undelivered: (count: number, voice: Voice) => string;
  unpaid: string;
  cancels: (orders: string) => string;
  unaddressed: (orders: string) => string;
}>;
