import { headsAlive } from '../bench/session.ts';
import { problemOf } from '../bench/inPlan.ts';
import { addDays, instantOf, localDay, MINUTE, type Day, type Instant } from '../craft/time.ts';
import { isImpossible, type Hindrance, type Plan } from '../plan/plan.ts';
import { isBake, isWait, type PlanLot } from '../plan/problem.ts';
import type { Shop } from '../shop/shop.ts';
import { spansOn, type Stretch } from './hours.ts';
import { plannedCount } from './planned.ts';
import { headingsOf, shipDays, type Heading } from './heading.ts';
import type { Order } from './order.ts';
import { nextPost } from './post.ts';
import { benchOf, planOf } from './planning.ts';
import type { Desk } from './state.ts';

/** Work at the bench, or a rack in the oven with its hands at both ends; `begun` is earlier than `from` when it goes on over midnight. */
export type WeekWork = Stretch & Readonly<{ step: string; family: string; heads: number; begun: Instant }>;

/** Glue that cures, as far as it does on one day; `until` is when it is over. */
export type WeekCure = Stretch & Readonly<{ heads: number; until: Instant }>;

export type WeekDay = Readonly<{
  day: Day;
  hours: readonly Stretch[];
  work: readonly WeekWork[];
  cures: readonly WeekCure[];
  /** Orders that leave on that day as the bench stands. */
  ships: readonly string[];
  /** Orders promised for that day; one that is overdue stands on the first day. */
  promised: readonly Readonly<{ order: string; mark: 'late' | 'danger' | null }>[];
}>;

/** The plan of the next days, each thing on its local day; `why` says what stands against any plan. */
export type Week = Readonly<{ now: Instant; days: readonly WeekDay[]; why: readonly Hindrance[] }>;

/** What is planned for today and the six local days after it: what goes on over midnight is cut there. */
export function weekOf(shop: Shop, desk: Desk, now: Instant): Week {
  const plan = planOf(shop, desk, now);
  const first = localDay(now, shop.zone);
  const days = Array.from({ length: DAYS }, (_, days) => addDays(first, days));
  const { lots } = problemOf(shop, benchOf(shop, desk, now), now);
  const [work, cures] = isImpossible(plan)
    ? [[], []]
    : [
        [...sessionsOf(shop, desk, plan), ...loadsOf(plan), ...inOven(shop, desk, lots, now)],
        curesOf(shop, desk, plan, lots, now),
      ];
  const ships = shipDays(shop, desk, now);
  const headingOf = headingsOf(shop, desk, now);
  return {
    now,
    days: days.map((day) => {
      const whole = dayStretch(shop, day);
      return {
        day,
        hours: spansOn(shop, desk, day),
        work: within(work, whole),
        cures: within(cures, whole),
        ships: Object.keys(ships).filter((order) => ships[order] === day),
        promised: promisedOn(desk, headingOf, { first, post: nextPost(shop, now) ?? '9999' }, day),
      };
    }),
    why: isImpossible(plan) ? [...new Map(plan.impossible.map(({ why }) => [why.code, why])).values()] : [],
  };
}

const DAYS = 7;
/** Cures that begin so close upon each other are one glueing. */
const ONE_GLUEING = 30 * MINUTE;

/** From its midnight to the next: 23 or 25 hours when clocks change. */
const dayStretch = ({ zone }: Shop, day: Day): Stretch => ({
  from: instantOf(day, '00:00', zone),
  to: instantOf(addDays(day, 1), '00:00', zone),
});

const within = <One extends Stretch>(all: readonly One[], whole: Stretch): readonly One[] =>
  all
    .map((one) => ({ ...one, from: Math.max(one.from, whole.from), to: Math.min(one.to, whole.to) }))
    .filter(({ from, to }) => from < to)
    .sort((a, b) => a.from - b.from);

const sessionsOf = (shop: Shop, desk: Desk, plan: Plan): readonly WeekWork[] =>
  plan.sessions.map((session) => ({
    step: session.do,
    family: session.with ?? '-',
    heads: plannedCount(shop, desk, plan, session),
    ...begun({ from: session.start, to: session.end }),
  }));

const loadsOf = ({ loads }: Plan): readonly WeekWork[] =>
  loads.map(({ with: family = '-', start, end, lots }) => ({
    step: 'bake',
    family,
    heads: Object.values(lots).reduce((sum, heads) => sum + heads, 0),
    ...begun({ from: start, to: end }),
  }));

/** The rack that is in the oven now: its lots wait for its timer. */
function inOven(shop: Shop, desk: Desk, lots: readonly PlanLot[], now: Instant): readonly WeekWork[] {
  const baking = lots.filter(({ steps: [first] }) => first?.do === 'bake' && isWait(first));
  const minutes = Math.max(0, ...baking.map(({ steps: [first] }) => (first && isWait(first) ? first.wait : 0)));
  const ids = baking.map(({ id }) => id);
  const to = now + minutes * MINUTE;
  return ids.length === 0
    ? []
    : [{ step: 'bake', family: '-', heads: headsOf(shop, desk, ids), ...begun({ from: now, to }) }];
}

const begun = (stretch: Stretch): Stretch & Readonly<{ begun: Instant }> => ({ ...stretch, begun: stretch.from });

/** Each glueing with its cure, from the end of the hands that it follows, or from now where it runs. */
function curesOf(shop: Shop, desk: Desk, plan: Plan, lots: readonly PlanLot[], now: Instant): readonly WeekCure[] {
  const all = lots
    .flatMap((lot) => {
      const at = lot.steps.findIndex((step) => step.do === 'cure');
      const cure = lot.steps[at];
      if (cure === undefined || !isWait(cure)) return [];
      const from = at === 0 ? now : endOf(plan, lot, at - 1);
      const to = from + cure.wait * MINUTE;
      return [{ from, to, until: to, heads: headsOf(shop, desk, [lot.id]) }];
    })
    .sort((a, b) => a.from - b.from);
  return all.reduce<WeekCure[]>((done, one) => {
    const last = done.at(-1);
    if (last === undefined || one.from - last.from > ONE_GLUEING) return [...done, one];
    const to = Math.max(last.to, one.to);
    return [...done.slice(0, -1), { ...last, to, until: to, heads: last.heads + one.heads }];
  }, []);
}

/** When a lot's step is over in the plan. */
function endOf({ sessions, loads }: Plan, { id, steps }: PlanLot, at: number): Instant {
  const step = steps[at];
  const ends =
    step !== undefined && isBake(step)
      ? loads.filter(({ lots }) => id in lots).map(({ end }) => end)
      : sessions
          .filter((session) => session.do === step?.do)
          .flatMap(({ parts }) => parts.filter(({ lot }) => lot === id).map(({ end }) => end));
  return Math.max(...ends);
}

function promisedOn(
  desk: Desk,
  headingOf: (order: Order) => Heading,
  { first, post }: Readonly<{ first: Day; post: Day }>,
  day: Day,
): WeekDay['promised'] {
  return Object.values(desk.orders)
    .map((order) => ({ order, heading: headingOf(order) }))
    .filter(({ order: { promise }, heading }) => {
      const on = promise.ships < first ? first : promise.ships;
      return on === day && heading.waits?.for !== 'money';
    })
    .map(({ order: { id, promise }, heading }) => {
      const kept = (heading.ships ?? '9999') <= promise.ships;
      return { order: id, mark: kept ? null : post > promise.ships ? 'late' : 'danger' };
    });
}

const headsOf = (shop: Shop, desk: Desk, ids: readonly string[]): number =>
  [...new Set(ids)].flatMap((id) => desk.lots[id] ?? []).reduce((sum, lot) => sum + headsAlive(shop, lot), 0);
