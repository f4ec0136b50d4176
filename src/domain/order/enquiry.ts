import type { SpecSlot } from '../shop/words.ts';

/** What a buyer wants to know of the shop's range. */
export type Enquiry = Readonly<{ about: SpecSlot }>;

/** Words that name a slot in a question, English and Spanish. */
const ABOUT: readonly (readonly [SpecSlot, RegExp])[] = [
  ['paint', /\b(colou?rs?|paints?|finish(?:es)?|colores|color|pinturas?)\b/],
  ['guard', /\b(weed ?guards?|guards?|protectores|protector)\b/],
  ['dressing', /\b(skirts?|collars?|dressings?|faldas?|collarines)\b/],
  ['hook', /\b(hooks?|hook sizes?|anzuelos?)\b/],
  ['weight', /\b(weights?|sizes?|ounces?|pesos?|tamaños?)\b/],
  ['metal', /\b(metals?|lead[- ]free|alloys?|metales|sin plomo)\b/],
  ['keeper', /\b(keepers?|retenes|retén)\b/],
  ['style', /\b(styles?|heads?|jigs?|molds?|moulds?|shapes?|modelos?|cabezas?|estilos?|moldes?)\b/],
];

const ASKS =
  /^(?:(?:hi|hey|hello|ok|so|and|hola|oye)[,!.\s]+)*(?:what|which|do you (?:have|do|make|sell|offer|paint|stock)|can i see|show me|list|got any|qué|que|cuáles|cuales|tienen|tienes|hacen)\b/;

/** What a question about the range is about; undefined for anything that is no such question.
 *  @example enquiryIn('what colors do you paint?') //=> { about: 'paint' } */
export function enquiryIn(text: string): Enquiry | undefined {
  const said = text.trim().toLowerCase().replace(/^¿/, '');
  if (said.length > 120 || !ASKS.test(said)) return undefined;
  const found = ABOUT.find(([, words]) => words.test(said));
  return found && { about: found[0] };
}
