import type { Place } from '../law/place.ts';
import { SUBDIVISIONS } from './reader/language/places.ts';

/** The state or province that an address names: before a postal code, else at the end of a line; undefined where it names none.
 *  @example placeInAddress('Sam Smith, 1 Main St, Columbus OH 43004') //=> 'US-OH'
 *  @example placeInAddress('Al Roe\n2 Oak Rd\nThunder Bay, Ontario') //=> 'CA-ON' */
export function placeInAddress(address: string): Place | undefined {
  const coded = [...address.matchAll(POSTAL)].flatMap(({ index, 1: zip }) => {
    const country = zip === undefined ? 'CA' : 'US';
    const place = endOf(address.slice(0, index), 'i');
    return place?.startsWith(country) ? [place] : [];
  });
  const ends = address.split('\n').flatMap((line) => endOf(line, '') ?? []);
  return coded.at(-1) ?? ends.at(-1);
}

/** A ZIP code, or a Canadian postal code. */
const POSTAL = /[\s,]+(?:(\d{5}(?:-\d{4})?)|[a-z]\d[a-z]\s?\d[a-z]\d)(?!\w)/giu;

/** The place whose name, or postal code written large, a text ends with; the longest name wins, so West Virginia is not Virginia. */
function endOf(text: string, flags: 'i' | ''): Place | undefined {
  const said = text.trim().replace(/[.,]+$/, '');
  const code = new RegExp(String.raw`(?:^|[\s,.])([A-Z]{2})$`, flags).exec(said)?.[1]?.toUpperCase();
  const named = NAMES.find(({ name }) => new RegExp(String.raw`(?:^|[\s,.])${name}$`, 'i').test(said))?.place;
  return named ?? Object.keys(SUBDIVISIONS).find((place) => code !== undefined && place.slice(3) === code);
}

const NAMES = Object.entries(SUBDIVISIONS)
  .map(([place, names]) => ({ place, name: names.split(',')[0] ?? '' }))
  .sort((a, b) => b.name.length - a.name.length);
