import { z } from 'zod';
import { journalRowSchema } from '../stock/journal.ts';
import { orderedSchema } from '../stock/ordered.ts';
import { usageSchema } from '../stock/usage.ts';
import { learnedSchema, NOTHING_LEARNED } from '../bench/learned.ts';
import { lotSchema } from '../bench/lot.ts';
import { sessionSchema } from '../bench/session.ts';
import { timerSchema } from '../bench/timer.ts';
import { MOMENTS } from '../craft/care.ts';
import { STEPS } from '../shop/words.ts';
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

const workedSchema = z.array(z.strictObject({ day: z.iso.date(), step: z.enum(STEPS), heads: z.number().int() }));

/** What the last act at the bench changed, so that a mis-tap can be taken back once. */
export const undoSchema = z.strictObject({
  what: z.string(),
  at: instant,
  lots: z.record(z.string(), lotSchema.nullable()),
  sessions: z.record(z.string(), sessionSchema.nullable()),
  timers: z.record(z.string(), timerSchema.nullable()),
  /** Counts before the act, and after it for the items that it changed. */
  onHand: z.record(z.string(), z.number()),
  counts: z.record(z.string(), z.number()).default({}),
  /** Finished heads that the act put on the shelf, by spec. */
  shelved: z.record(z.string(), z.number().int()).default({}),
  learned: learnedSchema.nullable().default(null),
  worked: workedSchema.nullable().default(null),
  /** Whether a maker has since done something that is no work at the bench: “undo” may mean that. */
  overtaken: z.boolean().default(false),
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
  /** Deliveries ordered from chat that have not come yet. */
  ordered: z.array(orderedSchema).default([]),
  /** The last changes of the counts, oldest first. */
  journal: z.array(journalRowSchema).default([]),
  usage: usageSchema.default({}),
  /** The day the book began; null until the clock first said so. */
  began: z.iso.date().nullable().default(null),
  /** Orders off the bench whose money is still open: shipped and not paid, or cancelled and not paid back. */
  settling: z.record(z.string(), orderSchema).default({}),
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
  /** Days off of the shop file that are worked all the same. */
  daysOn: z.array(z.iso.date()).default([]),
  /** Hours at the bench on one day beside the usual ones. */
  extraHours: z.array(z.strictObject({ date: z.iso.date(), from: z.string(), to: z.string() })).default([]),
  /** Orders put on hold: not worked on, and not planned. */
  held: z.array(z.string()).default([]),
  /** Orders put before all others. */
  first: z.array(z.string()).default([]),
  learned: learnedSchema.default(NOTHING_LEARNED),
  /** Heads that had a step, by local day; today's and yesterday's only. */
  worked: workedSchema.default([]),
  /** What is said once a local day, by its name: the day it was last said on. */
  daily: z.record(z.string(), z.iso.date()).default({}),
  /** Lots whose card was opened, so that it is kept up to date. */
  watched: z.array(z.string()).default([]),
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
  ordered: [],
  journal: [],
  usage: {},
  began: null,
  settling: {},
  shelf: {},
  undo: null,
  next: { order: 1001, draft: 1, session: 1, timer: 1, question: 1 },
  garageCelsius: null,
  daysOff: [],
  daysOn: [],
  extraHours: [],
  held: [],
  first: [],
  learned: NOTHING_LEARNED,
  worked: [],
  daily: {},
  watched: [],
  care: { day: '', seen: [] },
  planOrder: null,
  tickedAt: 0,
  digestOn: null,
  warned: [],
  exported: {},
  forgetting: [],
};
