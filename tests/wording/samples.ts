import { balanceOf } from '../../src/domain/quote/payment.ts';
import { AILMENTS, type Health } from '../../src/domain/desk/around.ts';
import { readFileSync } from 'node:fs';
import type { Lot } from '../../src/domain/bench/lot.ts';
import { newLot } from '../../src/domain/bench/lot.ts';
import type { Session } from '../../src/domain/bench/session.ts';
import { TIMER_KINDS, type Timer } from '../../src/domain/bench/timer.ts';
import { CAUTIONS } from '../../src/domain/craft/care.ts';
import { HOUR, localDay, MINUTE } from '../../src/domain/craft/time.ts';
import type { Saying } from '../../src/domain/desk/card.ts';
import type { Change } from '../../src/domain/desk/change.ts';
import { OBSTACLES } from '../../src/domain/desk/lotChanges.ts';
import type { Coming, Danger } from '../../src/domain/desk/coming.ts';
import type { Help } from '../../src/domain/desk/helps.ts';
import { TIMED } from '../../src/domain/bench/learned.ts';
import type { OrderFacts, TimerFacts, WorkFacts } from '../../src/domain/desk/facts.ts';
import { THINGS } from '../../src/domain/desk/command.ts';
import type { Digest } from '../../src/domain/desk/facts.ts';
import type { Week } from '../../src/domain/desk/week.ts';
import type { Parting } from '../../src/domain/desk/parting.ts';
import { ORDER_STATES, type Order } from '../../src/domain/desk/order.ts';
import type { Because, Quote } from '../../src/domain/desk/quoted.ts';
import type { Question } from '../../src/domain/desk/state.ts';
import { ASKS, emptyDraft, emptyLine, type Draft } from '../../src/domain/order/draft.ts';
import { KIND, type Finding, type Remark } from '../../src/domain/order/finding.ts';
import type { Spec } from '../../src/domain/order/spec.ts';
import { costOrder } from '../../src/domain/quote/cost.ts';
import { businessSamples } from './businessSamples.ts';
import { moneyFor } from '../../src/domain/quote/quote.ts';
import { shopSchema } from '../../src/domain/shop/shop.ts';

/** Facts to word, a few for every code; a code without a sample does not compile. */

export const shop = shopSchema.parse(
  JSON.parse(readFileSync(new URL('../../data/demo-shop.json', import.meta.url), 'utf8')),
);

/** Wednesday 25 November 2026, 19:10 in the shop's zone. */
export const NOW = Date.UTC(2026, 10, 26, 1, 10);

export const football: Spec = {
  style: 'football',
  weight: '3/8',
  hook: '4/0',
  paint: 'green-pumpkin',
  guard: 'brown',
  keeper: 'wire',
  dressing: 'skirt-green-pumpkin',
  metal: 'lead',
};
export const ball: Spec = {
  style: 'ball',
  weight: '1/8',
  hook: '1',
  paint: 'bare',
  guard: 'none',
  keeper: 'barb',
  dressing: 'none',
  metal: 'bismuth-tin',
};
const lines = [
  { spec: football, quantity: 30 },
  { spec: ball, quantity: 12 },
];

const fresh = emptyDraft('D1', null, NOW);
export const draft: Draft = {
  ...fresh,
  version: 4,
  lines: [
    { ...emptyLine, spec: { ...football, keeper: undefined, metal: undefined }, quantity: 30, photos: ['f1'] },
    { ...emptyLine, spec: { style: 'ball', weight: '1/8' }, quantity: 12, wantsGuard: true },
  ],
  needBy: '2026-12-01',
  shipTo: 'US-MN',
  unclear: [{ slot: 'paint', said: 'with <b>glitter</b>' }],
  misses: 1,
};
const oneLine: Draft = { ...draft, lines: draft.lines.slice(0, 1) };

const money = moneyFor(shop, lines, 'US-MN');
if (money === undefined) throw new Error('The demo shop posts to Minnesota.');
export const oneLineMoney = moneyFor(shop, lines.slice(1), 'US-MN') ?? money;

export const because: readonly Because[] = [
  { code: 'material', until: NOW + 10 * HOUR },
  { code: 'hours', until: NOW + 11 * HOUR },
  { code: 'hands', until: NOW + 20 * HOUR, with: ['K-1000-1'] },
  { code: 'hands', until: NOW + 22 * HOUR, with: ['K-1000-2'] },
  { code: 'work', do: 'paint', until: NOW + 23 * HOUR },
  { code: 'oven', until: NOW + 24 * HOUR },
  { code: 'lag', do: 'cure', until: NOW + 54 * HOUR },
  { code: 'post', day: '2026-11-30', by: NOW + 100 * HOUR },
  { code: 'spare', day: '2026-12-01' },
];

export const quote: Quote = {
  draft: 'D1',
  version: 4,
  lines,
  shipTo: 'US-MN',
  money,
  promise: { ships: '2026-11-30', confidence: 1 },
  because: [...because],
  goodUntil: NOW + 72 * HOUR,
};

export const order: Order = {
  id: 'K-1042',
  draft: 'D1',
  buyer: 7,
  state: 'accepted',
  lines,
  photos: [['f1'], []],
  said: [['32 football 3/8 green pumpkin, brown guard', 'wire keepers please'], []],
  needBy: '2026-12-01',
  shipTo: 'US-MN',
  address: 'Ann Bee\n1 Main Street\nAda MN 56510',
  money,
  promise: { ships: '2026-11-30', confidence: 1 },
  slip: null,
  acceptedAt: NOW,
  cancelAskedAt: null,
  cancelKeeps: null,
  packedAt: null,
  shippedAt: null,
  tracking: null,
  ledger: [],
  used: {},
  lots: [],
  made: [],
};

const kept: Parting = {
  order: 'K-1042',
  rule: [
    { stage: 'cast', kept: 50_000 },
    { stage: 'painted', kept: 75_000 },
  ],
  why: 'rule',
  keeps: 2671,
  paid: 0,
  back: 0,
  owed: 2671,
};
/** Kept and owed, kept of what was paid, just what was paid, nothing kept, less kept for it was told, and nothing for the delay is the shop's. */
const partings: readonly Parting[] = [
  kept,
  { ...kept, paid: 4242, back: 1571, owed: 0 },
  { ...kept, paid: 2671, owed: 0 },
  { ...kept, rule: [{ stage: 'waiting', kept: 0 }], keeps: 0, owed: 0 },
  { ...kept, why: 'told', keeps: 1200, owed: 1200 },
  { ...kept, why: 'late', keeps: 0, paid: 4242, back: 4242, owed: 0 },
];

export const lot: Lot = newLot('K-1042-1', 'K-1042', football, 30, {});
export const bareLot: Lot = newLot('K-1042-2', 'K-1042', ball, 12, {});
const running: Lot = {
  ...lot,
  good: 31,
  steps: lot.steps.map((step) => ({ ...step, state: step.step === 'pour' ? ('running' as const) : step.state })),
};
const finished: Lot = {
  ...bareLot,
  good: 12,
  steps: bareLot.steps.map((step) => ({ ...step, state: 'done' as const })),
};

export const facts: OrderFacts = { order, lots: [lot, running, finished], ships: '2026-11-30', waits: null };

export const session: Session = {
  id: 'S1',
  step: 'pour',
  family: 'football-3/8-lead',
  shares: [{ lot: 'K-1042-1', heads: 32 }],
  startedAt: NOW,
  scrap: {},
};
const baking: Session = {
  ...session,
  id: 'S2',
  step: 'bake',
  family: '177C',
  shares: [
    { lot: 'K-1042-1', heads: 30 },
    { lot: 'K-1042-2', heads: 1, cancelled: true },
  ],
  scrap: { 'K-1042-1': 2 },
};

export const work: WorkFacts = {
  short: [{ item: 'hook:60-flat-heavy:6/0', heads: 10, of: 32 }],
  melt: 1234,
  counts: [{ lot: 'K-1042-1', from: 20, to: 25 }],
  bake: { comeUp: 7.4, hold: 20, overbaked: 2.3 },
  glue: { mixes: 3, guardsPerMix: 13, potLife: 5.4 },
  cureHours: 29.7,
  tooColdBelow: null,
  cautions: ['dry-metal', 'fan-on'],
};

export const timer = (kind: Timer['kind'], lateMinutes: number): TimerFacts => ({
  timer: {
    id: `T-${kind}`,
    kind,
    session: kind === 'bake' ? 'S2' : null,
    lots: ['K-1042-1'],
    dueAt: NOW - lateMinutes * MINUTE,
    firstDueAt: NOW - lateMinutes * MINUTE,
    toldAt: null,
    course: null,
    told: 0,
  },
  lots: [lot],
  cancelled: kind === 'bake' && lateMinutes === 90 ? ['K-1042-2'] : [],
  overMinutes: lateMinutes,
  glue: kind === 'glue' ? { guards: 13, after: lateMinutes } : null,
  lateMinutes,
});
const timers = TIMER_KINDS.flatMap((kind) => [timer(kind, 0), timer(kind, 23), timer(kind, 90)]);

const law = {
  slots: ['metal'],
  place: 'US-NH',
  row: 'nh-sale',
  fact: { en: 'New Hampshire bans it.', es: 'Nuevo Hampshire lo prohíbe.' },
  citation: 'RSA 1',
  asOf: '2026-07',
  since: '2027-01-01',
  tag: 'V2',
} as const;
const item = 'hook:60-flat-heavy:6/0';

type Remarks = { readonly [Code in Remark['code']]: readonly Remark[] };
const REMARKS: Remarks = {
  'no-such-weight': [
    { code: 'no-such-weight', slots: ['weight', 'style'], style: 'ball', weight: '5/8', weights: ['1/16', '1/8'] },
  ],
  'weight-unknown': [{ code: 'weight-unknown', slots: ['weight'], weight: '7', weights: ['1/16', '1'] }],
  'hook-does-not-fit': [
    { code: 'hook-does-not-fit', slots: ['hook', 'weight'], hook: '8', fits: ['3/0', '4/0'] },
    { code: 'hook-does-not-fit', slots: ['hook', 'weight'], hook: '8', fits: ['3/0'] },
  ],
  'no-guard-hole': [{ code: 'no-guard-hole', slots: ['guard', 'style'], style: 'ball' }],
  'guard-too-thick': [{ code: 'guard-too-thick', slots: ['guard'], guard: 'brown', pin: '1/16' }],
  'keeper-not-in-mold': [
    { code: 'keeper-not-in-mold', slots: ['keeper', 'style'], style: 'ball', keeper: 'wire', keepers: ['barb'] },
    {
      code: 'keeper-not-in-mold',
      slots: ['keeper', 'style'],
      style: 'swim',
      keeper: 'barb',
      keepers: ['wire', 'none'],
    },
  ],
  'takes-no-dressing': [{ code: 'takes-no-dressing', slots: ['dressing', 'style'], style: 'ball' }],
  'melts-in-oven': [
    { code: 'melts-in-oven', slots: ['metal', 'paint'], metal: 'bismuth-tin', solidus: 138, oven: 177 },
  ],
  'not-together': [{ code: 'not-together', slots: ['style', 'hook', 'keeper'] }],
  'too-few': [{ code: 'too-few', slots: ['quantity'], quantity: 2, least: 5 }],
  'too-many': [{ code: 'too-many', slots: ['quantity'], quantity: 2000, most: 500 }],
  'waits-for-stock': [
    {
      code: 'waits-for-stock',
      slots: ['hook'],
      item,
      need: 120,
      free: 90,
      instead: ['5/0'],
      day: '2026-12-03',
      due: null,
    },
    {
      code: 'waits-for-stock',
      slots: ['hook'],
      item,
      need: 120,
      free: 90,
      instead: [],
      day: '2026-12-13',
      due: '2026-12-03',
    },
  ],
  'out-of-stock': [{ code: 'out-of-stock', slots: ['hook'], item, need: 1200, free: 90, instead: [] }],
  'law-refuses': [{ ...law, code: 'law-refuses', why: 'in-force' }],
  'law-holds': [
    { ...law, code: 'law-holds', why: 'length-unknown' },
    { ...law, code: 'law-holds', why: 'unclear-cover', tag: 'M' },
    { ...law, code: 'law-holds', why: 'only-hook-clears-it', tag: 'V' },
  ],
  'law-notice': [
    { ...law, code: 'law-notice', why: 'from-later' },
    { ...law, code: 'law-notice', why: 'not-yet-law', since: null },
  ],
  'no-postage': [{ code: 'no-postage', slots: [], place: 'JP' }],
};

export const findings: readonly Finding[] = Object.values(REMARKS)
  .flat()
  .map((why) => ({ kind: KIND[why.code], line: 1, why, ways: [] }));

const question: Question = {
  id: 'Q1',
  from: 7,
  order: 'K-1042',
  said: 'Can you do pink?',
  askedAt: NOW,
  answeredAt: null,
  wish: null,
};

const HELPS: readonly Help[] = [
  { do: 'change', change: { do: 'first', order: 'K-1042' }, ships: '2026-11-30' },
  { do: 'change', change: { do: 'release', order: 'K-1042' }, ships: '2026-11-30' },
  { do: 'change', change: { do: 'extra', day: '2026-11-30', from: '11:30', to: '12:00' }, ships: '2026-11-30' },
];

const danger: Danger = {
  waits: null,
  packed: false,
  missing: [],
  late: false,
  order: 'K-1042',
  buyer: 'Ann',
  promised: '2026-11-30',
  ships: '2026-12-01',
  because: [
    { code: 'material', until: NOW + 10 * HOUR },
    { code: 'hands', until: NOW + 20 * HOUR, with: ['K-1000', 'K-1001'] },
    { code: 'hours', until: NOW + 24 * HOUR },
    { code: 'oven', until: NOW + 26 * HOUR },
    { code: 'lag', do: 'cure', until: NOW + 54 * HOUR },
    { code: 'work', do: 'pack', until: NOW + 55 * HOUR },
    { code: 'post', day: '2026-12-01', by: NOW + 200 * HOUR },
  ],
};

const COMING: readonly Coming[] = [
  { what: 'post', orders: ['K-1040', 'K-1041'], by: NOW },
  { what: 'danger', danger },
  { what: 'unpaid', order: 'K-1042', buyer: 'Ann', day: '2026-12-01' },
  { what: 'quote', buyer: 'Ann', until: NOW },
  { what: 'restock', item: 'hook:60-flat-heavy:6/0', count: 200, day: '2026-12-03', named: '2026-12-03', overdue: 0 },
];

export const digest: Digest = {
  day: '2026-11-25',
  work: [{ step: 'pour', family: 'football-3/8-lead', heads: 30, minutes: 25 }],
  melt: [{ metal: 'lead', grams: 1234 }],
  done: [{ step: 'trim', heads: 24 }],
  leaving: { orders: ['K-1040'], by: NOW + 16 * HOUR },
  hours: 180,
  planned: 25,
  ready: [{ step: 'pour', family: 'football-3/8-lead', shares: session.shares }],
  due: [
    { order: 'K-1042', promised: '2026-11-30' },
    { order: 'K-1043', promised: '2026-11-30' },
  ],
  unbegun: [{ order: 'K-1044', cents: 2121 }],
  toPost: ['K-1045'],
  timers: [timer('cure', 0)],
  short: [{ item, unit: 'piece', onHand: 10, reserved: 24, inWork: 0, coming: [] }],
  deliveries: [
    { item, day: '2026-11-26', named: '2026-11-26', overdue: 0, count: 200 },
    { item, day: '2026-12-06', named: '2026-11-20', overdue: 6, count: 100 },
  ],
  questions: [question],
  undelivered: 2,
  unpaid: [
    { order: 'K-1042', buyer: 'Ann', due: 2000, over: 0, kept: 0, dueOn: '2026-11-20', late: 5 },
    { order: 'K-1043', buyer: 'Ann', due: 0, over: 500, kept: 0, dueOn: '2026-11-20', late: 5 },
  ],
  cancels: ['K-1042'],
  unaddressed: ['K-1042', 'K-1043'],
  danger: [danger],
};
const quiet: Digest = {
  ...digest,
  work: [],
  melt: [],
  done: [],
  leaving: null,
  hours: 0,
  planned: 0,
  ready: [],
  due: [],
  toPost: [],
  timers: [],
  short: [],
  deliveries: [],
  questions: [],
  undelivered: 0,
  unpaid: [],
  cancels: [],
  unaddressed: [],
  danger: [],
};

const at = (day: number, hour: number, minute = 0): number => Date.UTC(2026, 10, day, hour + 6, minute);
const idleWeek: Week = {
  now: NOW,
  days: [25, 26, 27, 28, 29, 30, 31].map((day) => ({
    day: localDay(at(day, 12), shop.zone),
    hours: [],
    work: [],
    cures: [],
    ships: [],
    promised: [],
  })),
  why: [],
};
export const week: Week = {
  ...idleWeek,
  days: idleWeek.days.map((one, place) => {
    const day = 25 + place;
    if (place % 2 === 1) return one;
    return {
      ...one,
      hours: [{ from: at(day, 18, 30), to: at(day, 21, 30) }],
      work: [
        {
          step: 'pour',
          family: 'football-3/8-lead',
          heads: 30,
          from: at(day, 19, 10),
          begun: at(day, 19, 10),
          to: at(day, 20),
        },
        {
          step: 'paint',
          family: 'green-pumpkin',
          heads: 30,
          from: at(day, 20),
          begun: at(day, 20),
          to: at(day, 20, 30),
        },
        { step: 'bake', family: '177C', heads: 30, from: at(day, 20, 30), begun: at(day, 20, 30), to: at(day, 21, 10) },
      ],
      cures: [{ heads: 30, from: at(day, 21, 20), to: at(day + 1, 0), until: at(day + 1, 21) }],
      ships: ['K-1042'],
      promised: [
        { order: 'K-1042', mark: null },
        { order: 'K-1043', mark: 'late' },
        { order: 'K-1044', mark: 'danger' },
      ],
    };
  }),
};

const health: Health = {
  version: '1.0.0',
  startedAt: NOW,
  lastPoll: NOW,
  lastWrite: NOW,
  lastBackup: NOW,
  waiting: 2,
  waitingMs: 1000,
  undelivered: 1,
};

/** One change of each kind. */
const CHANGES: readonly Change[] = [
  { do: 'off', day: '2026-12-05' },
  { do: 'on', day: '2026-12-05' },
  { do: 'extra', day: '2026-12-06', from: '13:00', to: '15:00' },
  { do: 'hours', day: '2026-12-06', from: '13:00', to: '15:00' },
  { do: 'first', order: 'K-1042' },
  { do: 'hold', order: 'K-1042' },
  { do: 'release', order: 'K-1042' },
  { do: 'remake', lot: 'K-1042-1' },
  { do: 'shelve', lot: 'K-1042-1' },
  { do: 'join', lot: 'K-1042-1' },
  { do: 'split', lot: 'K-1042-1', heads: 10, of: 32 },
  { do: 'away', day: '2026-12-05', from: '10:00', to: '24:00' },
  { do: 'away', day: '2026-12-05', from: '00:00', to: '10:00' },
  { do: 'away', day: '2026-12-05', from: '09:00', to: '10:00' },
];

type OneOf<Code extends Saying['code']> = Omit<Extract<Saying, { code: Code }>, 'code'>;
type Samples = { readonly [Code in Saying['code']]: readonly [OneOf<Code>, ...OneOf<Code>[]] };

const progress = { line: 2, lines: 3, left: 4 };

export const SAMPLES: Samples = {
  ...businessSamples(shop, order),
  welcome: [{}],
  question: [
    { draft: fresh, ask: 'style', findings: [], usual: null, progress: { line: 1, lines: 1, left: 5 } },
    { draft: oneLine, ask: 'usual', findings: [], usual: football, progress: { line: 1, lines: 1, left: 1 } },
    ...ASKS.map((ask) => ({ draft, ask, findings: [], usual: ask === 'usual' ? ball : null, progress })),
    ...ASKS.map((ask) => ({
      draft: { ...oneLine, changing: ask },
      ask,
      findings: [],
      usual: null,
      progress: { line: 1, lines: 1, left: 0 },
    })),
  ],
  summary: [
    {
      draft,
      quote,
      madeGrams: [10.7, 2.7],
      usual: [['keeper', 'metal'], []],
      notes: findings,
      missed: '2026-11-28',
      sooner: [],
    },
    {
      draft: { ...oneLine, unclear: [], needBy: null },
      quote: { ...quote, lines: lines.slice(1), money: oneLineMoney, because: [] },
      madeGrams: [3.5],
      usual: [[]],
      notes: [],
      sooner: (['rush', 'bare', 'unguarded', 'fewer'] as const).map((way) => ({
        way,
        lines: [],
        ships: '2026-12-01',
        charge: 540,
      })),
      missed: null,
    },
  ],
  stuck: [
    { draft, findings, why: [] },
    ...(
      [
        { code: 'no-hours' },
        { code: 'hours-end' },
        { code: 'no-post' },
        { code: 'no-rack', heads: 40 },
        { code: 'setup-too-long', do: 'pour', minutes: 300, longest: 180 },
        { code: 'bake-too-long', minutes: 300, longest: 180 },
      ] as const
    ).map((why) => ({ draft: oneLine, findings: [], why: [why] })),
    ...findings.map((one) => ({ draft: oneLine, findings: [one], why: [] })),
  ],
  'not-understood': some(
    [1, 2, 3, 4, 5].flatMap((misses) =>
      [...ASKS, 'stuck' as const, 'whole' as const].map((hint) => ({ draft, misses, hint })),
    ),
  ),
  'change-what': [{ draft }, { draft: oneLine }],
  range: [
    { about: 'paint', all: ['black', 'bare'], fitting: ['bare'], lacks: null },
    { about: 'weight', all: ['1/4', '3/8'], fitting: null, lacks: 'a shade between green and blue' },
    { about: 'guard', all: ['none', 'black'], fitting: null, lacks: null },
  ],
  makes: [
    { spec: { style: 'football', weight: '3/8' }, findings: [] },
    ...findings.map((one) => ({ spec: { style: 'ball' }, findings: [one] })),
  ],
  'quote-later': [
    { each: 110, count: null, total: 110 },
    { each: 110, count: 50, total: 5225 },
  ],
  'day-later': [{}],
  gladly: [{}],
  'posts-to': [
    { to: 'US-OH', from: 520, places: ['US', 'CA'] },
    { to: 'MX-SON', from: null, places: ['US'] },
    { to: null, from: null, places: ['US', 'CA'] },
  ],
  'you-are-welcome': [{}],
  'too-many-lines': [
    { over: 1, most: 10 },
    { over: 3, most: 1 },
  ],
  'started-over': [{}],
  'drop-sure': [
    { draft, again: null },
    { draft, again: 'K-1001' },
  ],
  'yes-to-which': [{}],
  stale: [{}],
  'fitting-answer': [{ thing: 'photo', kept: true }, ...THINGS.map((thing) => ({ thing, kept: false }))],
  'photos-full': [{ most: 10 }],
  'photo-of-which': [{}],
  'photo-kept': [
    { order: 'K-1042', line: { spec: football, quantity: 30 }, photos: 1 },
    { order: 'K-1042', line: { spec: football, quantity: 30 }, photos: 3 },
  ],
  'pass-on': [
    { said: 'can you make the hooks sharper on mine?', orders: 1 },
    { said: 'bigger eyes', orders: 2 },
  ],
  help: [{}],
  privacy: [{}],
  export: [{}],
  'export-lately': [{}],
  'forget-sure': [{ orders: [] }, { orders: ['K-1042', 'K-1043'] }],
  'forget-later': [{ orders: ['K-1042'] }],
  forgotten: [{}],
  'too-many-open': [{ most: 5 }, { most: 1 }],
  'too-many-questions': [{ most: 5 }, { most: 1 }],
  edited: [{ text: '12 please' }],
  continue: [{ draft, since: NOW }],
  accepted: [{ order }],
  'already-accepted': [{ order: 'K-1042' }],
  'quote-over': [{ draft }],
  'address-kept': [{ order }],
  'address-elsewhere': [
    { order, place: 'US-OH', moved: { ...order, shipTo: 'US-OH', money: oneLineMoney } },
    { order, place: 'US-WA', moved: null },
  ],
  reshipped: [
    { order, balance: balanceOf(4700, []) },
    { order, balance: balanceOf(4700, [{ at: 0, kind: 'paid', cents: 2000, why: '' }]) },
    { order, balance: balanceOf(4700, [{ at: 0, kind: 'paid', cents: 5000, why: '' }]) },
  ],
  'ask-address': [
    { order: 'K-1042', before: null },
    { order: 'K-1042', before: '12 Shore Road' },
  ],
  orders: [
    {
      orders: [
        facts,
        { ...facts, ships: '2026-12-02' },
        { ...facts, ships: '2026-11-27' },
        { ...facts, ships: null },
        { ...facts, ships: null, waits: { for: 'hold' } },
        { ...facts, ships: null, waits: { for: 'money', cents: 2121 } },
        { ...facts, order: { ...order, slip: '2026-12-05' } },
      ],
    },
  ],
  order: [
    { facts },
    { facts: { ...facts, lots: [], ships: null } },
    { facts: { ...facts, order: { ...order, ledger: [{ at: NOW, kind: 'paid', cents: 3000, why: '' }] } } },
    ...ORDER_STATES.map((state) => ({
      facts: { ...facts, order: { ...order, state, address: null, cancelAskedAt: NOW } },
    })),
  ],
  'no-orders': [{}],
  'no-such-order': [{ said: 'K-9' }],
  'cancel-sure': partings.map((parting, at) => ({ parting, asks: at % 2 === 0 })) as never,
  cancelled: partings.map((parting) => ({ parting })) as never,
  'cancel-asked': [{ parting: kept }],
  'cancel-refused': [{ order: 'K-1042' }],
  making: [{ order: 'K-1042' }],
  packed: [{ order: 'K-1042' }],
  shipped: [
    { order: 'K-1042', tracking: null },
    { order: 'K-1042', tracking: '9400 1000' },
  ],
  'ask-question': [{}],
  'question-sent': [{ question: 'Q1' }],
  'maker-says': [{ text: 'Pink is fine.', about: 'Can you do pink?' }],
  'maker-welcome': [{ cautions: [...CAUTIONS] }],
  'maker-help': [{}],
  'for-maker-only': [{}],
  health: [
    { around: null },
    { around: { health, ailments: [] } },
    { around: { health: { ...health, lastBackup: null }, ailments: [...AILMENTS] } },
  ],
  'new-order': [
    { order, buyer: 'Ann', cost: costOrder(shop, order.lines, order.money), shelf: 0 },
    { order, buyer: 'Ann', cost: costOrder(shop, order.lines, order.money), shelf: 5 },
  ],
  'order-address': [
    { order, buyer: 'Ann' },
    { order: { ...order, address: 'Ann Bee, 1 Main Street, Columbus OH 43004' }, buyer: 'Ann' },
  ],
  'wish-sent': [
    { said: 'pink glitter', finding: null },
    ...findings.map((finding) => ({ said: 'law-holds', finding })),
  ],
  'wish-answered': some(
    [null, 0, 25].flatMap((cents) => ['paint', 'law-holds'].map((slot) => ({ said: 'pink glitter', slot, cents }))),
  ),
  'buyer-wishes': [
    { question, buyer: 'Ann', draft, finding: null },
    ...findings.map((finding) => ({ question, buyer: 'Ann', draft: null, finding })),
  ],
  'buyer-asks': [
    { question, buyer: 'Ann', draft: null },
    { question: { ...question, order: null }, buyer: 'Ann', draft },
  ],
  'ask-reply': [{ question, buyer: 'Ann' }],
  'reply-sent': [{ buyer: 'Ann' }],
  'buyer-cancels': [{ order, buyer: 'Ann', parting: kept, fate: { shelved: 0, scrapped: 27 } }],
  'buyer-cancelled': partings.map((parting) => ({
    parting,
    buyer: 'Ann',
    fate: { shelved: 12, scrapped: 0 },
  })) as never,
  bench: [
    {
      ready: digest.ready.map((one) => ({
        ...one,
        shares: [{ lot: 'K-1042-1', heads: 30, left: 2 }],
        short: [{ item: 'hook:60-flat-heavy:6/0', heads: 10, of: 32 }],
      })),
      running: [session, baking],
      lots: [lot],
      timers,
    },
    { ready: [], running: [], lots: [], timers: [] },
  ],
  session: [
    {
      session,
      lots: [{ lot, heads: 32, said: ['32 football 3/8 green pumpkin', 'wire keepers please'] }],
      facts: work,
    },
    {
      session: baking,
      lots: [
        { lot, heads: 30, said: ['x'.repeat(300)] },
        { lot: bareLot, heads: 1, said: [] },
      ],
      facts: { ...work, glue: { mixes: 1, guardsPerMix: 1, potLife: 5 } },
    },
    {
      session: { ...session, step: 'cool' },
      lots: [{ lot: bareLot, heads: 12, said: [] }],
      facts: { ...work, melt: null, counts: [], bake: null, glue: null, cureHours: null, cautions: [] },
    },
  ],
  'start-passed': [
    { offer: { step: 'trim', lot: 'K-1042-1', lots: 1, heads: 32 }, why: 'done', ready: [] },
    { offer: { step: 'paint', lot: 'K-1042-1', lots: 1, heads: 32 }, why: 'running', ready: [] },
    { offer: { step: 'clear-eyes', lot: 'K-1042-1', lots: 1, heads: 32 }, why: 'gone', ready: [] },
    { offer: null, why: 'other', ready: [{ step: 'trim', family: '-', shares: [{ lot: 'K-1042-1', heads: 32 }] }] },
  ],
  'too-cold': [{ below: 10 }],
  'ready-to-post': [{ order: 'K-1042' }],
  count: [{ session, lot, heads: 32 }],
  'step-done': [
    { session, lots: [lot, finished], topUps: [], letGo: [], beyond: [] },
    {
      session: baking,
      lots: [lot],
      topUps: [],
      beyond: [],
      letGo: [
        { lot: 'K-1042-1', heads: 1 },
        { lot: 'K-1042-2', heads: 3 },
      ],
    },
    {
      session,
      lots: [running],
      letGo: [],
      beyond: [{ item, count: 39 }],
      topUps: [{ ...lot, id: 'K-1042-1b', heads: 4 }],
    },
    {
      session: { ...session, shares: [{ lot: 'K-1042-1', heads: 30, left: 2 }] },
      lots: [running],
      topUps: [],
      letGo: [],
      beyond: [],
    },
  ],
  'oven-taken': [{ session: baking }],
  undone: [{ what: 'start/pour' }, { what: 'done/clear-eyes' }],
  'nothing-to-undo': [{}],
  'undo-old': [{ what: 'done/bake', at: 1_764_547_200_000 }],
  'goes-on': [{ order: 'K-1042' }],
  'put-off': [{ timer: timer('bake', 0).timer, minutes: 5 }],
  'timer-due': some(timers.map((one) => ({ facts: one }))),
  'timers-due': [{ timers, wasOff: 95 }],
  timers: [
    { timers, coming: COMING },
    { timers: [], coming: [] },
    { timers: [], coming: Array.from({ length: 40 }, (): Coming => ({ what: 'quote', buyer: 'Ann', until: NOW })) },
  ],
  digest: [
    { digest },
    { digest: quiet },
    {
      digest: {
        ...digest,
        work: [],
        danger: [danger, { ...danger, late: true }, { ...danger, ships: null, waits: { for: 'hold' } }],
      },
    },
  ],
  queue: [{ orders: [facts] }, { orders: [] }],
  week: [{ week }, { week: idleWeek }, { week: { ...idleWeek, why: [{ code: 'no-hours' }] } }],
  'order-sheet': [
    { facts, buyer: 'Ann', danger: null, leaving: null },
    { facts, buyer: 'Ann', danger, leaving: { parting: kept, fate: { shelved: 2, scrapped: 25 } } },
  ],
  stock: [
    {
      rows: shop.stock.map(({ item, unit, onHand }) => ({
        item,
        unit,
        onHand,
        reserved: 3,
        inWork: 2,
        coming: [
          { item, day: '2026-12-03', named: '2026-12-03', overdue: 0, count: 200 },
          { item, day: '2026-12-13', named: '2026-12-01', overdue: 2, count: 100 },
        ],
      })),
      shelf: [{ spec: lot.spec, count: 12 }],
    },
    {
      rows: shop.stock.map(({ item, unit, onHand }) => ({ item, unit, onHand, reserved: 0, inWork: 0, coming: [] })),
      shelf: [],
    },
  ],
  arrived: [{ item: 'paint:black', count: 230, onHand: 650 }],
  'garage-set': [
    { celsius: 15, cures: [timer('cure', 0)], leastCelsius: 10 },
    { celsius: 5, cures: [stillCure()], leastCelsius: 10 },
    { celsius: 20, cures: [], leastCelsius: 10 },
  ],
  'which-temperature': [{}],
  'which-oven': [{}],
  'maker-unclear': [{}],
  'oven-at': some(
    (['short', 'enough', 'long'] as const).map((verdict) => ({ celsius: 162.8, hold: 20, wanted: 33.9, verdict })),
  ),
  reckoner: [
    {
      facts: {
        spec: football,
        quantity: 25,
        heads: 27,
        weights: [
          { metal: 'lead', grams: 11.234, bakes: true },
          { metal: 'bismuth-tin', grams: 8.5, bakes: false },
        ],
        count: { from: 20.2, to: 25.1 },
        bake: { comeUp: 7.3, hold: 20 },
        powder: 1.92,
        cure: { full: 29.6, overnight: 10 },
        garage: 20,
        melt: 412,
      },
    },
    {
      facts: {
        spec: ball,
        quantity: 25,
        heads: 27,
        weights: [],
        count: null,
        bake: null,
        powder: null,
        cure: null,
        garage: 3,
        melt: 412,
      },
    },
  ],
  'which-head': [{}],
  'ask-tracking': [{ order: 'K-1042' }],
  'ask-tracking-after': [{ order: 'K-1042' }],
  'tracking-kept': [{ order: 'K-1042' }],
  tracking: [{ order: 'K-1042', tracking: 'LX 1234' }],
  posted: [{ order: 'K-1042' }],
  'in-danger': [
    { danger, helps: [] },
    { danger: { ...danger, because: [], late: true }, helps: HELPS },
    { danger: { ...danger, ships: null, waits: { for: 'hold' }, because: [] }, helps: [HELPS[1]!] },
    { danger: { ...danger, packed: true, because: [] }, helps: [{ do: 'post', by: NOW }] },
    {
      danger: {
        ...danger,
        missing: [
          { item: 'guard:black', count: 15, due: null },
          { item: 'hook:60-flat-heavy:6/0', count: 5, due: '2026-11-20' },
        ],
      },
      helps: [{ do: 'buy' }],
    },
  ],
  begun: [{ order: 'K-1042', ships: '2026-12-04' }],
  'which-work': [{}],
  'nothing-runs': [{}],
  minutes: [
    {
      rows: TIMED.map((step) => ({ step, times: 0, factor: 1 })),
      scrap: { heads: 0, bad: 0, share: shop.casting.scrapShare },
      evenings: { all: 0, missed: 0, share: 0.05 },
    },
    {
      rows: TIMED.map((step) => ({ step, times: 12, factor: 1.4 })),
      scrap: { heads: 240, bad: 20, share: 0.07 },
      evenings: { all: 40, missed: 3, share: 0.07 },
    },
  ],
  'close-down': [
    { facts: { baking, running: [session], overnight: digest.ready, cautions: ['wash', 'bag-dross'] } },
    { facts: { baking: null, running: [], overnight: [], cautions: ['wash'] } },
  ],
  'lot-card': [
    { lot, said: ['32 football 3/8 green pumpkin, brown guard', 'wire keepers please'] },
    { said: [], lot: { ...running, scrap: 2, steps: running.steps.map((step) => ({ ...step, startedAt: NOW })) } },
    {
      said: ['x'.repeat(300), 'y'.repeat(300)],
      lot: { ...finished, shelf: 12, steps: finished.steps.map((step) => ({ ...step, startedAt: NOW, doneAt: NOW })) },
    },
  ],
  'hand-in': [
    { orders: ['K-1042'], by: NOW },
    { orders: ['K-1042', 'K-1043'], by: NOW },
  ],
  'restock-day': [{ deliveries: digest.deliveries }],
  'which-change': [{ about: 'day' }, { about: 'hours' }, { about: 'order' }, { about: 'lot' }, { about: 'split' }],
  'no-change': some([
    ...CHANGES.map((change) => ({ change, why: null, step: null })),
    ...OBSTACLES.map((why) => ({
      change: { do: 'split', lot: 'K-1042-1', heads: 10, of: 32 } as const,
      why,
      step: 'trim' as const,
    })),
  ]),
  'unpaid-due': [{ rows: digest.unpaid }],
  hours: [{ days: week.days.map(({ day, hours }) => ({ day, spans: hours })) }],
  'change-effect': [
    { change: { do: 'off', day: '2026-12-05' }, effects: [] },
    {
      change: { do: 'hold', order: 'K-1042' },
      effects: [
        { order: 'K-1042', promised: '2026-11-30', before: '2026-11-30', after: null },
        { order: 'K-1043', promised: '2026-11-30', before: null, after: '2026-12-02' },
      ],
    },
  ],
  changed: some(CHANGES.map((change) => ({ change }))),
  'fresh-mix': [
    { guards: 13, left: 14, until: NOW },
    { guards: 1, left: 0, until: NOW },
  ],
  'quote-ends': [{ until: NOW }],
  'order-photo': [
    { order: 'K-1042', buyer: 'Ann', line: { spec: football, quantity: 30 }, said: '' },
    { order: 'K-1042', buyer: 'Ann', line: { spec: ball, quantity: 12 }, said: 'eyes like this' },
  ],
  'buyer-photo': [{ order: 'K-1042', number: 1, photos: 2, line: { spec: football, quantity: 30 } }],
  'delay-told': [{ order: 'K-1042', ships: '2026-12-02' }],
  'delay-over': [{ order: 'K-1042' }],
  'waits-for-money': [{ order: 'K-1042' }],
  'not-packed': [{ order: 'K-1042' }],
  'delay-moved': [
    { order: 'K-1042', ships: '2026-12-02' },
    { order: 'K-1042', ships: null },
  ],
  delayed: [{ order: 'K-1042', promised: '2026-11-30', ships: '2026-12-02' }],
  waits: [{ order: 'K-1042', ships: '2026-12-02' }],
  'buyer-waits': [{ order: 'K-1042', ships: '2026-12-02', buyer: 'Ann' }],
};

/** A list that has something in it. */
function some<T>(all: readonly T[]): readonly [T, ...T[]] {
  const [first, ...rest] = all;
  if (first === undefined) throw new Error('There is no sample.');
  return [first, ...rest];
}

function stillCure(): TimerFacts {
  const cure = timer('cure', 0);
  const course = { spells: [], since: NOW, celsius: 5, still: true };
  return { ...cure, timer: { ...cure.timer, course } };
}

/** Every sample as the saying it is. */
export const sayings: readonly Saying[] = Object.entries(SAMPLES).flatMap(([code, all]) =>
  all.map((one) => ({ ...one, code }) as Saying),
);
