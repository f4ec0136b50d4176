import type { Session } from '../bench/session.ts';
import type { Spec } from '../order/spec.ts';
import type { Card, HeadsOfLots } from './card.ts';
import { shelfKey } from './extras.ts';
import type { Desk } from './state.ts';

/** Heads that one picture can show. */
const MOST = 4;

/** The picture of a session: its head, or each of its heads with the lots that it is of. None for more heads than one picture can show. */
export function headsOf({ lots }: Desk, { shares }: Session): Card['picture'] {
  const heads = new Map<string, { spec: Spec; lots: HeadsOfLots['each'][number]['lots'] }>();
  for (const { lot, heads: count } of shares) {
    const spec = lots[lot]?.spec;
    if (spec === undefined) continue;
    const before = heads.get(shelfKey(spec))?.lots ?? [];
    heads.set(shelfKey(spec), { spec, lots: [...before, { lot, heads: count }] });
  }
  const [only, ...others] = heads.values();
  if (only === undefined || others.length >= MOST) return null;
  return others.length === 0 ? only.spec : { each: [only, ...others] };
}
