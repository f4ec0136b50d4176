import { z } from 'zod';
import type { Instant } from '../craft/time.ts';
import { specSchema, type Spec } from '../order/spec.ts';
import { routing } from '../plan/routing.ts';
import { STEPS, type Step } from '../shop/words.ts';

/** How far a lot is with one step. `through` counts the heads that have had it, for an oven that takes a lot in several loads. */
export const lotStepSchema = z.strictObject({
  step: z.enum(STEPS),
  state: z.enum(['waiting', 'ready', 'running', 'done']),
  through: z.number().int().min(0),
  startedAt: z.number().nullable(),
  doneAt: z.number().nullable(),
});
export type LotStep = Readonly<z.infer<typeof lotStepSchema>>;

/** Heads of one line that go through the bench together. */
export const lotSchema = z.strictObject({
  id: z.string(),
  order: z.string(),
  spec: specSchema,
  /** Heads the order needs from this lot. */
  heads: z.number().int().positive(),
  /** Heads alive: nothing before the pour, what was cast after it, less what was scrapped since. */
  good: z.number().int().min(0),
  scrap: z.number().int().min(0),
  /** Heads of it that came finished off the shelf. */
  shelf: z.number().int().min(0).default(0),
  /** Good heads of it beyond those ordered, gone on the shelf when it was packed. */
  over: z.number().int().min(0).default(0),
  /** What is still put aside for this lot, by stock item. */
  reserved: z.record(z.string(), z.number().int().min(0)),
  /** What it has used up so far, by stock item. */
  used: z.record(z.string(), z.number().int().min(0)).default({}),
  /** Not planned before then, so that it pushes nothing that was promised earlier. */
  from: z.number().nullable().default(null),
  steps: z.array(lotStepSchema),
});
export type Lot = Readonly<z.infer<typeof lotSchema>>;

/** A lot with nothing done yet; its first step is ready. */
export const newLot = (id: string, order: string, spec: Spec, heads: number, reserved: Lot['reserved']): Lot => ({
  id,
  order,
  spec,
  heads,
  good: 0,
  scrap: 0,
  shelf: 0,
  over: 0,
  reserved,
  used: {},
  from: null,
  steps: routing(spec).map((step, index) => ({
    step,
    state: index === 0 ? 'ready' : 'waiting',
    through: 0,
    startedAt: null,
    doneAt: null,
  })),
});

/** The step that a lot is at; undefined when all are done. */
export const currentStep = (lot: Lot): LotStep | undefined => lot.steps.find(({ state }) => state !== 'done');

export const isFinished = (lot: Lot): boolean => currentStep(lot) === undefined;

/** Whether only the packing is left of it, if anything. */
export const isMade = (lot: Lot): boolean => lot.steps.every(({ step, state }) => step === 'pack' || state === 'done');

export const stepOf = (lot: Lot, step: Step): LotStep | undefined => lot.steps.find((one) => one.step === step);

/** Whether the bench has had its hands on it; heads off the shelf were made before, for somebody else. */
export const hasBegun = (lot: Lot): boolean =>
  lot.steps.some(({ state, doneAt }) => state === 'running' || (state === 'done' && doneAt !== null));

/** Whether a lot is not yet to be begun, so that it pushes nothing that was promised earlier. */
export const isHeldBack = (lot: Lot, now: Instant): boolean => lot.from !== null && lot.from > now && !hasBegun(lot);

/** The lot with one step changed, and the next one made ready once it is done. */
export function withStep(lot: Lot, step: Step, change: Partial<LotStep>): Lot {
  const at = lot.steps.findIndex((one) => one.step === step);
  return {
    ...lot,
    steps: lot.steps.map((one, index) => {
      if (index === at) return { ...one, ...change };
      const next = index === at + 1 && change.state === 'done' && one.state === 'waiting';
      return next ? { ...one, state: 'ready' as const } : one;
    }),
  };
}
