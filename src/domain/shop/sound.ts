import type { z } from 'zod';
import type { Path } from './fault.ts';
import type { shopSchema } from './shop.ts';

/** The value with any part of it perhaps missing. */
export type Partly<T> = T extends readonly (infer Entry)[]
  ? readonly (Partly<Entry> | undefined)[]
  : T extends object
    ? { readonly [Key in keyof T]?: Partly<T[Key]> | undefined }
    : T;

/** The parts of a shop file that are of the right kind: what is left when everything at fault is cut out. */
export type SoundParts = Partly<z.input<typeof shopSchema>>;

/** What is left of `json` when the values at `faulty` are cut out; lists keep the places of their other entries. */
export function soundParts(json: unknown, faulty: readonly Path[]): SoundParts {
  if (!isGroup(json) || faulty.some((path) => path.length === 0)) return {};
  const copy = structuredClone(json);
  faulty.forEach((path) => cut(copy, path));
  return copy;
}

/** The entries that are there, each with its place in the list. */
export const entries = <T>(list: readonly (T | undefined)[] | undefined): (readonly [at: number, entry: T])[] =>
  (list ?? []).flatMap((entry, at) => (entry === undefined ? [] : [[at, entry] as const]));

/** The ids of a list; undefined when the list or one of its ids is missing, for then nobody can say which names are unknown. */
export function idsOf(
  list: readonly ({ readonly id?: string | undefined } | undefined)[] | undefined,
): readonly string[] | undefined {
  const ids = list?.flatMap((entry) => entry?.id ?? []);
  return ids?.length === list?.length ? ids : undefined;
}

/** The value that a path leads to; undefined when it leads nowhere. */
export const valueAt = (json: unknown, path: Path): unknown =>
  path.reduce<unknown>((value, step) => (isGroup(value) && Object.hasOwn(value, step) ? value[step] : undefined), json);

function cut(json: unknown, path: Path): void {
  const last = path.at(-1);
  const holder = valueAt(json, path.slice(0, -1));
  if (last === undefined || !isGroup(holder)) return;
  if (Array.isArray(holder)) holder[Number(last)] = undefined;
  else delete holder[last];
}

const isGroup = (value: unknown): value is Record<PropertyKey, unknown> => typeof value === 'object' && value !== null;
