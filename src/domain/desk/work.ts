import { headsIn, type Session } from '../bench/session.ts';
import { cautionsAt, type Caution, type Moment } from '../craft/care.ts';
import { cureTime, gluePlan } from '../craft/epoxy.ts';
import { heatCount } from '../craft/heat.ts';
import { meltFor } from '../craft/melt.ts';
import { bakeOf } from '../craft/oven.ts';
import { localDay, type Day, type Instant } from '../craft/time.ts';
import { castingOf, hasPin } from '../order/head.ts';
import { cavityFor } from '../order/rules.ts';
import type { Spec } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import { shortAt } from './benchWork.ts';
import type { WorkFacts } from './facts.ts';
import { garageOf } from './planning.ts';
import type { Desk } from './state.ts';

/** The moment of care that each step begins with. */
const MOMENT_OF: Readonly<Partial<Record<Step, Moment>>> = {
  pour: 'pour',
  trim: 'trim',
  paint: 'dip',
  'clear-eyes': 'eyes',
  bake: 'bake',
  guard: 'epoxy-mix',
  pack: 'ship',
};
/** The steps at which pins are pulled, where there are any. */
const PIN_STEPS: readonly Step[] = ['paint', 'clear-eyes'];

/** The moments of care that work begins with. */
function momentsOf(shop: Shop, desk: Desk, { step, shares }: Session): readonly Moment[] {
  const moment = MOMENT_OF[step];
  const hasPins = shares.some(({ lot }) => desk.lots[lot] !== undefined && hasPin(shop, desk.lots[lot].spec) === true);
  return [
    ...(moment === undefined ? [] : [moment]),
    ...(PIN_STEPS.includes(step) && hasPins ? ['pin-pull' as const] : []),
  ];
}

/** What a session's card has to tell: metal to melt, counts before the dip, minutes in the oven, glue mixes, cure and cautions. */
export function workFacts(shop: Shop, desk: Desk, session: Session, now: Instant): WorkFacts {
  const garage = garageOf(shop, desk);
  const lots = session.shares.flatMap(({ lot, heads }) => {
    const spec = desk.lots[lot]?.spec;
    return spec === undefined ? [] : [{ lot, heads, spec }];
  });
  const bake =
    session.step === 'bake'
      ? bakeOf(
          lots.map(({ spec }) => castingOf(shop, spec)),
          shop.oven,
        )
      : undefined;
  const glue = session.step === 'guard' ? gluePlan(headsIn(session), garage, shop.epoxy) : undefined;
  const cure = cureTime(garage, shop.epoxy);
  return {
    short: shortAt(shop, desk, session),
    melt: session.step === 'pour' ? meltGrams(shop, lots) : null,
    counts: session.step === 'paint' ? lots.flatMap(({ lot, spec }) => countOf(shop, garage, lot, spec)) : [],
    bake: bake
      ? {
          comeUp: bake.comeUpMinutes,
          hold: bake.holdMinutes,
          overbaked: bake.verdict === 'overbaked' ? bake.overbake : null,
        }
      : null,
    glue: glue?.ok ? { mixes: glue.mixes, guardsPerMix: glue.guardsPerMix, potLife: glue.potLifeMinutes } : null,
    cureHours: glue !== undefined && cure.ok ? cure.fullHours : null,
    tooColdBelow: glue !== undefined && !glue.ok ? glue.leastCelsius : null,
    cautions: cautionsFor(shop, desk, session, now),
  };
}

/** Cautions of a step: all of them the first time on a day, the short list after that. */
function cautionsFor(shop: Shop, desk: Desk, session: Session, now: Instant): readonly Caution[] {
  const seen = seenOn(desk, localDay(now, shop.zone));
  return [...new Set(momentsOf(shop, desk, session).flatMap((moment) => cautionsAt(moment, seen)))];
}

const seenOn = ({ care }: Desk, day: Day): readonly Moment[] => (care.day === day ? care.seen : []);

/** The desk with work's cautions noted as seen today. */
export function caredFor(shop: Shop, desk: Desk, session: Session, now: Instant): Desk {
  const day = localDay(now, shop.zone);
  const seen = [...new Set([...seenOn(desk, day), ...momentsOf(shop, desk, session)])];
  return { ...desk, care: { day, seen } };
}

/** Grams of metal through the pot for these heads, sprues and warming shots included. */
export function meltGrams(shop: Shop, lots: readonly Readonly<{ heads: number; spec: Spec }>[]): number {
  const [first] = lots;
  if (first === undefined) return 0;
  const cavities = cavityFor(shop, first.spec)?.cavity.count ?? 1;
  const heads = lots.reduce((sum, lot) => sum + lot.heads, 0);
  // The heads here are those to cast, scrap already counted in.
  const settings = { ...shop.casting, scrapShare: 0 };
  return Math.ceil(meltFor({ heads, cavities, metalGrams: castingOf(shop, first.spec).grams }, settings).meltGrams);
}

function countOf(shop: Shop, garage: number, lot: string, spec: Spec): WorkFacts['counts'] {
  const paintFactor = shop.paints.find(({ id }) => id === spec.paint)?.heat ?? 1;
  const count = heatCount(castingOf(shop, spec), { paintFactor, garageCelsius: garage }, shop.heat);
  return count === undefined ? [] : [{ lot, ...count }];
}
