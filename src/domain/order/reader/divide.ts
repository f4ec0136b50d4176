import { pick, slotsOf, type Draft } from './draft.ts';
import type { Fact } from './span.ts';

/** A total and the lines that divide it become those lines; one quantity for each of several values becomes a line for each. */
export function divided(lines: readonly Draft[]): readonly Draft[] {
  const each = lines.flatMap(spread);
  const ends = each.map((_, at) => partsOf(each, at));
  return each.flatMap((line, at) => {
    if ((ends[at] ?? at) > at) return [];
    const start = ends.findLastIndex((end, place) => place < at && end >= at);
    return [start === -1 ? completed(line, []) : completed(line, each.slice(start, at))];
  });
}

/** The last of the lines that divide the total at `at`; `at` itself when there are none. */
function partsOf(lines: readonly Draft[], at: number): number {
  const total = lines[at];
  const count = countOf(total);
  if (!total || isPart(total)) return at;
  let sum = 0;
  for (let end = at + 1; end < lines.length && divides(total, lines[end]); end += 1) {
    const part = lines[end] as Draft;
    if (
      part.share === 'rest' ||
      (part.share === 'half' && !isPart(lines[end + 1])) ||
      (part.share === 'third' && end === at + 3)
    )
      return end;
    sum += countOf(part) ?? 0;
    if (count !== undefined && sum === count && end > at + 1 && !isPart(part)) return end;
  }
  return at;
}

/** Half, a third or the rest of a total. */
const isPart = (line: Draft | undefined): boolean =>
  line?.share === 'half' || line?.share === 'third' || line?.share === 'rest';

/** A part says something that its total leaves open, and nothing else than its total. */
function divides(total: Draft, part: Draft | undefined): boolean {
  if (!part) return false;
  const own = [...part.own].filter((slot) => slot !== 'quantity');
  const isNew = own.some((slot) => total.said[slot] === undefined || !total.own.has(slot));
  return (
    isNew &&
    own.every((slot) => !total.own.has(slot) || total.said[slot]?.values.join() === part.said[slot]?.values.join())
  );
}

/** A part with the quantity that a half or a rest comes to, and with what was said of its total; `before` is the total and the parts between. */
function completed(line: Draft, before: readonly Draft[]): Draft {
  const [total, ...others] = before;
  if (!total && !isPart(line)) return line;
  const said = { ...pick(total?.said ?? {}, (slot) => slot !== 'quantity'), ...line.said };
  if (!isPart(line)) return { ...line, said };
  const { quantity: _own, ...rest } = said;
  const quantity = total?.said.quantity && remainder(line, total, others);
  return { ...line, said: quantity ? { ...rest, quantity } : rest };
}

function remainder({ share }: Draft, total: Draft, others: readonly Draft[]): Fact | undefined {
  const count = countOf(total);
  if (count === undefined || !total.said.quantity) return undefined;
  const partOf = (line: Pick<Draft, 'share'>) => count / (line.share === 'half' ? 2 : 3);
  const isFraction = (line: Pick<Draft, 'share'>) => line.share === 'half' || line.share === 'third';
  const taken = others.reduce((sum, other) => sum + (isFraction(other) ? partOf(other) : (countOf(other) ?? 0)), 0);
  const mine = isFraction({ share }) ? partOf({ share }) : count - taken;
  return mine <= 0 ? undefined : { ...total.said.quantity, values: Number.isInteger(mine) ? [String(mine)] : [] };
}

/** One line for each of several values: with the quantity each has, an even part of a total, or none. */
export function spread(line: Draft): readonly Draft[] {
  const slot = slotsOf(line.said).find(
    (name) => (line.said[name]?.values.length ?? 0) > 1 && line.said[name]?.joined === 'and',
  );
  const several = slot && line.said[slot];
  if (
    !several ||
    (line.said.quantity &&
      line.share !== 'each' &&
      line.share !== 'split' &&
      line.share !== 'half' &&
      line.share !== 'third')
  )
    return [line];
  const quantity = line.share === 'each' ? line.said.quantity : part(line.said.quantity, several.values.length);
  return several.values
    .map((value, at) => ({
      ...line,
      said: { ...line.said, ...(quantity ? { quantity } : {}), [several.slot]: one(several, value, at) },
    }))
    .flatMap(spread);
}

/** One of several values, with its own place in the message. */
const one = (fact: Fact, value: string, at: number): Fact => {
  const { from, to, at: first, until } = fact.places?.[at] ?? fact;
  return { is: 'fact', slot: fact.slot, values: [value], from, to, at: first, until };
};

function part(quantity: Fact | undefined, count: number): Fact | undefined {
  if (!quantity) return undefined;
  const each = Number(quantity.values[0]) / count;
  return { ...quantity, values: Number.isInteger(each) ? [String(each)] : [] };
}

const countOf = (line: Draft | undefined): number | undefined =>
  line?.said.quantity?.values.length === 1 ? Number(line.said.quantity.values[0]) : undefined;
