/** A place as ISO 3166-1 alpha-2 or ISO 3166-2 writes it, such as `US-NH` or `DK`; `EU` is the Union (exceptionally reserved in 3166-1). */
export type Place = string;

/** Whether the first place is the second or lies in it.
 *  @example isWithin('US-NH', 'US') //=> true
 *  @example isWithin('DK', 'EU') //=> true */
export const isWithin = (place: Place, whole: Place): boolean =>
  place === whole || place.startsWith(`${whole}-`) || (whole === 'EU' && UNION.includes(place.slice(0, 2)));

/** The 27 member states, europa.eu "Country profiles", from memory. */
const UNION: readonly Place[] =
  'AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK'.split(' ');
