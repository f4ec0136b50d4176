import { isNamed } from './facts.ts';
import type { Grammar } from './language/language.ts';
import type { Fact, Item, Place } from './span.ts';

/** Values named side by side for one slot become one fact of several values: `1/4 or 3/8`, `black, white and brown`. */
export function listed(items: readonly Item[]): readonly Item[] {
  const out: Item[] = [];
  for (let at = 0; at < items.length;) {
    const found = listAt(items, at);
    out.push(found?.fact ?? (items[at] as Item));
    at = found?.next ?? at + 1;
  }
  return out;
}

function listAt(items: readonly Item[], at: number): Readonly<{ fact: Fact; next: number }> | undefined {
  const first = items[at];
  if (first?.is !== 'fact' || !LISTED.has(first.slot) || first.copied || isNamed(items[at - 1], 'not', 'drop'))
    return undefined;
  let fact: Fact = first;
  let next = at + 1;
  for (;;) {
    const joint = jointAt(items, next, isNamed(items[at - 1], 'aim') ? ['link', 'either', 'aim'] : ['link', 'either']);
    const more = items[joint?.next ?? -1];
    if (
      !joint ||
      (isMark(items[next], 'comma') && isOpen(fact)) ||
      more?.is !== 'fact' ||
      isNone(more) ||
      isNone(fact) ||
      more.slot !== fact.slot ||
      more.copied ||
      isCounted(items, at, joint.next)
    )
      break;
    fact = beside(fact, more, fact.joined === 'or' || joint.joined === 'or' || isBetween(items, at) ? 'or' : 'and');
    next = joint.next + 1;
  }
  if (fact === first) return undefined;
  return { fact, next };
}

/** The values of a fact, an empty word for one that was not understood. */
const named = ({ values }: Fact): readonly string[] => (values.length === 0 ? [''] : values);
const placesOf = (fact: Fact): readonly Place[] => fact.places ?? [fact];

/** A second value set beside the first. */
export const beside = (fact: Fact, more: Fact, joined: 'and' | 'or'): Fact => ({
  ...fact,
  to: more.to,
  until: more.until,
  values: [...named(fact), ...named(more)],
  places: [...placesOf(fact), ...placesOf(more)],
  joined,
});

/** `skirts, black and blue`: the colour after the comma says which. */
const isOpen = ({ slot, values }: Fact): boolean => (slot === 'dressing' || slot === 'guard') && values.length === 0;
const isNone = ({ values }: Fact): boolean => values[0] === 'none' || values[0] === 'bare';
const LISTED: ReadonlySet<string> = new Set([
  'style',
  'weight',
  'hook',
  'paint',
  'guard',
  'dressing',
  'metal',
  'quantity',
]);

function jointAt(
  items: readonly Item[],
  from: number,
  passed: readonly Grammar[],
): Readonly<{ next: number; joined: 'and' | 'or' | undefined }> | undefined {
  let next = from;
  let joined: 'and' | 'or' | undefined;
  if (isNamed(items[next], 'fits')) next += 1;
  if (isMark(items[next], 'comma')) [next, joined] = [next + 1, 'and'];
  if (isNamed(items[next], 'or')) [next, joined] = [next + 1, 'or'];
  else if (isNamed(items[next], 'and')) [next, joined] = [next + 1, 'and'];
  else if (isMark(items[next], 'slash') || isMark(items[next], 'dash')) [next, joined] = [next + 1, 'or'];
  while (isNamed(items[next], ...passed)) next += 1;
  if (joined === undefined) return isRun(items, from) ? { next: from, joined: 'and' } : undefined;
  return { next, joined };
}
/** red white and black, 1/4 3/8 and 1/2: no comma is needed between the first two. */
const isRun = (items: readonly Item[], at: number): boolean => {
  const [before, first, joint, last] = [items[at - 1], items[at], items[at + 1], items[at + 2]];
  if (first?.is !== 'fact' || !RUNNING.has(first.slot)) return false;
  const isJoined = isNamed(joint, 'and', 'or') || (first.slot === 'paint' && isMark(joint, 'comma'));
  return isJoined && [before, last].every((item) => item?.is === 'fact' && item.slot === first.slot);
};
const RUNNING: ReadonlySet<string> = new Set(['paint', 'weight', 'hook']);

const isMark = (item: Item | undefined, mark: string): boolean => item?.is === 'mark' && item.mark === mark;

/** Somewhere between 20 and 30. */
const isBetween = (items: readonly Item[], at: number): boolean => isNamed(items[at - 1], 'open');

/** A value with a quantity of its own begins a line, and is no second choice. */
function isCounted(items: readonly Item[], first: number, second: number): boolean {
  const isQuantity = (at: number) => items[at]?.is === 'fact' && (items[at] as Fact).slot === 'quantity';
  const slot = (items[second] as Fact).slot;
  if (isMark(items[second - 1], 'dash') && slot !== 'quantity') return true;
  if (slot === 'quantity')
    return !isBetween(items, first) && !isNamed(items[second - 1], 'or') && !isMark(items[second - 1], 'dash');
  if (isNamed(items[second + 1], 'aim', 'for') && isQuantity(second + 2)) return true;
  return isQuantity(second + 1) && isQuantity(first + 1);
}
