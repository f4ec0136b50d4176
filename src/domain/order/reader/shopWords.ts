import type { Shop } from '../../shop/shop.ts';
import type { LanguageWords } from './language/language.ts';
import { addPhrase, listed, noPhrases, stemsOf, type Phrases } from './phrases.ts';
import type { Sense } from './span.ts';
import { stemOf } from './tokens.ts';

type Add = (said: string, sense: Sense) => void;
type Named = Readonly<{
  id: string;
  name: string;
  nameIn: Readonly<Partial<Record<string, string>>>;
  aliases: readonly string[];
}>;

const namesOf = ({ name, nameIn, aliases, id }: Named): readonly string[] =>
  [name, ...Object.values(nameIn), ...aliases, id.replaceAll('-', ' ')]
    .filter((said) => said !== undefined)
    .flatMap(variants);

/** Also the adjective in the other gender, two words written as one, and flippers and flippin for flipping. */
function variants(said: string): readonly string[] {
  const words = said.split(' ');
  const gendered = words.map((word) => word.replace(/o$/, 'a')).join(' ');
  const joined = words.length === 2 && words.every((word) => /^\p{L}+$/u.test(word)) ? [words.join('')] : [];
  const spoken = said.endsWith('ing') ? [said.replace(/ing$/, 'er'), said.replace(/g$/, '')] : [];
  return [said, ...(gendered === said ? [] : [gendered]), ...joined, ...spoken];
}

/** Tells every name that the shop gives its styles, metals, colours and hook patterns, and lists them. */
export function wordsOfShop(shop: Shop, { parts }: LanguageWords, add: Add): readonly string[] {
  const heads = new Set(listed(parts.head).flatMap(stemsOf));
  const said: string[] = [];
  const each = (named: readonly Named[], sense: (id: string) => Sense) =>
    named.forEach((one) => namesOf(one).forEach((name) => (said.push(name), add(name, sense(one.id)))));
  const short = shop.styles.map((style) => ({
    ...style,
    aliases: [...style.aliases, ...namesOf(style).flatMap((name) => withoutHead(name, heads))],
  }));
  each(short, (value) => ({ is: 'value', slot: 'style', value }));
  each(shop.metals, (value) => ({ is: 'value', slot: 'metal', value }));
  each(shop.paints, (paint) => ({ is: 'colour', colour: { paint } }));
  each(shop.guards, (guard) => ({ is: 'colour', colour: { guard } }));
  each(shop.patterns, () => ({ is: 'pattern' }));
  return said;
}

/** A style's name without its noun: `cabeza redonda` is also called `redonda`. */
function withoutHead(name: string, heads: ReadonlySet<string>): readonly string[] {
  const words = name.split(' ');
  const rest = words.filter((word) => !heads.has(stemOf(word)) && word !== 'de');
  return rest.length === words.length || rest.length === 0 || !heads.has(stemOf(words[0] ?? ''))
    ? []
    : [rest.join(' ')];
}

/** Dressings go by their colours, so each is known by its name and aliases with and without its noun, and both ways of joining two colours. */
export function dressingsOf(shop: Shop): Phrases<string> {
  const tree = noPhrases<string>();
  for (const dressing of shop.dressings.filter(({ kind }) => kind === 'skirt'))
    for (const name of namesOf(dressing))
      for (const said of joinings(name, shop)) addPhrase(tree, stemsOf(said), dressing.id);
  return tree;
}

function joinings(name: string, shop: Shop): readonly string[] {
  const bare = name
    .toLowerCase()
    .replaceAll(/\b(skirt|falda|faldilla)s?\b/gi, '')
    .trim();
  const parts = bare.split(/\s*(?:\/|\band\b|\by\b|&|-)\s*/).filter((part) => part !== '');
  if (parts.length !== 2) return others(bare, shop);
  const [first = '', second = ''] = parts;
  return others(first, shop).flatMap((a) =>
    others(second, shop).flatMap((b) => ['/', ' / ', ' and ', ' & ', ' n ', ' y ', ' '].map((by) => `${a}${by}${b}`)),
  );
}

/** A colour by every name the shop's paints and guards give it. */
function others(colour: string, shop: Shop): readonly string[] {
  const named = [...shop.paints, ...shop.guards].find((one) =>
    namesOf(one).some((name) => stemOf(name) === stemOf(colour)),
  );
  return named ? namesOf(named) : [colour];
}
