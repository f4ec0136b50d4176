import type { Check } from './check.ts';
import { faultAt, repeated, sayPath, type Fault, type Path } from './fault.ts';
import { entries, idsOf, type SoundParts } from './sound.ts';
import { BARE, NONE } from './words.ts';

/** What must hold for ids and for the words that buyers say. */
export const NAME_CHECKS: readonly Check[] = [idsOnce, itemsOnce, wordsFree, wordsOnce];

/** Words that answer a question by themselves and so can name nothing. */
const RESERVED: readonly string[] = [NONE, BARE, 'yes', 'no'];
const NAMED = ['styles', 'patterns', 'metals', 'paints', 'guards', 'dressings'] as const;
const LEFT_OUT = ['paints', 'guards', 'dressings'] as const;

/** An id stands once in its list. */
function idsOnce(shop: SoundParts): Fault[] {
  const lists = [...NAMED, 'molds' as const].map((list) => [[list], shop[list]] as const);
  return [...lists, [['postage', 'regions'], shop.postage?.regions] as const].flatMap(([path, list]) =>
    repeated(
      entries<{ readonly id?: string | undefined }>(list).map(([at, { id }]) => [[...path, at, 'id'], id]),
      'an id',
    ),
  );
}

/** A stock item is counted in one place. */
function itemsOnce(shop: SoundParts): Fault[] {
  return repeated(
    entries(shop.stock).map(([at, { item }]) => [['stock', at, 'item'], item]),
    'a stock item',
  );
}

/** What can be left out is not called by a word that means leaving it out. */
function wordsFree(shop: SoundParts): Fault[] {
  return LEFT_OUT.flatMap((list) =>
    wordsIn(shop, list)
      .filter(({ word }) => RESERVED.includes(folded(word)))
      .map(({ path, word }) => faultAt(path, word, `any word but ${RESERVED.join(', ')}: these answer by themselves`)),
  );
}

/** A word that buyers say means one entry of its list. */
function wordsOnce(shop: SoundParts): Fault[] {
  return NAMED.flatMap((list) => {
    const words = wordsIn(shop, list);
    const ids = idsOf(shop[list]) ?? [];
    return words
      .filter(({ path, word }) => path.at(-1) !== 'id' || ids.indexOf(word) === ids.lastIndexOf(word))
      .flatMap((said, place, all) => sharedWord(said, all.slice(0, place)));
  });
}

type Said = Readonly<{ at: number; path: Path; word: string }>;

function sharedWord({ at, path, word }: Said, earlier: readonly Said[]): Fault[] {
  const other = earlier.find((said) => said.at !== at && folded(said.word) === folded(word));
  return other === undefined
    ? []
    : [faultAt(path, word, `a word of its own, and ${sayPath(other.path)} has it already`)];
}

const wordsIn = (shop: SoundParts, list: (typeof NAMED)[number]): Said[] =>
  entries(shop[list]).flatMap(([at, { id, name, nameIn, aliases }]) =>
    [
      { path: [list, at, 'id'], word: id },
      { path: [list, at, 'name'], word: name },
      ...Object.entries(nameIn ?? {}).map(([language, word]) => ({ path: [list, at, 'nameIn', language], word })),
      ...entries(aliases).map(([place, word]) => ({ path: [list, at, 'aliases', place], word })),
    ].flatMap(({ path, word }) => (word === undefined ? [] : [{ at, path, word }])),
  );

const folded = (word: string): string => word.trim().toLowerCase().replaceAll('-', ' ');
