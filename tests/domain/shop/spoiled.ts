import { readFileSync } from 'node:fs';

/** The demo shop as JSON text. */
export const demoText: string = readFileSync(new URL('../../../data/demo-shop.json', import.meta.url), 'utf8');

export type Way = readonly (string | number)[];
/** A change to a JSON value; a new value of undefined takes the old one out. */
export type Change = readonly [way: Way, value: unknown];

/** The demo shop with some values changed. */
export function spoiled(...changes: readonly Change[]): unknown {
  const shop: unknown = JSON.parse(demoText);
  for (const [way, value] of changes) change(shop, way, value);
  return shop;
}

/** The way to every leaf of a JSON value. */
export const leaves = (value: unknown, way: Way = []): Way[] =>
  isGroup(value)
    ? Object.entries(value).flatMap(([step, inner]) =>
        leaves(inner, [...way, Array.isArray(value) ? Number(step) : step]),
      )
    : [way];

function change(json: unknown, way: Way, value: unknown): void {
  const holder = way.slice(0, -1).reduce<unknown>((inner, step) => (isGroup(inner) ? inner[step] : undefined), json);
  const last = way.at(-1);
  if (last === undefined || !isGroup(holder)) throw new Error(`no such way: ${way.join('.')}`);
  if (value !== undefined) holder[last] = value;
  else if (Array.isArray(holder)) holder.splice(Number(last), 1);
  else delete holder[last];
}

const isGroup = (value: unknown): value is Record<string | number, unknown> =>
  typeof value === 'object' && value !== null;
