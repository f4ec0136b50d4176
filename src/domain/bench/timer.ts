import { z } from 'zod';
import { later, type Instant, type Minutes } from '../craft/time.ts';

export const TIMER_KINDS = ['up-to-heat', 'bake', 'cool', 'glue', 'handling', 'cure'] as const;
export type TimerKind = (typeof TIMER_KINDS)[number];

/** Something at the bench that falls due at an instant. */
export const timerSchema = z.strictObject({
  id: z.string(),
  kind: z.enum(TIMER_KINDS),
  /** The session it belongs to, or null for a lag of lots alone. */
  session: z.string().nullable(),
  lots: z.array(z.string()),
  dueAt: z.number(),
  /** When it was due before anybody put it off: an over-bake counts from then. */
  firstDueAt: z.number(),
  /** When it was last reminded of; null before the first time. */
  toldAt: z.number().nullable(),
  /** For a cure: the spells it has had, and the temperature it has been at since; `still` while it is too cold to cure. */
  course: z
    .strictObject({
      spells: z.array(z.strictObject({ hours: z.number(), celsius: z.number() })),
      since: z.number(),
      celsius: z.number(),
      still: z.boolean(),
    })
    .nullable(),
  /** Reminders sent so far, for their keys. */
  told: z.number().int().min(0),
});
export type Timer = Readonly<z.infer<typeof timerSchema>>;

/** How often an oven that is on reminds until it is answered. */
export const OVEN_EVERY: Minutes = 5;

/** Kinds that go on reminding until answered, through quiet hours: something hot is running. */
export const INSISTS: Readonly<Record<TimerKind, boolean>> = {
  'up-to-heat': false,
  bake: true,
  cool: false,
  glue: false,
  handling: false,
  cure: false,
};

/** The lags that are over by themselves when their time is; the others wait for a hand. */
export const ENDS_ITSELF: Readonly<Record<TimerKind, boolean>> = {
  'up-to-heat': true,
  bake: false,
  cool: true,
  glue: false,
  handling: true,
  cure: true,
};

/** The instant at which a timer next asks to be told of; undefined when it has said all it will. */
export function nextTelling(timer: Timer): Instant | undefined {
  if (timer.course?.still) return undefined;
  if (timer.toldAt === null) return timer.dueAt;
  if (!INSISTS[timer.kind]) return undefined;
  return Math.max(timer.dueAt, later(timer.toldAt, OVEN_EVERY));
}

/** Timers to tell of now, the longest due first. */
export const dueTimers = (timers: readonly Timer[], now: Instant): readonly Timer[] =>
  timers.filter((timer) => (nextTelling(timer) ?? Infinity) <= now).sort((a, b) => a.dueAt - b.dueAt);

export const toldOf = (timer: Timer, now: Instant): Timer => ({ ...timer, toldAt: now, told: timer.told + 1 });

/** The timer put off, never to an earlier time than it had; it will be told of anew. */
export const putOff = (timer: Timer, from: Instant, minutes: Minutes): Timer => ({
  ...timer,
  dueAt: Math.max(timer.dueAt, later(from, minutes)),
  toldAt: null,
});
