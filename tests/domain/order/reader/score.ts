import type { LineWords, Reading, Unclear } from '../../../../src/domain/order/reader/reading.ts';

/** A message and what a careful person at the bench would write down from it. */
export type Labelled = Readonly<{ id: string; now: string; said: string }> &
  Readonly<Pick<Reading, 'lines' | 'needBy' | 'shipTo' | 'unclear'>>;

export type Score = Readonly<{
  /** Share of messages with nothing missed, wrong or too much. */
  whole: number;
  /** Share of the slots given that are right. */
  precision: number;
  wrong: number;
  /** Things said that were neither understood nor said back. */
  dropped: number;
  /** The messages that are not whole. */
  missed: readonly string[];
}>;

/** How well messages were read: lines in order, slots exactly, and the words of an unclear slot by one word in common. */
export function scoreOf(rows: readonly Labelled[], read: (row: Labelled) => Reading): Score {
  const tallies = rows.map((row) => tallyOf(row, read(row)));
  const sum = (part: 'given' | 'right' | 'dropped') => tallies.reduce((total, tally) => total + tally[part], 0);
  const missed = rows.filter((_, at) => !tallies[at]?.whole).map(({ said }) => said);
  const [given, right] = [sum('given'), sum('right')];
  return {
    whole: 1 - missed.length / rows.length,
    precision: right / given,
    wrong: given - right,
    dropped: sum('dropped'),
    missed,
  };
}

type Tally = Readonly<{ whole: boolean; given: number; right: number; dropped: number }>;

function tallyOf(label: Labelled, got: Reading): Tally {
  const wanted = slotsOf(label);
  const given = slotsOf(got);
  const right = [...given].filter(([slot, value]) => wanted.get(slot) === value).length;
  const dropped = label.unclear.filter((one) => !got.unclear.some((other) => isSame(one, other))).length;
  const invented = got.unclear.filter((one) => !label.unclear.some((other) => isSame(one, other))).length;
  const whole =
    right === given.size &&
    right === wanted.size &&
    dropped + invented === 0 &&
    got.lines.length === label.lines.length;
  return { whole, given: given.size, right, dropped };
}

/** Every slot of a reading under the line it stands in. */
function slotsOf({
  lines,
  needBy,
  shipTo,
}: Pick<Reading, 'lines' | 'needBy' | 'shipTo'>): ReadonlyMap<string, unknown> {
  const slots = lines.flatMap((line: LineWords, at) =>
    Object.entries(line).map(([slot, value]) => [`${at}.${slot}`, value] as const),
  );
  const rest = [['needBy', needBy] as const, ['shipTo', shipTo] as const].filter(([, value]) => value !== null);
  return new Map<string, unknown>([...slots, ...rest]);
}

const isSame = (a: Unclear, b: Unclear): boolean =>
  a.slot === b.slot && wordsOf(a.said).some((word) => wordsOf(b.said).includes(word));
const wordsOf = (said: string): readonly string[] => said.toLowerCase().match(/[\p{L}\d/.½¼⅛⅜¾]+/gu) ?? [];
