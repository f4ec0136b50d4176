import { isFinished, type Lot } from '../bench/lot.ts';
import { headsAlive } from '../bench/session.ts';
import type { Plan } from '../plan/plan.ts';
import type { Shop } from '../shop/shop.ts';
import type { Desk } from './state.ts';

/** The lots of a planned session with their heads; of a lot whose step is done in several sessions, its share by time, which need not be whole. */
export function plannedHeads(
  shop: Shop,
  { lots }: Desk,
  { sessions }: Plan,
  { do: step, parts }: Plan['sessions'][number],
): readonly Readonly<{ lot: Lot; heads: number }>[] {
  const all = sessions.flatMap((one) => (one.do === step ? one.parts : []));
  return [...new Set(parts.map(({ lot }) => lot))]
    .flatMap((id) => lots[id] ?? [])
    .filter((lot) => !isFinished(lot))
    .map((lot) => {
      const share = minutesOf(parts, lot.id) / Math.max(1, minutesOf(all, lot.id));
      return { lot, heads: headsAlive(shop, lot) * share };
    });
}

/** Their heads together, whole. */
export const plannedCount = (shop: Shop, desk: Desk, plan: Plan, session: Plan['sessions'][number]): number =>
  Math.round(plannedHeads(shop, desk, plan, session).reduce((sum, { heads }) => sum + heads, 0));

const minutesOf = (parts: Plan['sessions'][number]['parts'], id: string): number =>
  parts.reduce((sum, { lot, start, end }) => (lot === id ? sum + end - start : sum), 0);
