import { isNamed } from './facts.ts';
import type { Clause } from './clauses.ts';
import type { Lexicon } from './lexicon.ts';
import type { LineWords, Reference } from './reading.ts';
import type { Fact, Item } from './span.ts';

/** What the message points at outside itself; null for one that stands on its own. */
export function referenceOf(items: readonly Item[], clauses: readonly Clause[], lexicon: Lexicon): Reference | null {
  if (items.some((item) => isNamed(item, 'lastTime'))) return { kind: 'last-time', which: null };
  const first = clauses.find(({ facts, words }) => facts.length > 0 || words.has('drop'));
  if (!first) return null;
  const place = placeOf(items, lexicon) ?? rowOf(items);
  const named = place ?? placeBy(items);
  if (first.words.has('drop')) return { kind: 'remove', which: named ?? wordsOf(first.facts) };
  const standsAlone = !first.facts.some(({ slot }) => slot === 'style');
  // "same but white" stands apart from what is otherwise.
  const apart = clauses.some(({ facts, words }) => facts.length === 0 && words.has('same'));
  if ((apart || first.words.has('same')) && !first.facts.some(({ copied }) => copied))
    return { kind: 'same', which: null };
  if (first.words.has('more') && standsAlone) return { kind: 'another', which: null };
  if (first.words.has('add') || first.words.has('more')) return { kind: 'add', which: null };
  if (CHANGES.some((word) => first.words.has(word)) || first.taken.length > 0)
    return { kind: 'change', which: named ?? meant(first.facts) };
  return place === undefined ? null : { kind: 'change', which: place };
}
const CHANGES = ['wrong', 'make', 'instead'] as const;

/** make the 1/4s 30: the first of two things said is what the line is. */
const meant = (facts: readonly Fact[]): LineWords | null => (facts.length > 1 ? wordsOf(facts.slice(0, 1)) : null);

function wordsOf(facts: readonly Fact[]): LineWords | null {
  const clear = facts
    .filter(({ values }) => values.length === 1)
    .map(({ slot, values }) => [slot, slot === 'quantity' ? Number(values[0]) : values[0]]);
  return clear.length === 0 ? null : (Object.fromEntries(clear) as LineWords);
}

/** Line 2; undefined where several are told apart. */
function rowOf(items: readonly Item[]): number | undefined {
  const rows = new Set(items.flatMap((item) => (item.is === 'row' ? [item.row] : [])));
  return rows.size === 1 ? [...rows][0] : undefined;
}

/** Make the first 40. */
const placeBy = (items: readonly Item[]): number | undefined => {
  const item = items.find((one) => isNamed(one, ...PLACES));
  return item?.is === 'grammar' ? PLACES.findIndex((word) => word === item.word) + 1 : undefined;
};

const PLACES = ['first', 'second', 'third'] as const;

/** The second line, the third one. */
function placeOf(items: readonly Item[], { language }: Lexicon): number | undefined {
  const at = items.findIndex(
    (item, place) =>
      (item.is === 'word' ? item.stem in language.days.ordinals : isNamed(item, ...PLACES)) &&
      isNamed(items[place + 1], 'measure', 'row', 'ones'),
  );
  const item = items[at];
  if (item?.is === 'grammar') return PLACES.findIndex((word) => word === item.word) + 1;
  return item?.is === 'word' ? language.days.ordinals[item.stem] : undefined;
}
