import { ounces } from '../../domain/craft/weight.ts';
import { cavityFor } from '../../domain/order/rules.ts';
import type { Spec } from '../../domain/order/spec.ts';
import type { Shop } from '../../domain/shop/shop.ts';
import type { Keeper, Shape } from '../../domain/shop/words.ts';

/** What one jig head looks like; colours are `#rrggbb`, and the caption is worded already, its first line the biggest. */
export type HeadLook = Readonly<{
  shape: Shape;
  ounces: number;
  hookSize: string;
  /** Between the shank and the leg that carries the eye. */
  eyeDegrees: number;
  /** null for bare metal. */
  paint: Readonly<{ colour: string }> | null;
  guard: Readonly<{ colour: string }> | null;
  keeper: Keeper;
  dressing: Readonly<{ kind: 'collar' | 'skirt'; colours: readonly string[] }> | null;
  caption: readonly string[];
}>;

/** How a checked spec looks by the shop's entries; what the shop does not have is drawn plainest: round, 90°, bare, with nothing on it. */
export function headLook(shop: Shop, spec: Spec, caption: readonly string[]): HeadLook {
  const paint = byId(shop.paints, spec.paint);
  const guard = byId(shop.guards, spec.guard);
  const dressing = byId(shop.dressings, spec.dressing);
  return {
    shape: byId(shop.styles, spec.style)?.shape ?? 'round',
    ounces: ounces(spec.weight),
    hookSize: spec.hook,
    eyeDegrees: byId(shop.patterns, cavityFor(shop, spec)?.mold.pattern)?.eyeDegrees ?? 90,
    paint: paint ? { colour: paint.colour } : null,
    guard: guard ? { colour: guard.colour } : null,
    keeper: spec.keeper,
    dressing: dressing ? { kind: dressing.kind, colours: dressing.colours } : null,
    caption,
  };
}

const byId = <Entry extends { readonly id: string }>(
  list: readonly Entry[],
  id: string | undefined,
): Entry | undefined => list.find((entry) => entry.id === id);
