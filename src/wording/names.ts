import { wordsAgreed } from '../domain/order/agreed.ts';
import type { ItemId } from '../domain/shop/shop.ts';
import { BARE, KEEPERS, NONE, SPEC_SLOTS, type SpecSlot } from '../domain/shop/words.ts';
import type { PartialSpec } from '../domain/order/spec.ts';
import type { Voice } from './voice.ts';

/** A slot's value as it stands alone, in the buyer's terms. @example partName(voice, 'guard', 'none') //=> 'no guard' */
export function partName(voice: Voice, slot: SpecSlot, value: string): string {
  const { terms } = voice;
  if (slot === 'paint' && value === BARE) return terms.bare;
  if ((slot === 'guard' || slot === 'keeper' || slot === 'dressing') && value === NONE) return terms.without[slot];
  return terms.part[slot](valueName(voice, slot, value));
}

/** A slot's value beside the name of its slot. @example valueName(voice, 'guard', 'none') //=> 'none' */
export function valueName(voice: Voice, slot: SpecSlot, value: string): string {
  const { shop, terms } = voice;
  if (slot === 'keeper') return terms.keepers[KEEPERS.find((keeper) => keeper === value) ?? 'none'];
  const agreed = wordsAgreed(value);
  if (agreed !== undefined) return terms.quote(agreed);
  if (value === NONE) return terms.none;
  if (slot === 'paint' && value === BARE) return terms.bare;
  if (slot === 'weight' || slot === 'hook') return value;
  const lists = {
    style: shop.styles,
    paint: shop.paints,
    guard: shop.guards,
    dressing: shop.dressings,
    metal: shop.metals,
  };
  return named(voice, lists[slot], value);
}

/** A head by style and weight. @example headName(voice, { style: 'ball', weight: '1/8' }) //=> '1/8 oz ball head' */
export const headName = (voice: Voice, { style, weight }: PartialSpec): string =>
  voice.terms.head(style && valueName(voice, 'style', style), weight);

/** The name of a hook pattern. */
export const patternName = (voice: Voice, pattern: string): string => named(voice, voice.shop.patterns, pattern);

/** A stock item, many of it. @example itemName(voice, 'hook:90-round:2') //=> 'size 2 hooks, 90° round bend' */
export function itemName(voice: Voice, item: ItemId): string {
  const { items } = voice.terms;
  const [kind = '', first = '', second = ''] = item.split(':');
  const names: Readonly<Record<string, () => string>> = {
    metal: () => valueName(voice, 'metal', first),
    hook: () => items.hook(second, patternName(voice, first)),
    paint: () => items.paint(valueName(voice, 'paint', first)),
    guard: () => items.guard(valueName(voice, 'guard', first)),
    keeper: () => items.keeper(valueName(voice, 'keeper', first)),
    dressing: () => valueName(voice, 'dressing', first),
    epoxy: () => items.epoxy,
    bag: () => items.bag,
    label: () => items.label,
  };
  return names[kind]?.() ?? item;
}

/** So much of an item, in its unit: "850 g", "24 pieces". */
export function amountOf(item: string, count: number, voice: Voice): string {
  const unit = voice.shop.stock.find((row) => row.item === item)?.unit;
  return unit === 'gram' ? voice.grams(count) : voice.number(count);
}

/** What a way out puts in, in words: "3/8 oz", "no guard, unpainted". */
export const putText = (put: Readonly<Record<string, string | number>>, voice: Voice): string =>
  voice.list([
    ...SPEC_SLOTS.flatMap((slot) => (put[slot] === undefined ? [] : [partName(voice, slot, String(put[slot]))])),
    ...(put.quantity === undefined ? [] : [voice.count(Number(put.quantity), voice.terms.heads)]),
  ]);

type Entry = Readonly<{ id: string; name: string; nameIn: Readonly<Partial<Record<'en' | 'es', string | undefined>>> }>;

/** The entry's name in the language, else its usual name, else its id: a shop file may have changed since. */
function named({ language }: Voice, entries: readonly Entry[], id: string): string {
  const entry = entries.find((one) => one.id === id);
  return entry?.nameIn[language] ?? entry?.name ?? id;
}
