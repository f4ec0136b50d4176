import type { Day } from '../craft/time.ts';
import { GRAMS_PER_OUNCE } from '../craft/weight.ts';
import { isWithin, type Place } from './place.ts';
import { ACTS, type Act, type LawRow, type Threshold } from './row.ts';

/** A head as it is made: never the mold's rating. */
export type Made = Readonly<{
  /** Total, hook included. */
  grams: number;
  /** Of the metal alone, where known: that the hook counts is read out of "total weight", not said. */
  metalGrams?: number | undefined;
  /** Longest axis; null when nobody has measured it. */
  lengthInches: number | null;
  /** Lead by mass, 0 to 1. */
  leadShare: number;
}>;

/** Why a ruling says what it says. */
export type Why =
  'in-force' | 'from-later' | 'not-yet-law' | 'unclear-cover' | 'length-unknown' | 'only-hook-clears-it';

/** What one row of law means for one head; `row` carries citation, date of the source and tag to be shown with it. */
export type Ruling = Readonly<{ act: Act; why: Why; row: LawRow }>;

/** The rulings on a head that goes to a place on a day, gravest first; none for a head without lead.
 *  A reading of the rows, never legal advice: always show "check your local rules" with it.
 *  @example lawFor(rows, 'US-NH', { grams: 14.2, lengthInches: null, leadShare: 1 }, '2026-11-25')[0]?.act //=> 'refuse' */
export const lawFor = (rows: readonly LawRow[], place: Place, made: Made, day: Day): readonly Ruling[] =>
  rows
    .filter((row) => row.places.some((whole) => isWithin(place, whole)))
    .flatMap((row) => ruling(row, made, day))
    .sort((a, b) => ACTS.indexOf(a.act) - ACTS.indexOf(b.act));

/** The gravest act of some rulings; undefined when there are none. */
export const gravest = (rulings: readonly Ruling[]): Act | undefined =>
  ACTS.find((act) => rulings.some((ruling) => ruling.act === act));

function ruling(row: LawRow, made: Made, day: Day): readonly Ruling[] {
  if (row.coversHead === 'no' || !hasLead(row, made)) return [];
  const met = meets(row, made);
  if (met === 'no') return [];
  if (row.since !== null && row.since > day) return [{ act: 'notice', why: 'from-later', row }];
  if (met !== 'yes') return [{ act: softened(row.act), why: met, row }];
  if (row.since === null) return [{ act: row.act, why: 'not-yet-law', row }];
  return [{ act: row.act, why: row.coversHead === 'unclear' ? 'unclear-cover' : 'in-force', row }];
}

/** A doubt is for the maker to settle; where the certain answer would be a notice, the doubtful one is no graver. */
const softened = (act: Act): Act => (act === 'notice' ? 'notice' : 'hold');

const hasLead = ({ lead }: LawRow, { leadShare }: Made): boolean =>
  leadShare > 0 && (lead.compare === '>' ? leadShare > lead.value : leadShare >= lead.value);

type Met = 'yes' | 'no' | 'length-unknown' | 'only-hook-clears-it';

function meets({ anyOf }: LawRow, made: Made): Met {
  if (anyOf.length === 0 || anyOf.some((threshold) => isMet(threshold, made))) return 'yes';
  const { metalGrams = made.grams } = made;
  if (anyOf.some((threshold) => isMet(threshold, { ...made, grams: metalGrams }))) return 'only-hook-clears-it';
  return made.lengthInches === null && anyOf.some(({ on }) => on === 'length-in') ? 'length-unknown' : 'no';
}

function isMet({ on, compare, value, over }: Threshold, made: Made): boolean {
  const measured = MEASURES[on](made);
  return measured !== null && measured > over && (compare === '<' ? measured < value : measured <= value);
}

const MEASURES: Readonly<Record<Threshold['on'], (made: Made) => number | null>> = {
  'weight-oz': ({ grams }) => grams / GRAMS_PER_OUNCE,
  'weight-g': ({ grams }) => grams,
  'length-in': ({ lengthInches }) => lengthInches,
};
