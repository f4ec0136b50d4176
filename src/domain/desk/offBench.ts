import type { Session } from '../bench/session.ts';
import type { Desk } from './state.ts';

/** The desk without the lots of an order that has left it. Hands stop at them and their waiting ends; only what is in the oven
 *  is told of until it is out, by the name that it had. */
export function offBench(desk: Desk, order: string): Desk {
  const gone = Object.values(desk.lots).flatMap((lot) => (lot.order === order ? [lot.id] : []));
  const sessions = Object.values(desk.sessions).flatMap((session) => sessionWithout(session, gone));
  return withoutStrayTimers({
    ...desk,
    lots: Object.fromEntries(Object.entries(desk.lots).filter(([, lot]) => lot.order !== order)),
    sessions: Object.fromEntries(sessions.map((session) => [session.id, session])),
  });
}

/** A rack in the oven is what it is; other work goes on with the lots that are left. */
function sessionWithout(session: Session, gone: readonly string[]): readonly Session[] {
  if (session.step === 'bake') {
    const shares = session.shares.map((share) =>
      gone.includes(share.lot) ? { ...share, cancelled: true as const } : share,
    );
    return [{ ...session, shares }];
  }
  const shares = session.shares.filter(({ lot }) => !gone.includes(lot));
  if (shares.length === 0) return [];
  if (shares.length === session.shares.length) return [session];
  const scrap = Object.fromEntries(Object.entries(session.scrap).filter(([lot]) => !gone.includes(lot)));
  return [{ ...session, shares, scrap, parted: true }];
}

/** The desk without timers of lots that are no longer there; a rack in the oven keeps its own. */
export function withoutStrayTimers(desk: Desk): Desk {
  const timers = Object.entries(desk.timers).flatMap(([id, timer]) => {
    if (timer.session !== null && desk.sessions[timer.session]?.step === 'bake') return [[id, timer] as const];
    const lots = timer.lots.filter((lot) => desk.lots[lot] !== undefined);
    if (lots.length === timer.lots.length) return [[id, timer] as const];
    return lots.length === 0 ? [] : [[id, { ...timer, lots }] as const];
  });
  return { ...desk, timers: Object.fromEntries(timers) };
}
