import { headsToCast } from '../craft/melt.ts';
import { bakeOf } from '../craft/oven.ts';
import { cureTime } from '../craft/epoxy.ts';
import type { Celsius } from '../craft/temperature.ts';
import type { Minutes } from '../craft/time.ts';
import { castingOf } from '../order/head.ts';
import { cavityFor } from '../order/rules.ts';
import type { Spec } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import { BARE, NONE, type Step } from '../shop/words.ts';
import type { PlanStep } from './problem.ts';

/** The steps that a spec needs, in order. Posting is not among them: it is the order's, once all its lots are packed. */
export function routing(spec: Spec): readonly Step[] {
  const painted = spec.paint !== BARE;
  const guarded = spec.guard !== NONE;
  return [
    'pour',
    'trim',
    ...(painted ? (['paint', 'clear-eyes', 'bake', 'cool'] as const) : []),
    ...(guarded ? (['guard', 'cure'] as const) : []),
    ...(spec.dressing !== NONE ? (['dress'] as const) : []),
    'pack',
  ];
}

/** What makes two lots share a session of a step: the same mold and cavity, colour or recipe; `-` where any lot may join. */
export function familyOf(shop: Shop, spec: Spec, step: Step): string {
  if (step === 'pour') return `${cavityFor(shop, spec)?.mold.id ?? '?'}-${spec.weight}-${spec.metal}`;
  if (step === 'paint') return spec.paint;
  if (step === 'bake') return `${shop.oven.celsius}C`;
  return '-';
}

/** Heads to cast so that enough are left after the usual scrap; a mold pours all its cavities, so whole shots. */
export function headsToPour(shop: Shop, spec: Spec, heads: number): number {
  const cavities = cavityFor(shop, spec)?.cavity.count ?? 1;
  return Math.ceil(headsToCast(heads, shop.casting.scrapShare) / cavities) * cavities;
}

/** The minutes of a step for so many heads, hands, oven or lag, without the session's setup.
 *  Pouring counts shots, not heads; a lag is the same for any number. */
export function workOf(shop: Shop, garage: Celsius, spec: Spec, step: Step, heads: number): PlanStep {
  const family = familyOf(shop, spec, step);
  const shared = family === '-' ? {} : { with: family };
  switch (step) {
    case 'bake':
      return { do: 'bake', ...shared, hold: bakeMinutes(shop, spec) };
    case 'cool':
      return { do: step, wait: shop.steps.cool.wait };
    case 'cure':
      return { do: step, wait: cureMinutes(shop, garage) };
    case 'post':
      return { do: step, wait: 0 };
    case 'pour': {
      const shots = Math.ceil(heads / (cavityFor(shop, spec)?.cavity.count ?? 1));
      return { do: step, ...shared, minutes: Math.ceil(shop.steps.pour.each * shots) };
    }
    default:
      return { do: step, ...shared, minutes: Math.max(1, Math.ceil(shop.steps[step].each * heads)) };
  }
}

/** Minutes of a rack of these heads in the oven: until they are up to heat, then the hold. */
export function bakeMinutes(shop: Shop, spec: Spec): Minutes {
  const bake = bakeOf([castingOf(shop, spec)], shop.oven);
  return Math.ceil((bake?.comeUpMinutes ?? 0) + shop.oven.holdMinutes);
}

/** Minutes to full cure at the garage's temperature. Below the least temperature nothing cures:
 *  the plan then counts on the least, and the bench says that it must be warmed. */
export function cureMinutes(shop: Shop, garage: Celsius): Minutes {
  const time = cureTime(Math.max(garage, shop.epoxy.leastCelsius), shop.epoxy);
  return Math.ceil((time.ok ? time.fullHours : 0) * 60);
}
