import type { ItemId, Shop } from '../shop/shop.ts';
import { wordsIn } from './tokens.ts';

/** A stock item with everything it may be called: sets of words that name it whole, and every word that may stand beside them. */
export type NamedItem = Readonly<{ item: ItemId; names: readonly (readonly string[])[]; words: ReadonlySet<string> }>;

/** The shop's stock by what its maker says for it: ids, names and aliases of the shop file, in each of its languages. */
export const namedItems = (shop: Shop): readonly NamedItem[] =>
  shop.stock.map(({ item }) => {
    const [kind = '', first = '', size = ''] = item.split(':');
    const kinds = KIND_WORDS[kind === 'dressing' ? dressingKind(shop, first) : kind] ?? [kind];
    const names = namesOf(shop, kind, first).map((name) => [...wordsIn(name), ...(size === '' ? [] : [size])]);
    const whole = names.length > 0 ? names : kinds.map((word) => [word]);
    return { item, names: whole, words: new Set([...kinds, ...whole.flat()]) };
  });

/** What each kind of thing is called, singular and plural, English and Spanish. */
const KIND_WORDS: Readonly<Record<string, readonly string[]>> = {
  metal: ['metal', 'ingot', 'ingots', 'bar', 'bars', 'lingote', 'lingotes'],
  hook: ['hook', 'hooks', 'size', 'degree', 'degrees', 'deg', 'anzuelo', 'anzuelos', 'grados'],
  paint: ['powder', 'paint', 'polvo', 'pintura'],
  guard: ['guard', 'guards', 'weedguard', 'weedguards', 'weed', 'antihierbas'],
  keeper: ['keeper', 'keepers', 'wire', 'reten', 'retenes', 'alambre'],
  collar: ['collar', 'collars', 'collarin', 'collarines'],
  skirt: ['skirt', 'skirts', 'falda', 'faldas'],
  epoxy: ['epoxy', 'glue', 'epoxi', 'pegamento'],
  bag: ['bag', 'bags', 'bolsa', 'bolsas'],
  label: ['label', 'labels', 'etiqueta', 'etiquetas'],
};

const dressingKind = (shop: Shop, id: string): string => shop.dressings.find((one) => one.id === id)?.kind ?? 'skirt';

/** The names of what an item is made out of or made for; none for an item that its kind names alone. */
function namesOf(shop: Shop, kind: string, id: string): readonly string[] {
  const lists: Readonly<Record<string, readonly Entry[]>> = {
    metal: shop.metals,
    hook: shop.patterns,
    paint: shop.paints,
    guard: shop.guards,
    dressing: shop.dressings,
  };
  const entry = lists[kind]?.find((one) => one.id === id);
  if (entry === undefined) return [];
  return [entry.id, entry.name, ...Object.values(entry.nameIn).filter((name) => name !== undefined), ...entry.aliases];
}

type Entry = Readonly<{
  id: string;
  name: string;
  nameIn: Readonly<Record<string, string | undefined>>;
  aliases: readonly string[];
}>;
