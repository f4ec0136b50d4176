import { headsIn, type Session } from '../bench/session.ts';
import type { Timer } from '../bench/timer.ts';
import { gluePlan } from '../craft/epoxy.ts';
import { MINUTE, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import type { GluePart, TimerFacts } from './facts.ts';
import { garageOf } from './planning.ts';
import type { Desk } from './state.ts';

/** A timer as it is told of: with its lots, how long it is overdue, and for glue what its mix has to set. */
export const timerFacts = (shop: Shop, desk: Desk, timer: Timer, now: Instant): TimerFacts => ({
  timer,
  lots: timer.lots
    .flatMap((id) => desk.lots[id] ?? [])
    .map(({ id, spec, heads, good }) => ({
      id,
      spec,
      heads: sharesOf(desk, timer).find(({ lot }) => lot === id)?.heads ?? (good > 0 ? good : heads),
    })),
  cancelled: sharesOf(desk, timer).flatMap(({ lot, cancelled }) => (cancelled ? [lot] : [])),
  lateMinutes: Math.max(0, Math.floor((now - timer.dueAt) / MINUTE)),
  overMinutes: Math.max(0, Math.floor((now - timer.firstDueAt) / MINUTE)),
  glue: glueOf(shop, desk, timer),
});

const sharesOf = ({ sessions }: Desk, { session }: Timer): Session['shares'] => sessions[session ?? '']?.shares ?? [];

/** The most guards that the mix at hand can set, and those left after it. Each mix that was told to be over counts as used up. */
export function glueOf(shop: Shop, desk: Desk, { kind, session, told, toldAt }: Timer): GluePart | null {
  const work = kind === 'glue' && session !== null ? desk.sessions[session] : undefined;
  const plan = work && gluePlan(headsIn(work), garageOf(shop, desk), shop.epoxy);
  if (work === undefined || !plan?.ok) return null;
  // Once a mix was told to be over it is still the one at hand, until a fresh one is mixed.
  const mixesBefore = toldAt === null ? told : told - 1;
  const toSet = Math.max(0, headsIn(work) - mixesBefore * plan.guardsPerMix);
  const guards = Math.min(toSet, plan.guardsPerMix);
  return { guards, after: toSet - guards };
}
