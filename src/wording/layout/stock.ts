import type { StockFacts } from '../../domain/desk/facts.ts';
import type { BusinessWords } from '../businessWords.ts';
import { lines, paragraphs } from '../clip.ts';
import { amountOf, itemName, patternName, valueName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';
import { specName } from './spec.ts';

type Words = BusinessWords['stock'];

/** The whole stock, short enough for a phone: a line for each item that something is going on with, then the rest by kind, then finished heads. */
export function stock({ rows, shelf }: SayingOf<'stock'>, voice: Voice, { business }: Phrases): string {
  const words = business.stock;
  const moving = rows.filter(isMoving);
  const still = rows.filter((row) => !isMoving(row));
  return paragraphs(
    lines(words.heading, ...moving.map((row) => `- ${movingRow(row, voice, words)}`)),
    still.length === 0 ? null : lines(words.still, ...stillRows(still, voice, words).map((row) => `- ${row}`)),
    shelf.length === 0
      ? null
      : lines(words.shelf, ...shelf.map(({ spec, count }) => `- ${voice.number(count)} × ${specName(voice, spec)}`)),
  );
}

const isMoving = ({ reserved, inWork, coming }: StockFacts): boolean => reserved + inWork + coming.length > 0;

/** On hand, put aside, in work, on order with the day it arrives. */
function movingRow({ item, onHand, reserved, inWork, coming }: StockFacts, voice: Voice, words: Words): string {
  const amount = (count: number): string => amountOf(item, count, voice);
  const there = [
    amount(onHand),
    ...(reserved === 0 ? [] : [words.putAside(amount(reserved))]),
    ...(inWork === 0 ? [] : [words.inWork(amount(inWork))]),
    ...coming.map(({ named, overdue, count }) =>
      overdue > 0
        ? words.overdue(amount(count), voice.shortDay(named), overdue, voice)
        : words.coming(amount(count), voice.shortDay(named)),
    ),
  ];
  return `${itemName(voice, item)}: ${there.join(', ')}`;
}

/** One line a kind; hooks by their pattern. */
function stillRows(rows: readonly StockFacts[], voice: Voice, words: Words): readonly string[] {
  const byKind = new Map<string, readonly string[]>();
  for (const { item, onHand } of rows) {
    const { kind, name } = inKind(item, voice, words);
    byKind.set(kind, [...(byKind.get(kind) ?? []), `${name} (${amountOf(item, onHand, voice)})`]);
  }
  return [...byKind].map(([kind, items]) => `${kind}: ${items.join(', ')}`);
}

/** What an item is called among its kind. */
function inKind(item: string, voice: Voice, words: Words): Readonly<{ kind: string; name: string }> {
  const [kind = '', first = '', size = ''] = item.split(':');
  if (kind === 'hook') return { kind: words.hooks(patternName(voice, first)), name: size };
  const slot = (['metal', 'paint', 'guard', 'keeper', 'dressing'] as const).find((one) => one === kind);
  return slot === undefined
    ? { kind: words.kinds.other, name: itemName(voice, item) }
    : { kind: words.kinds[slot], name: valueName(voice, slot, first) };
}
