import { parseHook } from '../craft/hook.ts';
import type { Check } from './check.ts';
import { anyOf, faultAt, type Fault } from './fault.ts';
import { nearestOf } from './nearest.ts';
import { entries, idsOf, type SoundParts } from './sound.ts';

/** What must hold for the stock. */
export const STOCK_CHECKS: readonly Check[] = [everythingCounted, itemsKnown, unitsFit];

/** Everything that a head may need is counted in the stock. */
function everythingCounted(shop: SoundParts): Fault[] {
  const counted = shop.stock?.map((entry) => entry?.item);
  if (counted === undefined || counted.includes(undefined)) return [];
  return [...new Set(neededItems(shop))]
    .filter((item) => !counted.includes(item))
    .map((item) => faultAt(['stock'], undefined, `an entry for the item ${item}, be it with 0 on hand`));
}

/** A stock item names something of the shop. */
function itemsKnown(shop: SoundParts): Fault[] {
  const needed = neededItems(shop);
  const items = [...new Set([...needed, ...SINGLE_ITEMS])];
  return entries(shop.stock).flatMap(([at, { item }]) =>
    item === undefined || isKnown(item, shop, items)
      ? []
      : [faultAt(['stock', at, 'item'], item, allowedFor(item, shop), nearestOf(item, items))],
  );
}

/** An item is counted in its own unit. */
function unitsFit(shop: SoundParts): Fault[] {
  return entries(shop.stock).flatMap(([at, { item, unit }]) => {
    const right = UNITS[kindOf(item ?? '')];
    return right === undefined || unit === undefined || unit === right
      ? []
      : [faultAt(['stock', at, 'unit'], unit, `${right}, for ${item} is counted so`, right)];
  });
}

/** What each kind of item is counted in. */
const UNITS: Readonly<Record<string, 'piece' | 'gram'>> = {
  metal: 'gram',
  hook: 'piece',
  paint: 'gram',
  guard: 'piece',
  keeper: 'piece',
  dressing: 'piece',
  epoxy: 'gram',
  bag: 'piece',
  label: 'piece',
};
const SINGLE_ITEMS: readonly string[] = ['keeper:wire', 'epoxy', 'bag', 'label'];

const kindOf = (item: string): string => item.split(':')[0] ?? '';

const neededItems = (shop: SoundParts): string[] => [
  ...(idsOf(shop.metals) ?? []).map((id) => `metal:${id}`),
  ...entries(shop.molds).flatMap(([, { pattern, cavities }]) =>
    entries(cavities).flatMap(([, { hooks }]) =>
      entries(hooks).flatMap(([, hook]) => (pattern === undefined ? [] : `hook:${pattern}:${hook}`)),
    ),
  ),
  ...(idsOf(shop.paints) ?? []).map((id) => `paint:${id}`),
  ...(idsOf(shop.guards) ?? []).map((id) => `guard:${id}`),
  ...(entries(shop.molds).some(([, { keepers }]) => keepers?.includes('wire')) ? ['keeper:wire'] : []),
  ...(idsOf(shop.dressings) ?? []).map((id) => `dressing:${id}`),
  ...(shop.guards?.length ? ['epoxy'] : []),
  'bag',
  'label',
];

/** Also a hook size that no mold takes yet is known, and everything of a kind whose list cannot be trusted. */
function isKnown(item: string, shop: SoundParts, items: readonly string[]): boolean {
  const [kind = '', name = '', size, ...more] = item.split(':');
  if (items.includes(item)) return true;
  const names = namesOf(kind, shop);
  if (kind !== 'hook') return names === undefined && UNITS[kind] !== undefined && size === undefined;
  return (names?.includes(name) ?? true) && size !== undefined && parseHook(size) === size && more.length === 0;
}

function allowedFor(item: string, shop: SoundParts): string {
  const kind = kindOf(item);
  if (UNITS[kind] === undefined) return `an item of a kind such as ${anyOf(Object.keys(UNITS))}`;
  const names = namesOf(kind, shop) ?? [];
  const size = kind === 'hook' ? ', then : and the hook size' : '';
  return names.length === 0 ? `${kind} alone` : `${kind}: and one of ${anyOf(names)}${size}`;
}

/** The names that an item of a kind may have; undefined when their list cannot be trusted. */
function namesOf(kind: string, shop: SoundParts): readonly string[] | undefined {
  const lists: Readonly<Record<string, readonly string[] | undefined>> = {
    metal: idsOf(shop.metals),
    hook: idsOf(shop.patterns),
    paint: idsOf(shop.paints),
    guard: idsOf(shop.guards),
    keeper: ['wire'],
    dressing: idsOf(shop.dressings),
  };
  return Object.hasOwn(lists, kind) ? lists[kind] : [];
}
