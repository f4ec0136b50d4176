import { bakeOf } from '../../craft/oven.ts';
import { cureTime } from '../../craft/epoxy.ts';
import { heatCount } from '../../craft/heat.ts';
import { powderFor } from '../../craft/powder.ts';
import { choicesFor, usualSpec } from '../../order/choices.ts';
import { castingOf, massOf } from '../../order/head.ts';
import { ovenRefuses } from '../../order/oven.ts';
import type { PartialSpec, Spec } from '../../order/spec.ts';
import { headsToPour } from '../../plan/routing.ts';
import type { Shop } from '../../shop/shop.ts';
import { BARE } from '../../shop/words.ts';
import type { ReckonFacts } from '../facts.ts';
import { garageOf } from '../planning.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { meltGrams } from '../work.ts';

/** Heads reckoned with when no number was said. */
const USUAL_HEADS = 25;

/** The maker's ready reckoner: any head and number in the words of an order, what was left out as usual. */
export function reckon(turn: Turn, text: string): Decision {
  const { world, desk, by, now } = turn;
  const [line] = world.reader.read(text, now).lines;
  const { quantity = USUAL_HEADS, ...words } = line ?? {};
  const spec = usualSpec(world.shop, words as PartialSpec);
  if (line === undefined || spec === undefined) return says(desk, card(by.id, { code: 'which-head' }));
  return says(
    desk,
    card(
      by.id,
      { code: 'reckoner', facts: reckoned(world.shop, spec, quantity, garageOf(world.shop, desk)) },
      { picture: spec },
    ),
  );
}

function reckoned(shop: Shop, spec: Spec, quantity: number, garage: number): ReckonFacts {
  const casting = castingOf(shop, spec);
  const heads = headsToPour(shop, spec, quantity);
  const bake = spec.paint === BARE ? undefined : bakeOf([casting], shop.oven);
  const cure = cureTime(garage, shop.epoxy);
  const paintFactor = shop.paints.find(({ id }) => id === spec.paint)?.heat ?? 1;
  return {
    spec,
    quantity,
    heads,
    weights: choicesFor(shop, { style: spec.style, weight: spec.weight, hook: spec.hook }, 'metal').map((metal) => ({
      metal,
      grams: massOf(shop, { ...spec, metal }).totalGrams,
      bakes: ovenRefuses(shop, metal) === undefined,
    })),
    count: heatCount(casting, { paintFactor, garageCelsius: garage }, shop.heat) ?? null,
    bake: bake ? { comeUp: bake.comeUpMinutes, hold: bake.holdMinutes } : null,
    powder: spec.paint === BARE ? null : powderFor(casting, heads, shop.powder),
    cure: cure.ok ? { full: cure.fullHours, overnight: cure.overnightHours } : null,
    garage,
    melt: meltGrams(shop, [{ heads, spec }]),
  };
}
