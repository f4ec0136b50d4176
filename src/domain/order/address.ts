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

/** How surely words are a name and address: `whole` with a street and a postal code, `likely` with one of them or a box, a second line and a place;
 *  null for anything that is said. @example addressIn('I will send it later') //=> null */
export function addressIn(text: string): 'whole' | 'likely' | null {
  const hasCode = [...text.matchAll(POSTAL)].length > 0;
  const hasStreet = STREET.test(text);
  if (hasCode && hasStreet) return 'whole';
  if (hasCode || BOX.test(text)) return 'likely';
  if (TALK.test(text)) return null;
  const isParted = /[\n,]/.test(text);
  return (hasStreet && isParted) || ((hasStreet || isParted) && placeInAddress(text) !== undefined) ? 'likely' : null;
}

/** A house number with its street, either way round: 12 Main St, Calle Blanca 7. */
const STREET = /(?<![\p{L}\d#/])\d{1,6}[a-z]?\s+\p{L}[\p{L}.]+|(?<!\p{L})\p{Lu}\p{L}+\s+\d{1,6}(?![\d/])/u;
const BOX = /\b(?:p\.? ?o\.? ?box|general delivery|apartado)\b/i;
/** How people begin who say something else. */
const TALK =
  /^(?:i|i'?m|i'?ll|i'?d|we|we'?ll|please|can|could|would|oops|actually|see|sorry|thanks?|no thanks|like|same|make|add|another|yes|ok|wait|let|do|what|when|how|quiero|necesito|gracias|por favor|como|puede[ns]?|ya)(?![\p{L}'])/iu;

/** An address without the words that lead to it. @example bareAddress('no, 2 Elm St, Dayton OH 45402') //=> '2 Elm St, Dayton OH 45402' */
export const bareAddress = (text: string): string => text.replace(LEAD, '').trim();
const LEAD =
  /^(?:(?:no|oops|sorry|actually|wait)[,.!]?\s+)*(?:(?:(?:my|the|new|my new|the new) )?address(?: is|:)\s*|(?:please )?(?:send|ship|mail) (?:it|them|that) to:?\s*|(?:change|update) (?:my|the) address to:?\s*|(?:mi|la)(?: nueva)? direcci[oó]n(?: es|:)\s*)?/iu;
