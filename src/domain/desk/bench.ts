import { stepOf, withStep, type Lot } from '../bench/lot.ts';
import { finished, started, type Ready, type Session, type Spares } from '../bench/session.ts';
import type { Timer } from '../bench/timer.ts';
import { gluePlan } from '../craft/epoxy.ts';
import { later, type Instant, type Minutes } from '../craft/time.ts';
import { cureMinutes } from '../plan/routing.ts';
import type { Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import { addAmounts } from '../stock/needs.ts';
import { countedUse, usedAt } from '../stock/use.ts';
import { catchingUp } from './catchUp.ts';
import { overOnShelf } from './extras.ts';
import { withoutStrayTimers } from './offBench.ts';
import { garageOf } from './planning.ts';
import { withStates } from './progress.ts';
import { onHandOf } from './shelves.ts';
import type { Desk } from './state.ts';
import { topUp } from './topUp.ts';
import { without } from './turn.ts';
import { workFacts } from './work.ts';
import { noted } from './worked.ts';

/** The desk with ready work begun: a session, its lots running, and the timers that the work needs. */
export function begin(
  shop: Shop,
  desk: Desk,
  { step, family, shares }: Ready,
  now: Instant,
): Readonly<{ desk: Desk; session: Session }> {
  const session: Session = { id: `S${desk.next.session}`, step, family, shares, startedAt: now, scrap: {} };
  const lots = started(Object.values(desk.lots), session, now);
  const begun: Desk = {
    ...desk,
    lots: byId(lots),
    sessions: { ...desk.sessions, [session.id]: session },
    next: { ...desk.next, session: desk.next.session + 1 },
  };
  return { desk: withStates(timersOf(shop, begun, session, now).reduce(addTimer, begun)), session };
}

/** The desk with a session over: scrap counted, material used, lots moved on, short lots topped up, what is over on the shelf, waiting begun. */
export function finish(
  shop: Shop,
  desk: Desk,
  session: Session,
  now: Instant,
  spares: Spares = 'let-go',
): Readonly<{ desk: Desk; topUps: readonly Lot[] }> {
  const ids = session.shares.map(({ lot }) => lot);
  const counted = byId(finished(Object.values(desk.lots), session, spares, now));
  const over: Desk = {
    ...desk,
    lots: counted,
    sessions: without(desk.sessions, session.id),
    timers: Object.fromEntries(Object.entries(desk.timers).filter(([, timer]) => timer.session !== session.id)),
  };
  const used = ids.reduce((next, id) => useUp(shop, next, id, session), over);
  // One after the other, so that no two take the same new id.
  const topUps: Lot[] = [];
  let topped = used;
  for (const id of ids) {
    const short = topUp(shop, topped, id);
    if (short === undefined) continue;
    topUps.push(short.made);
    topped = { ...topped, lots: { ...topped.lots, ...byId(short.lots) } };
  }
  const cleared = ids.reduce(overOnShelf, withoutStrayTimers(withoutLost(topped)));
  const waiting = withStates(waitIfDue(shop, cleared, ids, now));
  return { desk: noted(shop, desk, catchingUp(shop, waiting, topUps, now), session, now), topUps };
}

/** The desk with a lag over: its step done, the next one ready or its own lag begun. The timer stays until it was told of; doing it again changes nothing. */
export function endLag(shop: Shop, desk: Desk, timer: Timer, now: Instant): Desk {
  const step = LAG_STEP[timer.kind];
  const over = timer.lots.filter((id) =>
    desk.lots[id]?.steps.some((one) => one.step === step && one.state === 'running'),
  );
  if (step === undefined || over.length === 0) return desk;
  const lots = over.flatMap((id) => {
    const lot = desk.lots[id];
    return lot === undefined
      ? []
      : [[id, withStep(lot, step, { state: 'done', through: lot.good, doneAt: now })] as const];
  });
  const moved: Desk = { ...desk, lots: { ...desk.lots, ...Object.fromEntries(lots) } };
  return withStates(waitIfDue(shop, moved, over, now));
}

const LAG_STEP: Readonly<Partial<Record<Timer['kind'], Step>>> = { cool: 'cool', cure: 'cure' };

/** A timer before it has its number. */
type NewTimer = Omit<Timer, 'id' | 'firstDueAt' | 'toldAt' | 'told'>;

export function addTimer(desk: Desk, timer: NewTimer): Desk {
  const id = `T${desk.next.timer}`;
  return {
    ...desk,
    timers: { ...desk.timers, [id]: { ...timer, id, firstDueAt: timer.dueAt, toldAt: null, told: 0 } },
    next: { ...desk.next, timer: desk.next.timer + 1 },
  };
}

/** Timers that starting a step sets: up to heat and hold for the oven, pot life for the glue. */
function timersOf(shop: Shop, desk: Desk, session: Session, now: Instant): readonly NewTimer[] {
  const facts = workFacts(shop, desk, session, now);
  const timer = (kind: Timer['kind'], minutes: Minutes): NewTimer => ({
    kind,
    session: session.id,
    lots: session.shares.map(({ lot }) => lot),
    dueAt: later(now, minutes),
    course: null,
  });
  if (facts.bake) {
    const comeUp = Math.ceil(facts.bake.comeUp);
    return [timer('up-to-heat', comeUp), timer('bake', comeUp + facts.bake.hold)];
  }
  const glue = session.step === 'guard' ? gluePlan(1, garageOf(shop, desk), shop.epoxy) : undefined;
  return glue?.ok ? [timer('glue', glue.potLifeMinutes)] : [];
}

/** Starts the lags that lots have come to together, if they have: what comes out of one oven cools by one timer. */
const waitIfDue = (shop: Shop, desk: Desk, ids: readonly string[], now: Instant): Desk =>
  (['cool', 'cure'] as const).reduce((next, step) => waitFor(shop, next, step, ids, now), desk);

function waitFor(shop: Shop, desk: Desk, step: 'cool' | 'cure', ids: readonly string[], now: Instant): Desk {
  const lots = ids.flatMap((id) => desk.lots[id] ?? []).filter((lot) => stepOf(lot, step)?.state === 'ready');
  if (lots.length === 0) return desk;
  const running = lots.map((lot) => withStep(lot, step, { state: 'running', startedAt: now }));
  const waiting: Desk = { ...desk, lots: { ...desk.lots, ...byId(running) } };
  return lagTimers(
    shop,
    desk,
    step,
    lots.map(({ id }) => id),
    now,
  ).reduce(addTimer, waiting);
}

/** Cooling has one timer; a cure has two, the maker's overnight rule for handling and the full cure, which is what the lots wait for. */
function lagTimers(
  shop: Shop,
  desk: Desk,
  step: 'cool' | 'cure',
  lots: readonly string[],
  now: Instant,
): readonly NewTimer[] {
  const timer = { session: null, lots: [...lots] };
  if (step === 'cool') return [{ ...timer, kind: 'cool', dueAt: later(now, shop.steps.cool.wait), course: null }];
  const celsius = garageOf(shop, desk);
  const course = { spells: [], since: now, celsius, still: celsius < shop.epoxy.leastCelsius };
  return [
    { ...timer, kind: 'handling', dueAt: later(now, shop.epoxy.overnightHours * 60), course },
    { ...timer, kind: 'cure', dueAt: later(now, cureMinutes(shop, celsius)), course },
  ];
}

/** Takes what a step has used by its count off the shelf, and the step's material off the lot's share, once the whole lot has had the step. */
export function useUp(shop: Shop, desk: Desk, id: string, { step, shares }: Session): Desk {
  const lot = desk.lots[id];
  if (lot === undefined || lot.steps.find((one) => one.step === step)?.state !== 'done') return desk;
  const heads = shares.find((share) => share.lot === id)?.heads ?? lot.good;
  const used = countedUse(shop, lot, step, heads);
  const { left } = usedAt(step, lot.reserved);
  const onHand = onHandOf(shop, desk);
  const less = Object.fromEntries(
    Object.entries(used).map(([item, amount]) => [item, Math.max(0, (onHand[item] ?? 0) - amount)]),
  );
  const usedUp = addAmounts([lot.used, used]);
  return {
    ...desk,
    onHand: { ...desk.onHand, ...less },
    lots: { ...desk.lots, [id]: { ...lot, reserved: left, used: { ...usedUp } } },
  };
}

/** Without lots of which nothing is left; their top-up stands for them. */
const withoutLost = (desk: Desk): Desk => ({
  ...desk,
  lots: byId(Object.values(desk.lots).filter((lot) => lot.good > 0 || lot.steps[0]?.state !== 'done')),
});

const byId = (lots: readonly Lot[]): Record<string, Lot> => Object.fromEntries(lots.map((lot) => [lot.id, lot]));

/** Whether the oven already has a load in it. */
export const bakingSession = (desk: Desk): Session | undefined =>
  Object.values(desk.sessions).find(({ step }) => step === 'bake');
