import { isNamed } from './facts.ts';
import type { Clause } from './clauses.ts';
import { isAttribute } from './draft.ts';
import type { Lexicon } from './lexicon.ts';
import type { LineWords, Reference } from './reading.ts';
import type { Fact, Item } from './span.ts';

/** What the message points at outside itself; null for one that stands on its own. */
export function referenceOf(items: readonly Item[], clauses: readonly Clause[], lexicon: Lexicon): Reference | null {
  if (items.some((item, at) => isNamed(item, 'lastTime') && !isNamed(items[at + 1], 'past')))
    return { kind: 'last-time', which: null };
  const first = clauses.find(({ facts, words }) => facts.length > 0 || words.has('drop'));
  if (!first) return null;
  const places = placesIn(items, lexicon);
  if (places.size > 1) return { kind: 'several', which: null };
  const [named] = places;
  if (first.words.has('drop')) return { kind: 'remove', which: named ?? wordsOf(first.facts) };
  const standsAlone = !first.facts.some(({ slot }) => slot === 'style');
  // "same but white" stands apart from what is otherwise.
  const apart = clauses.some(({ facts, words }) => facts.length === 0 && words.has('same'));
  if ((apart || first.words.has('same')) && !first.facts.some(({ copied }) => copied))
    return { kind: 'same', which: named ?? null };
  if (first.words.has('more') && standsAlone) return { kind: 'another', which: named ?? null };
  if (first.words.has('add') || first.words.has('more')) return { kind: 'add', which: null };
  if (first.words.has('all') && isAttribute(first)) return { kind: 'all', which: null };
  if (isPart(first)) return { kind: 'part', which: named ?? null };
  if (CHANGES.some((word) => first.words.has(word)) || first.taken.length > 0)
    return { kind: 'change', which: named ?? meant(first.facts) };
  const isWhole = ['style', 'quantity'].every((slot) => first.facts.some((fact) => fact.slot === slot));
  return named === undefined || isWhole ? null : { kind: 'change', which: named };
}

/** Make 10 of them white. */
const isPart = ({ words, facts }: Clause): boolean =>
  words.has('make') && words.has('count') && facts[0]?.slot === 'quantity' && facts.length > 1;

const CHANGES = ['wrong', 'make', 'instead'] as const;

/** make the 1/4s 30: the first of two things said is what the line is. */
const meant = (facts: readonly Fact[]): LineWords | null => (facts.length > 1 ? wordsOf(facts.slice(0, 1)) : null);

function wordsOf(facts: readonly Fact[]): LineWords | null {
  const clear = facts
    .filter(({ values }) => values.length === 1)
    .map(({ slot, values }) => [slot, slot === 'quantity' ? Number(values[0]) : values[0]]);
  return clear.length === 0 ? null : (Object.fromEntries(clear) as LineWords);
}

/** The places of lines that are named: line 2, the second one, make the first 40. */
function placesIn(items: readonly Item[], { language }: Lexicon): ReadonlySet<number> {
  const { ordinals } = language.days;
  const places = items.flatMap((item, at) => {
    if (item.is === 'row') return [item.row];
    if (item.is === 'grammar') return PLACES.flatMap((word, place) => (word === item.word ? [place + 1] : []));
    const isMeant =
      isNamed(items[at + 1], 'measure', 'row', 'ones') || isNamed(items[at - 1], 'drop', 'make', 'count', 'link');
    return item.is === 'word' && isMeant ? (ordinals[item.stem] ?? []) : [];
  });
  return new Set(places);
}
const PLACES = ['first', 'second', 'third'] as const;
