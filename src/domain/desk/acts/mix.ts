import { headsIn } from '../../bench/session.ts';
import { gluePlan } from '../../craft/epoxy.ts';
import { later } from '../../craft/time.ts';
import { benchTap, sessionSlot } from '../benchButtons.ts';
import { wordButton } from '../draftButtons.ts';
import { garageOf } from '../planning.ts';
import type { Tap } from '../tap.ts';
import { glueOf } from '../telling.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';

/** A fresh mix of glue: its pot life runs from now, and it is said how many guards it may take and how many are left after it.
 *  Each mix that was told to be over counts as used up. */
export function mix(turn: Turn, tap: Tap): Decision {
  const { world, desk, by, now } = turn;
  const timer = desk.timers[tap.on];
  const session = timer?.session ? desk.sessions[timer.session] : undefined;
  if (timer?.kind !== 'glue' || timer.toldAt === null || session === undefined)
    return { ...nothing(desk), toast: 'already' };
  const plan = gluePlan(headsIn(session), garageOf(world.shop, desk), world.shop.epoxy);
  if (!plan.ok) return says(desk, card(by.id, { code: 'too-cold', below: plan.leastCelsius }));
  const until = later(now, plan.potLifeMinutes);
  const fresh = { ...timer, dueAt: until, firstDueAt: until, toldAt: null };
  const { guards, after } = glueOf(world.shop, desk, fresh) ?? { guards: 0, after: 0 };
  const rows = [[wordButton('all-good', benchTap('done', session.id)), wordButton('bench', benchTap('bench'))]];
  return {
    ...says(
      { ...desk, timers: { ...desk.timers, [timer.id]: fresh } },
      card(by.id, { code: 'fresh-mix', guards, left: after, until }, { rows, slot: sessionSlot(session.id) }),
    ),
    toast: 'done',
  };
}
