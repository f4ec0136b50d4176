import { MINUTE, type Instant, type Zone } from '../craft/time.ts';
import { wallAt } from '../craft/wall.ts';
import { sayBecause, sayHindrance } from './because.ts';
import type { Impossible, Plan } from './plan.ts';
import { isImpossible } from './plan.ts';

/** A plan, or why there is none, as JSON writes it: ISO 8601 instants with the shop's offset. */
export const writePlan = (made: Plan | Impossible, zone: Zone): Readonly<Record<string, unknown>> =>
  isImpossible(made) ? writeImpossible(made, zone) : writeMade(made, zone);

const writeImpossible = ({ id, impossible }: Impossible, zone: Zone) => ({
  id,
  impossible: impossible.map(({ lot, why }) => ({ lot, why: sayHindrance(why, zone) })),
});

const writeMade = ({ id, sessions, loads, lots, cost }: Plan, zone: Zone) => ({
  id,
  sessions: sessions.map(({ parts, ...session }) => ({
    ...withTimes(session, zone),
    parts: parts.map((part) => withTimes(part, zone)),
  })),
  loads: loads.map((load) => ({ ...withTimes(load, zone), out: iso(load.out, zone) })),
  lots: lots.map(({ ready, because, ...lot }) => ({
    ...lot,
    ready: iso(ready, zone),
    because: because.map((reason) => sayBecause(reason, zone)),
  })),
  cost,
});

const withTimes = <T extends Readonly<{ start: Instant; end: Instant }>>(timed: T, zone: Zone) => ({
  ...timed,
  start: iso(timed.start, zone),
  end: iso(timed.end, zone),
});

function iso(at: Instant, zone: Zone): string {
  const { shows, offset } = wallAt(at, zone);
  return `${at % MINUTE === 0 ? shows.slice(0, -'.000'.length) : shows}${offset}`;
}
