import type { Shop } from '../../shop/shop.ts';
import type { LineSlot } from '../../shop/words.ts';
import { PARTS, type Grammar, type LanguageWords } from './language/language.ts';
import { COUNTRIES, DIVIDED, SUBDIVISIONS, SUBDIVISIONS_ES } from './language/places.ts';
import { addPhrase, noPhrases, type Phrases } from './phrases.ts';
import type { Colour, Sense } from './span.ts';
import { stemOf } from './tokens.ts';
import { spellingOf, type Spelling } from './spelling.ts';

/** What every phrase means in one shop and one language. */
export type Lexicon = Readonly<{
  language: LanguageWords;
  senses: Phrases<Sense>;
  /** Dressings by the colours in them: `black/blue`, `black and blue`. */
  dressings: Phrases<string>;
  /** Days that are no one day; `loose` ones only after by or before. */
  vague: Phrases<'vague' | 'loose'>;
  holidays: Phrases<string>;
  spelling: Spelling;
  signs: ReadonlySet<string>;
}>;

/** The lexicon of a shop; its own words come before those of the trade, and both before grammar. */
export function lexiconOf(shop: Shop, language: LanguageWords): Lexicon {
  const senses = noPhrases<Sense>();
  const add = (said: string, sense: Sense) => addPhrase(senses, stemsOf(said), sense, joined);
  const shopWords = wordsOfShop(shop, add);
  wishes(language, add);
  parts(language, add);
  strangers(language, add);
  grammar(language, add);
  places(add);
  const known = [
    ...shopWords,
    ...Object.values(language.parts),
    ...language.wishes.map(({ said }) => said),
    ...Object.values(language.strangers),
  ];
  return {
    language,
    senses,
    dressings: dressingsOf(shop),
    vague: vagueOf(language),
    holidays: phrasesOf(Object.keys(language.days.holidays), (said) => language.days.holidays[said] ?? ''),
    spelling: spellingOf(known.flatMap(listed).flatMap(stemsOf), everyWord(language), language.short),
    signs: new Set(listed(language.signs)),
  };
}

/** The phrases of a list written with commas. */
export const listed = (phrases: string): readonly string[] =>
  phrases
    .split(',')
    .map((phrase) => phrase.trim().replaceAll(/\s+/g, ' '))
    .filter((phrase) => phrase !== '');

/** The words of a phrase as tokens carry them; a slash stays a word. */
export const stemsOf = (phrase: string): readonly string[] =>
  (phrase.toLowerCase().match(/w\/(?:o(?:ut)?)?(?![\p{L}])|[\p{L}\p{M}'’]+|\d+(?:\/\d+)?|[^\s\p{L}\d-]/gu) ?? []).map(
    stemOf,
  );

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

/** Also the adjective in the other gender, and two words written as one. */
function variants(said: string): readonly string[] {
  const words = said.split(' ');
  const gendered = words.map((word) => word.replace(/o$/, 'a')).join(' ');
  const joined = words.length === 2 && words.every((word) => /^\p{L}+$/u.test(word)) ? [words.join('')] : [];
  return [said, ...(gendered === said ? [] : [gendered]), ...joined];
}

function wordsOfShop(shop: Shop, add: Add): readonly string[] {
  const said: string[] = [];
  const each = (named: readonly Named[], sense: (id: string) => Sense) =>
    named.forEach((one) => namesOf(one).forEach((name) => (said.push(name), add(name, sense(one.id)))));
  each(shop.styles, (value) => ({ is: 'value', slot: 'style', value }));
  each(shop.metals, (value) => ({ is: 'value', slot: 'metal', value }));
  each(shop.paints, (paint) => ({ is: 'colour', colour: { paint } }));
  each(shop.guards, (guard) => ({ is: 'colour', colour: { guard } }));
  each(shop.patterns, () => ({ is: 'pattern' }));
  return said;
}

/** Dressings go by their colours, so each is known by its name and aliases with and without its noun, and both ways of joining two colours. */
function dressingsOf(shop: Shop): Phrases<string> {
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
  if (parts.length !== 2) return [bare];
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

function wishes({ wishes: all }: LanguageWords, add: Add): void {
  for (const { slot, value, said } of all) for (const phrase of listed(said)) add(phrase, { is: 'value', slot, value });
}

function parts({ parts: all }: LanguageWords, add: Add): void {
  for (const part of PARTS) for (const phrase of listed(all[part])) add(phrase, { is: 'part', part });
}

function strangers({ strangers: all }: LanguageWords, add: Add): void {
  for (const slot of STRANGE)
    for (const phrase of listed(all[slot] ?? ''))
      add(phrase, slot === 'paint' ? { is: 'colour', colour: {} } : { is: 'stranger', slot });
}
const STRANGE: readonly LineSlot[] = ['style', 'metal', 'hook', 'keeper', 'dressing', 'guard', 'paint', 'quantity'];

function grammar({ grammar: all }: LanguageWords, add: Add): void {
  for (const word of Object.keys(all) as readonly Grammar[])
    for (const phrase of listed(all[word] ?? '')) add(phrase, { is: 'grammar', word });
}

function places(add: Add): void {
  for (const table of [SUBDIVISIONS, SUBDIVISIONS_ES, COUNTRIES])
    for (const [code, names] of Object.entries(table))
      for (const name of listed(names)) add(name, { is: 'place', code });
  for (const names of Object.values(DIVIDED)) for (const name of listed(names)) add(name, { is: 'place', code: null });
}

/** One name for a paint, a guard and a skirt is one colour. */
function joined(a: Sense, b: Sense): Sense {
  if (a.is !== 'colour' || b.is !== 'colour') return a;
  return { is: 'colour', colour: { ...b.colour, ...a.colour } satisfies Colour };
}

const phrasesOf = <T>(said: readonly string[], meaning: (phrase: string) => T): Phrases<T> => {
  const tree = noPhrases<T>();
  for (const phrase of said) addPhrase(tree, stemsOf(phrase), meaning(phrase));
  return tree;
};

function vagueOf({ days }: LanguageWords): Phrases<'vague' | 'loose'> {
  const tree = noPhrases<'vague' | 'loose'>();
  for (const phrase of days.vague) addPhrase(tree, stemsOf(phrase), 'vague');
  for (const phrase of days.loose) addPhrase(tree, stemsOf(phrase), 'loose');
  return tree;
}

/** All words of a language that are not to be taken for a misspelling of another. */
const everyWord = (language: LanguageWords): readonly string[] => [
  ...listed(language.common),
  ...Object.values(language.grammar).flatMap(listed).flatMap(stemsOf),
  ...Object.keys(language.numbers),
  ...Object.keys(language.fractions),
  ...language.dozens,
  ...Object.values(language.days)
    .flatMap((table) => (Array.isArray(table) ? table : Object.keys(table)))
    .flatMap(stemsOf),
  ...[SUBDIVISIONS, SUBDIVISIONS_ES, COUNTRIES, DIVIDED]
    .flatMap((table) => Object.values(table))
    .flatMap(listed)
    .flatMap(stemsOf),
];
