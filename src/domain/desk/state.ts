import { z } from 'zod';
import { lotSchema } from '../bench/lot.ts';
import { sessionSchema } from '../bench/session.ts';
import { timerSchema } from '../bench/timer.ts';
import { MOMENTS } from '../craft/care.ts';
import { draftSchema } from '../order/draft.ts';
import { orderSchema } from './order.ts';
import { personId, personSchema } from './person.ts';
import { quoteSchema } from './quoted.ts';

const instant = z.number();

/** A wish that the shop file does not answer: words for a slot of a draft's line, or a finding that only the maker can let pass. */
const wishSchema = z.strictObject({
  draft: z.string(),
  line: z.number().int().min(0),
  slot: z.string(),
  said: z.string(),
  pass: z.string().nullable(),
});
export type Wish = Readonly<z.infer<typeof wishSchema>>;

/** Something a buyer wants the maker to answer, and what became of it. */
export const questionSchema = z.strictObject({
  id: z.string(),
  from: personId,
  /** The order it is about, if it is about one. */
  order: z.string().nullable(),
  said: z.string(),
  askedAt: instant,
  answeredAt: instant.nullable(),
  /** What can be answered with a tap and then flows back into a draft. */
  wish: wishSchema.nullable().default(null),
});
export type Question = Readonly<z.infer<typeof questionSchema>>;

/** What the last act at the bench changed, so that a mis-tap can be taken back once. */
export const undoSchema = z.strictObject({
  what: z.string(),
  at: instant,
  lots: z.record(z.string(), lotSchema.nullable()),
  sessions: z.record(z.string(), sessionSchema.nullable()),
  timers: z.record(z.string(), timerSchema.nullable()),
  onHand: z.record(z.string(), z.number()),
});
export type Undo = Readonly<z.infer<typeof undoSchema>>;

const planOrderSchema = z.strictObject({
  places: z.array(z.strictObject({ lot: z.string(), do: z.string(), key: z.number() })),
  grouping: z.number(),
  ahead: z.number(),
  patience: z.number(),
  yields: z.number(),
  crumb: z.number(),
});

/** The whole live state of one shop: what is open and nothing that is closed, so it stays as small as one bench. */
export const deskSchema = z.strictObject({
  people: z.record(z.string(), personSchema),
  /** By person: each has one draft at most. */
  drafts: z.record(z.string(), draftSchema),
  /** By draft: the quote last shown. */
  quotes: z.record(z.string(), quoteSchema),
  orders: z.record(z.string(), orderSchema),
  lots: z.record(z.string(), lotSchema),
  sessions: z.record(z.string(), sessionSchema),
  timers: z.record(z.string(), timerSchema),
  questions: z.record(z.string(), questionSchema),
  onHand: z.record(z.string(), z.number()),
  /** Deliveries put away, as `item@day`. */
  arrived: z.array(z.string()),
  /** Good heads made over, by spec written as one line. */
  shelf: z.record(z.string(), z.number().int().min(0)),
  undo: undoSchema.nullable(),
  /** The next number of each kind of id. */
  next: z.strictObject({
    order: z.number().int(),
    draft: z.number().int(),
    session: z.number().int(),
    timer: z.number().int(),
    question: z.number().int(),
  }),
  garageCelsius: z.number().nullable(),
  daysOff: z.array(z.iso.date()),
  /** Whose cautions were shown in full today. */
  care: z.strictObject({ day: z.string(), seen: z.array(z.enum(MOMENTS)) }),
  /** The order of work behind the last plan, so that the next one moves little when little happened. */
  planOrder: planOrderSchema.nullable().default(null),
  tickedAt: instant,
  /** The local day of the last digest. */
  digestOn: z.iso.date().nullable(),
  /** Promises already warned of, as `order@day`. */
  warned: z.array(z.string()),
  /** When somebody last got a copy of their data. */
  exported: z.record(z.string(), instant).default({}),
  /** People who are to be forgotten when their last order has shipped. */
  forgetting: z.array(personId).default([]),
});
export type Desk = Readonly<z.infer<typeof deskSchema>>;

/** A desk on its first morning. */
export const emptyDesk: Desk = {
  people: {},
  drafts: {},
  quotes: {},
  orders: {},
  lots: {},
  sessions: {},
  timers: {},
  questions: {},
  onHand: {},
  arrived: [],
  shelf: {},
  undo: null,
  next: { order: 1001, draft: 1, session: 1, timer: 1, question: 1 },
  garageCelsius: null,
  daysOff: [],
  care: { day: '', seen: [] },
  planOrder: null,
  tickedAt: 0,
  digestOn: null,
  warned: [],
  exported: {},
  forgetting: [],
};
