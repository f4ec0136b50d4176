import type { Ready, Session } from '../bench/session.ts';
import type { Day } from '../craft/time.ts';
import type { Ask } from '../order/draft.ts';
import type { Line } from '../order/spec.ts';
import type { PaperKind } from './business.ts';
import type { Change } from './change.ts';
import type { Sooner } from './sooner.ts';

/** What a button says; its words are chosen in wording/. */
export type Label =
  | Readonly<{ code: 'choice'; ask: Ask; value: string }>
  | Readonly<{ code: 'way'; put: Readonly<Record<string, string | number>> }>
  | Readonly<{ code: 'grant'; cents: number }>
  | Readonly<{ code: 'sooner'; sooner: Sooner }>
  | Readonly<{ code: 'line'; number: number }>
  | Readonly<{ code: 'drop-line'; number: number }>
  | Readonly<{ code: 'change'; ask: Ask }>
  | Readonly<{ code: 'start'; work: Ready }>
  | Readonly<{ code: 'session'; session: Session }>
  | Readonly<{ code: 'finish'; session: Session }>
  | Readonly<{ code: 'scrapped'; count: number }>
  | Readonly<{ code: 'bake-spares'; count: number }>
  | Readonly<{ code: 'count-lot'; lot: string }>
  | Readonly<{ code: 'bad-of'; lot: string; count: number }>
  | Readonly<{ code: 'lot'; lot: string }>
  | Readonly<{ code: 'propose'; change: Change }>
  | Readonly<{ code: 'photos'; order: string; line: number; photos: number }>
  | Readonly<{ code: 'photo-of'; order: string; line: Line }>
  | Readonly<{ code: 'pass-on'; order: string }>
  | Readonly<{ code: 'delay'; day: Day }>
  | Readonly<{ code: 'arrived'; item: string; count: number }>
  | Readonly<{ code: 'stock-is'; item: string }>
  | Readonly<{ code: 'bought'; item: string; count: number }>
  | Readonly<{ code: 'pay'; order: string }>
  | Readonly<{ code: 'pay-here'; what: 'whole' | 'deposit'; cents: number }>
  | Readonly<{ code: 'paid'; what: 'whole' | 'deposit' | 'back'; cents: number }>
  | Readonly<{ code: 'settle'; order: string; what: 'whole' | 'back'; cents: number }>
  | Readonly<{ code: 'reship'; place: string; cents: number }>
  | Readonly<{ code: 'paper'; kind: PaperKind }>
  | Readonly<{ code: 'order'; order: string }>
  | Readonly<{ code: 'again'; order: string }>
  | Readonly<{ code: 'handed-in'; order: string }>
  | Readonly<{ code: 'word'; word: LabelWord }>;

export const LABEL_WORDS = [
  'apply',
  'wait',
  'fresh-mix',
  'accept',
  'add-line',
  'add-tracking',
  'all-good',
  'ask-maker',
  'back',
  'bench',
  'buy',
  'cancel-order',
  'cancel-yes',
  'cannot',
  'choose-each',
  'done',
  'done-change',
  'export',
  'five-more',
  'forget',
  'forget-yes',
  'grant-cancel',
  'help',
  'keep-data',
  'keep-on',
  'keep-order',
  'my-orders',
  'new-order',
  'no-tracking',
  'posted',
  'queue',
  'readdress',
  'same-address',
  'refuse-cancel',
  'reply',
  'reword',
  'start-over',
  'stock',
  'timers',
  'undo',
  'usual',
  'change-something',
  'any-day',
  'week',
] as const;
export type LabelWord = (typeof LABEL_WORDS)[number];
