import { pick, slotsOf, type Draft } from './draft.ts';
import type { Fact } from './span.ts';

/** A total and the lines that divide it become those lines; one quantity for each of several values becomes a line for each. */
export function divided(lines: readonly Draft[]): readonly Draft[] {
  const each = lines.flatMap(spread);
  return each.flatMap((_, at) => (partsOf(each, at) > at ? [] : [sharedOut(each, at)]));
}

/** The last of the lines that divide the total at `at`; `at` itself when there are none. */
function partsOf(lines: readonly Draft[], at: number): number {
  const total = lines[at];
  const count = countOf(total);
  if (!total || total.share === 'half' || total.share === 'rest') return at;
  let sum = 0;
  for (let end = at + 1; end < lines.length && divides(total, lines[end]); end += 1) {
    const part = lines[end] as Draft;
    if (
      part.share === 'rest' ||
      (part.share === 'half' && lines[end + 1]?.share !== 'half' && lines[end + 1]?.share !== 'rest')
    )
      return end;
    sum += countOf(part) ?? 0;
    if (count !== undefined && sum === count && end > at + 1 && part.share !== 'half') return end;
  }
  return at;
}

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

/** The quantity of a half or a rest, from the total before it. */
function sharedOut(lines: readonly Draft[], at: number): Draft {
  const line = lines[at] as Draft;
  if (line.share !== 'half' && line.share !== 'rest') return line;
  const start = lines
    .slice(0, at)
    .findLastIndex(({ share }, place) => share !== 'half' && share !== 'rest' && partsOf(lines, place) >= at);
  const total = lines[start];
  const count = countOf(total);
  const others = lines
    .slice(start + 1, at)
    .reduce((sum, other) => sum + (other.share === 'half' ? (count ?? 0) / 2 : (countOf(other) ?? 0)), 0);
  const mine = count === undefined || start === -1 ? undefined : line.share === 'half' ? count / 2 : count - others;
  const rest = pick(line.said, (slot) => slot !== 'quantity');
  if (mine === undefined || !total?.said.quantity || mine <= 0) return { ...line, said: rest };
  const quantity: Fact = { ...total.said.quantity, values: Number.isInteger(mine) ? [String(mine)] : [] };
  return { ...line, said: { ...rest, quantity } };
}

/** One line for each of several values: with the quantity each has, an even part of a total, or none. */
function spread(line: Draft): readonly Draft[] {
  const slot = slotsOf(line.said).find(
    (name) => (line.said[name]?.values.length ?? 0) > 1 && line.said[name]?.joined === 'and',
  );
  const several = slot && line.said[slot];
  if (!several || (line.said.quantity && line.share !== 'each' && line.share !== 'split' && line.share !== 'half'))
    return [line];
  const quantity = line.share === 'each' ? line.said.quantity : part(line.said.quantity, several.values.length);
  return several.values
    .map((value) => ({
      ...line,
      said: { ...line.said, ...(quantity ? { quantity } : {}), [several.slot]: { ...several, values: [value] } },
    }))
    .flatMap(spread);
}

function part(quantity: Fact | undefined, count: number): Fact | undefined {
  if (!quantity) return undefined;
  const each = Number(quantity.values[0]) / count;
  return { ...quantity, values: Number.isInteger(each) ? [String(each)] : [] };
}

const countOf = (line: Draft | undefined): number | undefined =>
  line?.said.quantity?.values.length === 1 ? Number(line.said.quantity.values[0]) : undefined;
