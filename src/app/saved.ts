import type { z } from 'zod';

/** How stored data of every version becomes today's: step n turns version n into n + 1. Steps are only ever added at the end. */
export type Versions<T> = Readonly<{
  steps: readonly ((old: unknown) => unknown)[];
  schema: z.ZodType<T>;
}>;

export type Unsaved<T> =
  Readonly<{ ok: true; value: T }> | Readonly<{ ok: false; why: 'newer' | 'unreadable'; says: string }>;

/** The version that is written today: the number of steps there are. */
export const versionOf = <T>(versions: Versions<T>): number => versions.steps.length;

/** Today's value from one that was stored under `version`. From the future it is refused, never guessed at. */
export function upgraded<T>(versions: Versions<T>, version: number, stored: unknown): Unsaved<T> {
  const today = versionOf(versions);
  if (version > today)
    return no(
      'newer',
      `It was written by a newer jigwright (version ${version}; this one reads up to ${today}). Update jigwright.`,
    );
  try {
    const value = versions.steps.slice(version).reduce((old, step) => step(old), stored);
    const parsed = versions.schema.safeParse(value);
    return parsed.success ? { ok: true, value: parsed.data } : misfit(parsed.error);
  } catch {
    return no('unreadable', `What it holds does not fit version ${version}.`);
  }
}

const no = (why: 'newer' | 'unreadable', says: string): Unsaved<never> => ({ ok: false, why, says });

/** Whole, and only with more in it than is known here: a newer program added to it. An older generation would lose what came since. */
const misfit = (error: z.ZodError): Unsaved<never> =>
  error.issues.every(({ code }) => code === 'unrecognized_keys')
    ? no('newer', `It was written by a newer jigwright, with what this one does not know. Update jigwright.`)
    : no('unreadable', firstFault(error));

/** Says where, never what: what is stored there may be private. */
const firstFault = (error: z.ZodError): string =>
  `What it holds is not what this version writes, at ${error.issues[0]?.path.join('.') ?? 'the top'} (${error.issues.length} faults).`;
