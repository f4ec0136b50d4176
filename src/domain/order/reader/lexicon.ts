import type { Shop } from '../../shop/shop.ts';
import type { LineSlot } from '../../shop/words.ts';
import { PARTS, type Grammar, type LanguageWords } from './language/language.ts';
import { COUNTRIES, DIVIDED, SUBDIVISIONS, SUBDIVISIONS_ES } from './language/places.ts';
import { addPhrase, listed, noPhrases, stemsOf, type Phrases } from './phrases.ts';
import { dressingsOf, wordsOfShop } from './shopWords.ts';
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
  const shopWords = wordsOfShop(shop, language, add);
  wishes(language, add);
  parts(language, add);
  strangers(language, add);
  grammar(language, add);
  places(add);
  // What a shop may not have is compared letter by letter: a slip towards it would only be a worse guess.
  const known = [
    ...shopWords,
    ...Object.values(language.parts),
    ...language.wishes.map(({ said }) => said),
    ...Object.keys(language.fractions),
    ...everydayOf(language).filter((word) => word.length >= LONG_ENOUGH),
  ];
  return {
    language,
    senses,
    dressings: dressingsOf(shop),
    vague: vagueOf(language),
    holidays: phrasesOf(Object.keys(language.days.holidays), (said) => language.days.holidays[said] ?? ''),
    spelling: spellingOf(
      known.flatMap(listed).flatMap(stemsOf),
      [
        ...everyWord(language),
        ...Object.values(language.strangers).flatMap(listed).flatMap(stemsOf),
        ...Object.values(language.answered).flatMap(listed).flatMap(stemsOf),
      ],
      language.short,
    ),
    signs: new Set([...listed(language.signs).map(stemOf), ...grammarWords(language)]),
  };
}

/** Words of every order that fingers slip on too: corrections, numbers, days, places. */
const everydayOf = ({ grammar, numbers, days }: LanguageWords): readonly string[] => [
  ...SLIPPED.flatMap((word) => listed(grammar[word] ?? '')).filter((phrase) => !phrase.includes(' ')),
  ...[numbers, days.months, days.weekdays].flatMap((table) => Object.keys(table)),
  ...Object.values(SUBDIVISIONS).flatMap(listed).flatMap(stemsOf),
];
const SLIPPED: readonly Grammar[] = ['wrong', 'make', 'drop', 'instead', 'no', 'all', 'each'];
/** A shorter word is a slip away from too many others. */
const LONG_ENOUGH = 6;

type Add = (said: string, sense: Sense) => void;

function wishes({ wishes: all }: LanguageWords, add: Add): void {
  for (const { slot, value, said } of all) for (const phrase of listed(said)) add(phrase, { is: 'value', slot, value });
}

function parts({ parts: all }: LanguageWords, add: Add): void {
  for (const part of PARTS) for (const phrase of listed(all[part])) add(phrase, { is: 'part', part });
}

function strangers({ strangers: all, answered }: LanguageWords, add: Add): void {
  for (const slot of STRANGE)
    for (const phrase of listed(answered[slot] ?? '')) add(phrase, { is: 'stranger', slot, isAnswered: true });
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

/** The small words of a language, by which a message shows its language. */
const grammarWords = ({ grammar, parts, numbers, days }: LanguageWords): readonly string[] => [
  ...[...Object.values(grammar), ...Object.values(parts)].flatMap(listed).flatMap(stemsOf),
  ...[numbers, days.months, days.weekdays].flatMap((table) => Object.keys(table)),
];

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
