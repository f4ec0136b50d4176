import { SPEC_SLOTS, type SpecSlot } from '../shop/words.ts';
import { withoutGreeting } from './greeting.ts';
import type { LineWords, Reading } from './reader/reading.ts';

/** What a buyer wants to know before ordering: the shop's range of a slot, for a head if they name one, and whether it lacks what they name;
 *  whether it makes a head; what the heads cost; or when they ship. */
export type Enquiry =
  | Readonly<{ on: 'range'; about: SpecSlot; of: LineWords; lacks: string | null }>
  | Readonly<{ on: 'head'; words: LineWords }>
  | Readonly<{ on: 'post'; to: string | null }>
  | Readonly<{ on: 'quote'; of: LineWords }>
  | Readonly<{ on: 'day' }>;

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

/** Which there are: asks for a range. */
const WHICH = new RegExp(String.raw`^(?:what|which|can i see|show me|list|qué|que|cuáles|cuales)(?!\p{L})`, 'u');
/** Whether there is one: asks for a thing. */
const HAVE = new RegExp(
  String.raw`^(?:do (?:you|y'all|ya) (?:have|do|make|sell|offer|paint|stock|cast|pour|carry)|can you (?:do|make|paint|cast)|any chance (?:of|for)|got any|have you got|you got|tienen?|tienes|hacen?|haces)(?!\p{L})(?:\s+(?:any|some|a|an|the|un|una))?(?!\p{L})`,
  'u',
);
/** Where to. */
const POSTS = new RegExp(
  String.raw`^(?:(?:do|can|could|will|would) (?:you|y'all|ya|u) (?:ship|send|mail|deliver|post)|where do you (?:ship|send|deliver)|env[ií]an?|mandan?|hacen env[ií]os)(?!\p{L})`,
  'u',
);
/** Not sent by post. */
const PICTURE = /\b(?:photos?|pictures?|pics?|image|fotos?|im[aá]gen(?:es)?)\b/;
/** How much. */
const QUOTES =
  /^(?:how much|what (?:do|does|would|will|is|are)\b.*\b(?:cost|price|run me|total)|what's the (?:price|total|cost|damage)|prices?\b|cu[aá]nto (?:cuesta|vale|es|ser[ií]a|por)|qu[eé] precio)/;
/** When. */
const DAYS =
  /^(?:when (?:would|will|can|could|do|does)\b.*\b(?:ship|ready|done|arrive|have|get|come)|how (?:long|soon|fast)\b|what's the lead time|what is (?:the|your) lead time|lead time\b|cu[aá]nto (?:tarda|se tarda|tiempo)|cu[aá]ndo (?:lleg|sale|est|env|las))/;

/** What a question is about; undefined for anything that is no such question. `read` reads words apart from their question.
 *  @example enquiryIn('what colors do you paint?', read) //=> { on: 'range', about: 'paint', of: {}, lacks: null }
 *  @example enquiryIn('do you have pink?', read) //=> { on: 'range', about: 'paint', of: {}, lacks: 'pink' } */
export function enquiryIn(text: string, read: (said: string) => Reading): Enquiry | undefined {
  const said = withoutGreeting(text);
  if (said.length > LONGEST) return undefined;
  const apart = (words: string): Reading => read(words.replaceAll(VERBS, ' '));
  if (POSTS.test(said) && !PICTURE.test(said)) return { on: 'post', to: read(said).shipTo };
  if (DAYS.test(said)) return { on: 'day' };
  const quote = QUOTES.exec(said)?.[0];
  if (quote !== undefined) return { on: 'quote', of: apart(said).lines[0] ?? {} };
  const which = WHICH.exec(said)?.[0];
  if (which !== undefined) return rangeIn(said, apart(said.slice(which.length)));
  const have = HAVE.exec(said)?.[0];
  if (have === undefined) return undefined;
  const rest = apart(said.slice(have.length));
  return thingIn(rest) ?? rangeIn(said, rest) ?? { on: 'range', about: 'style', of: {}, lacks: null };
}
/** What a question is made of besides what it is about. */
const VERBS =
  /\b(?:how much|what's|what|price|cost|do you|do|does|can you|have|make|offer|stock|tienen|hacen|cuestan?)\b|\?/g;
/** Longer than this is a story, not a question. */
const LONGEST = 120;

/** What is lacked, else the head that is meant. */
function thingIn({ lines: [words], unclear }: Reading): Enquiry | undefined {
  const lacking = unclear.find(({ slot, said }) => isSpecSlot(slot) && aboutIn(said) !== slot);
  if (lacking) return { on: 'range', about: lacking.slot as SpecSlot, of: {}, lacks: lacking.said };
  return words && Object.keys(words).some(isSpecSlot) ? { on: 'head', words } : undefined;
}

const rangeIn = (said: string, { lines: [of = {}] }: Reading): Enquiry | undefined => {
  const about = aboutIn(said);
  return about && { on: 'range', about, of, lacks: null };
};

const aboutIn = (said: string): SpecSlot | undefined => ABOUT.find(([, words]) => words.test(said))?.[0];
const isSpecSlot = (slot: string): boolean => SPEC_SLOTS.some((one) => one === slot);

/** Whether words that say nothing of a head at least say that one is wanted. */
export const wantsHeads = (text: string): boolean =>
  /\b(?:need|want|order|buy|looking for|get some|quiero|necesito|busco|comprar|pedir)\b/i.test(text);
