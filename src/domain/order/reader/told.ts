import { isNamed } from './facts.ts';
import type { Fact, Item } from './span.ts';

/** Without the heads that are only talked about: what was caught, bought and lost, what is still in the box, and what is asked without a quantity. */
export function ordered(items: readonly Item[]): readonly Item[] {
  if (!items.some((item) => item.is === 'grammar' && TELLS.has(item.word))) return items;
  const told: Item[] = [];
  const kept = sentences(items).flatMap((sentence, at, all) => {
    if (asksOnly(sentence) && !isCompleted(sentence, all[at + 1])) return withoutFacts(sentence);
    let goesOn = false;
    return pieces(sentence).flatMap((piece, place, beside) => {
      if (isSaidBefore(piece, beside[place + 1])) return withoutFacts(piece);
      const isPast = isTold(piece);
      goesOn = isPast ? tellsOfHeads(piece) : goesOn && isMoreOfIt(piece);
      if (!isPast && !goesOn) return piece;
      if (isPast && piece.some((item) => isNamed(item, 'past'))) told.push(...piece);
      const wish = piece.findLastIndex((item) => isNamed(item, 'want'));
      return [
        ...withoutFacts(piece.slice(0, wish + 1)),
        ...(wish === -1 ? withoutFacts(piece) : piece.slice(wish + 1)),
      ];
    });
  });
  return recalled(kept, told);
}

/** Loved the mushroom heads; this time 40: the kind told of is the kind wanted, if it is the only one and none is named with the quantity. 30 more are of the weight told of too. */
function recalled(kept: readonly Item[], told: readonly Item[]): readonly Item[] {
  const style = onlyOne(told, 'style');
  if (!style || !saysSlot(kept, 'quantity') || saysSlot(kept, 'style')) return kept;
  const isMore = kept.some((item) => isNamed(item, 'more')) && !saysSlot(kept, 'weight');
  const weight = isMore ? onlyOne(told, 'weight') : undefined;
  const first = kept.findIndex(({ is }) => is === 'fact');
  return [...kept.slice(0, first), style, ...(weight ? [weight] : []), ...kept.slice(first)];
}

/** The one value of a slot that is told of; undefined where there are several. */
function onlyOne(told: readonly Item[], slot: string): Fact | undefined {
  const [first, ...others] = told.filter((item) => item.is === 'fact' && item.slot === slot) as readonly Fact[];
  const value = first?.values.length === 1 ? first.values[0] : undefined;
  return others.every(({ values }) => values.length === 1 && values[0] === value) && value ? first : undefined;
}

const TELLS: ReadonlySet<string> = new Set(['wrong', 'past', 'lose', 'keep', 'because', 'ask', 'stocked']);

/** Got any 3/8 footballs? I could use 15: what is counted next is what was asked about. 1/16 or 3/32? Either way 20: two values are left open. */
const isCompleted = (asked: readonly Item[], next: readonly Item[] = []): boolean =>
  saysSlot(next, 'quantity') &&
  ((asked.some((item) => isNamed(item, 'stocked')) && !saysSlot(next, 'style')) || isChoice(asked, next));

/** Two values of one slot with an `or` between them, of which what follows says nothing. */
const isChoice = (asked: readonly Item[], next: readonly Item[]): boolean =>
  asked.some((item, at) => {
    const [before, after] = [asked[at - 1], asked[at + 1]];
    if (!isNamed(item, 'or') || before?.is !== 'fact' || after?.is !== 'fact') return false;
    return before.slot === after.slot && !saysSlot(next, before.slot);
  });

const saysSlot = (items: readonly Item[], slot: string): boolean =>
  items.some((item) => item.is === 'fact' && item.slot === slot);

/** What refuses a fact goes with it, or it would refuse the next one. */
const withoutFacts = (items: readonly Item[]): readonly Item[] =>
  items.filter((item) => item.is !== 'fact' && !isNamed(item, 'not'));

/** A question that names no quantity and is no request: what colors do you paint? */
function asksOnly(sentence: readonly Item[]): boolean {
  const first = sentence.findIndex((item) => item.is === 'grammar' && SPEAKS.has(item.word));
  const asks = isNamed(sentence[first], 'ask', 'stocked') && first <= 3;
  return (
    asks &&
    !sentence.some((item) => item.is === 'fact' && item.slot === 'quantity') &&
    !sentence.some((item) => isNamed(item, 'may', 'want', 'make', 'wrong', 'add'))
  );
}
const SPEAKS: ReadonlySet<string> = new Set(['ask', 'stocked', 'may', 'want', 'wrong', 'make', 'no', 'add']);

/** Last fall I ordered 40 football heads, 1/2 oz, all red: what goes on without a count or a wish is told too. */
const tellsOfHeads = (piece: readonly Item[]): boolean =>
  saysSlot(piece, 'quantity') && piece.some((item) => isNamed(item, 'past'));
const isMoreOfIt = (piece: readonly Item[]): boolean =>
  !saysSlot(piece, 'quantity') && !piece.some((item) => isNamed(item, ...WISHES));
const WISHES = ['want', 'may', 'make', 'wrong', 'but', 'same', 'more', 'add', 'instead', 'no', 'due'] as const;

/** I said 4/0, but I want 5/0: what was said before is let go of. */
const isSaidBefore = (piece: readonly Item[], next: readonly Item[] = []): boolean =>
  isNamed(next[0], 'but') &&
  piece.some((item) => isNamed(item, 'wrong')) &&
  next.some((item) => isNamed(item, 'want')) &&
  piece.filter(({ is }) => is === 'fact').every((item) => item.is === 'fact' && saysSlot(next, item.slot));

/** Told, if a word of the past or of what is kept stands in it with no wish after it: before the first fact, or anywhere when nothing is counted. */
function isTold(piece: readonly Item[]): boolean {
  const fact = piece.findIndex(({ is }) => is === 'fact');
  if (fact === -1) return false;
  const past = piece.findIndex((item) => isNamed(item, 'past', 'lose', 'keep', 'because'));
  if (past === -1) return false;
  const wish = piece.findLastIndex((item) => isNamed(item, 'want', 'may', 'make', 'wrong'));
  if (wish > past && wish < fact) return false;
  const counts = piece.some((item) => item.is === 'fact' && item.slot === 'quantity');
  return past < fact || (!counts && wish === -1);
}

function sentences(items: readonly Item[]): readonly (readonly Item[])[] {
  return cut(
    items,
    (item) => item.is === 'mark' && (item.mark === 'stop' || item.mark === 'question' || item.mark === 'line'),
  );
}

const pieces = (items: readonly Item[]): readonly (readonly Item[])[] =>
  cut(
    items,
    (item, at) =>
      (item.is === 'mark' && (item.mark === 'comma' || item.mark === 'dash' || item.mark === 'colon')) ||
      isNamed(items[at + 1], 'but', 'because') ||
      isBracket(items[at + 1]),
  );

const isBracket = (item: Item | undefined): boolean => item?.is === 'mark' && item.mark === 'bracket';

/** Cut after each item that ends a part. */
function cut(items: readonly Item[], ends: (item: Item, at: number) => boolean): readonly (readonly Item[])[] {
  const parts: Item[][] = [[]];
  items.forEach((item, at) => {
    parts.at(-1)?.push(item);
    if (ends(item, at)) parts.push([]);
  });
  return parts;
}
