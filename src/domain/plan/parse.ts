import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';
import { WEEKDAYS } from '../craft/time.ts';
import type { PlanLot, PlanStep, Problem } from './problem.ts';

/** One problem as JSON writes it: ISO 8601 instants with offset, ISO days, whole minutes. Unknown fields are passed over. */
const instant = z
  .string()
  .transform((said, context) => toInstant(said) ?? refuse(context, 'a time as ISO 8601 with its offset'));
const day = z.iso.date();
const clock = z.string().regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, 'a time as HH:MM, 24 hours');
const minutes = z.number().min(0).max(1_000_000);
const weekday = z.enum(WEEKDAYS);
const zone = z.string().refine(isZone, 'an IANA time zone such as America/Chicago');
const kind = { do: z.string().min(1), with: z.string().nullish() };

const step = z.union([
  z.object({ ...kind, hold: minutes }),
  z.object({ ...kind, wait: minutes }),
  z.object({ ...kind, minutes }),
]);

const lot = z.object({
  id: z.string().min(1),
  heads: z.number().int().min(1),
  due: day.nullish(),
  weight: z.number().min(0).nullish(),
  release: instant.nullish(),
  steps: z.array(step),
});

const schema = z.object({
  id: z.string(),
  zone,
  now: instant,
  hours: z.partialRecord(
    weekday,
    z.array(z.tuple([clock, clock]).refine(([from, to]) => from < to, 'an end after its beginning')),
  ),
  daysOff: z.array(day).nullish(),
  extra: z.array(z.object({ date: day, from: clock, to: clock })).nullish(),
  post: z.object({ days: z.array(weekday), by: clock, closed: z.array(day).nullish() }),
  setup: z.record(z.string(), minutes).nullish(),
  oven: z.object({ rack: z.number().min(0), load: minutes, unload: minutes }).nullish(),
  lots: z.array(lot).refine((lots) => new Set(lots.map(({ id }) => id)).size === lots.length, 'lots with an id each'),
  budgetMs: z.number().min(0).nullish(),
  seed: z.number().int().nullish(),
});

/** A problem, how long to look for a better plan, and the seed of the search. */
export type Asked = Readonly<{ problem: Problem; budgetMs: number; seed: number }>;
export type Parsed = Readonly<{ ok: true; asked: Asked } | { ok: false; id: string; wrong: readonly string[] }>;

/** Reads one problem, or says of each field what is wrong and where.
 *  @example parseProblem({ id: 'x' }) //=> { ok: false, id: 'x', wrong: ['zone: …', …] } */
export function parseProblem(row: unknown): Parsed {
  const { success, data, error } = schema.safeParse(row);
  if (!success) return { ok: false, id: idOf(row), wrong: error.issues.map(sentence) };
  const { id, zone, now, post } = data;
  const problem: Problem = {
    id,
    zone,
    now,
    hours: { weekly: data.hours, daysOff: data.daysOff ?? [], extra: data.extra ?? [] },
    post: { ...post, closed: post.closed ?? [] },
    setup: data.setup ?? {},
    oven: data.oven ?? { rack: 0, load: 0, unload: 0 },
    lots: data.lots.map(lotOf),
  };
  return { ok: true, asked: { problem, budgetMs: data.budgetMs ?? 50, seed: data.seed ?? 1 } };
}

const lotOf = ({ id, heads, due, weight, release, steps }: z.output<typeof lot>): PlanLot => ({
  id,
  heads,
  due: due ?? null,
  weight: weight ?? 1,
  release: release ?? null,
  steps: steps.map(stepOf),
});

function stepOf({ with: what, ...rest }: z.output<typeof step>): PlanStep {
  const named = what === null || what === undefined ? {} : { with: what };
  if ('hold' in rest) return { do: 'bake', hold: rest.hold, ...named };
  return { ...rest, ...named };
}

const sentence = ({ path, message }: z.core.$ZodIssue): string => `${path.join('.')}: ${message}`;

function idOf(row: unknown): string {
  const named = z.object({ id: z.string() }).safeParse(row);
  return named.success ? named.data.id : '';
}

function toInstant(said: string): number | undefined {
  try {
    return Temporal.Instant.from(said).epochMilliseconds;
  } catch {
    return undefined;
  }
}

function refuse(context: z.core.$RefinementCtx, message: string): never {
  context.addIssue({ code: 'custom', message });
  return z.NEVER;
}

function isZone(name: string): boolean {
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name).timeZoneId !== '';
  } catch {
    return false;
  }
}
