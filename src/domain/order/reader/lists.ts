import { isNamed } from './quantities.ts';
import type { Fact, Item, Span } from './span.ts';

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
  if (first?.is !== 'fact' || !LISTED.has(first.slot) || first.copied || isNamed(items[at - 1] as Span, 'not'))
    return undefined;
  let fact: Fact = first;
  let next = at + 1;
  for (;;) {
    const joint = jointAt(items, next);
    const more = items[joint?.next ?? -1];
    if (
      !joint ||
      more?.is !== 'fact' ||
      isNone(more) ||
      isNone(fact) ||
      more.slot !== fact.slot ||
      more.copied ||
      isCounted(items, at, joint.next)
    )
      break;
    fact = {
      ...fact,
      to: more.to,
      until: more.until,
      values: [...fact.values, ...more.values],
      joined: fact.joined === 'or' || joint.joined === 'or' ? 'or' : 'and',
    };
    next = joint.next + 1;
  }
  if (fact === first) return undefined;
  const unknown = fact.values.length < 2;
  return { fact: unknown && fact.joined === 'or' ? { ...fact, values: [] } : fact, next };
}
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
): Readonly<{ next: number; joined: 'and' | 'or' | undefined }> | undefined {
  let next = from;
  let joined: 'and' | 'or' | undefined;
  if (isNamed(items[next] as Span, 'fits')) next += 1;
  if (isMark(items[next], 'comma')) [next, joined] = [next + 1, 'and'];
  if (isNamed(items[next] as Span, 'or')) [next, joined] = [next + 1, 'or'];
  else if (isNamed(items[next] as Span, 'and')) [next, joined] = [next + 1, 'and'];
  else if (isMark(items[next], 'slash') || isMark(items[next], 'dash')) [next, joined] = [next + 1, 'or'];
  while (isNamed(items[next] as Span, 'link', 'either')) next += 1;
  return joined === undefined ? undefined : { next, joined };
}
const isMark = (item: Item | undefined, mark: string): boolean => item?.is === 'mark' && item.mark === mark;

/** A value with a quantity of its own begins a line, and is no second choice. */
function isCounted(items: readonly Item[], first: number, second: number): boolean {
  const isQuantity = (at: number) => items[at]?.is === 'fact' && (items[at] as Fact).slot === 'quantity';
  const slot = (items[second] as Fact).slot;
  if (isMark(items[second - 1], 'dash') && slot !== 'quantity') return true;
  if (slot === 'quantity') return !isNamed(items[second - 1] as Span, 'or') && !isMark(items[second - 1], 'dash');
  return isQuantity(second + 1) && isQuantity(first + 1);
}
