import { shareOf, total, type Cents } from '../craft/money.ts';
import type { Day, Instant } from '../craft/time.ts';
import { conflicts } from '../order/rules.ts';
import type { Line, Spec } from '../order/spec.ts';
import { priceLine } from '../quote/price.ts';
import { BARE, NONE } from '../shop/words.ts';
import { askedShips } from './planning.ts';
import { rushOf, type Asked, type Trade } from './quoting.ts';
import type { Desk } from './state.ts';

/** What would be there by a day, when the order in its turn would not: all of it in a rush, or unpainted, without guards, or fewer heads. */
export const WAYS_SOONER = ['rush', 'bare', 'unguarded', 'fewer'] as const;
export type WaySooner = (typeof WAYS_SOONER)[number];

/** `charge` is what haste adds to the price of the heads. */
export type Sooner = Readonly<{ way: WaySooner; lines: readonly Line[]; ships: Day; charge: Cents }>;

/** The ways that meet the day, each as the order it would be; none when nothing does. A rush goes ahead of others, but breaks no promise. */
export function soonerWays({ shop }: Trade, desk: Desk, asked: Asked, by: Day, now: Instant): readonly Sooner[] {
  const shipsOf = (lines: readonly Line[], place: 'turn' | 'rush'): Day | undefined => {
    const plan = askedShips(shop, desk, now, lines, place);
    return 'impossible' in plan ? undefined : plan.ships;
  };
  const place = asked.rush ? 'rush' : 'turn';
  const meets = (lines: readonly Line[]): boolean => (shipsOf(lines, place) ?? '9999') <= by;
  const rate = rushOf(shop, asked, now);
  const candidates: Readonly<Record<WaySooner, readonly Line[] | undefined>> = {
    rush: rate > 0 && !asked.rush ? asked.lines : undefined,
    bare: changed(asked.lines, ({ paint }) => (paint === BARE ? undefined : { paint: BARE })),
    unguarded: changed(asked.lines, ({ guard }) => (guard === NONE ? undefined : { guard: NONE })),
    fewer: mostHeads(asked.lines, shop.orders.least, meets),
  };
  return WAYS_SOONER.flatMap((way) => {
    const lines = candidates[way];
    const possible = lines?.every(({ spec }) => conflicts(shop, spec).length === 0) ?? false;
    const ships = lines !== undefined && possible ? shipsOf(lines, way === 'rush' ? 'rush' : place) : undefined;
    if (lines === undefined || ships === undefined || ships > by) return [];
    const heads = total(lines.map((line) => priceLine(shop, line).total));
    return [{ way, lines, ships, charge: way === 'rush' ? shareOf(heads, rate) : 0 }];
  });
}

/** Lines with something left off; undefined when nothing is there to leave off. */
function changed(lines: readonly Line[], put: (spec: Spec) => Partial<Spec> | undefined): readonly Line[] | undefined {
  if (lines.every(({ spec }) => put(spec) === undefined)) return undefined;
  return lines.map((line) => ({ ...line, spec: { ...line.spec, ...put(line.spec) } }));
}

/** The same lines with as many heads as meet a test, each line cut by the same share and none below the least. */
function mostHeads(
  lines: readonly Line[],
  least: number,
  meets: (lines: readonly Line[]) => boolean,
): readonly Line[] | undefined {
  const cut = (share: number): readonly Line[] =>
    lines.map((line) => ({ ...line, quantity: Math.max(least, Math.floor(line.quantity * share)) }));
  const STEPS = 64;
  let [low, high] = [0, STEPS];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (meets(cut(middle / STEPS))) low = middle;
    else high = middle;
  }
  const most = cut(low / STEPS);
  return most.some(({ quantity }, at) => quantity < (lines[at]?.quantity ?? 0)) ? most : undefined;
}
