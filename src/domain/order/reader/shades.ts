import { fact, isMark, isNamed, isPart, listOf, over, type Step } from './facts.ts';
import type { Part } from './language/language.ts';
import type { Lexicon } from './lexicon.ts';
import { phraseAt } from './phrases.ts';
import type { Asked } from './quantities.ts';
import type { Colour, Fact, Item, Place, Span } from './span.ts';
import type { Token } from './tokens.ts';

/** What the shop's own words leave open: the id of its plain collar, if it has one. */
export type Parting = Readonly<{
  tokens: readonly Token[];
  lexicon: Lexicon;
  collar: string | undefined;
  asked: Asked | undefined;
  /** Whether there is a colon in the message, without which nothing heads its sentence. */
  hasColon: boolean;
}>;

/** A colour as said: one that the shop knows, or none of its own (pink glitter, dark brown). */
export type Shade = Place & Readonly<{ colour: Colour; dressing?: string }>;

type Shaded = Readonly<{ shade: Shade; next: number }>;

/** A colour goes to the guard, skirt or paint named beside it, else to the paint. */
export function coloured(spans: readonly Span[], at: number, parting: Parting): Step {
  const shade = shadeAt(spans, at, parting);
  if (!shade) return { items: [spans[at] as Item], next: at + 1 };
  const next = shade.next;
  const noun = spans[next];
  if (isPart(noun, 'guard', 'skirt'))
    return { items: [claimed(shade.shade, noun.part, over(shade.shade, noun))], next: next + 1 };
  if (noun?.is === 'stranger' && (noun.slot === 'dressing' || noun.slot === 'guard'))
    return { items: [fact(over(shade.shade, noun), noun.slot, [])], next: pastNoun(spans, next) };
  if (isThing(spans, at, shade, parting)) return { items: [], next };
  if (isPart(noun, 'eye'))
    return { items: [{ ...fact(over(shade.shade, noun), 'paint', []), firm: true }], next: next + 1 };
  if (isPart(noun, 'paint')) return { items: [claimed(shade.shade, 'paint', shade.shade)], next: next + 1 };
  if (isPart(noun, 'hook') && spans[next + 1]?.is !== 'value' && spans[at - 1]?.is !== 'value')
    return { items: [fact(over(shade.shade, noun), 'hook', [])], next: next + 1 };
  const heading = parting.hasColon ? headedBy(spans, at) : undefined;
  return { items: heading ? [claimed(shade.shade, heading, shade.shade)] : unclaimed(shade.shade, parting), next };
}

/** Past a stranger and the noun that goes with it: olive rubber skirts. */
const pastNoun = (spans: readonly Span[], at: number): number =>
  isPart(spans[at + 1], 'skirt', 'guard') ? at + 2 : at + 1;

/** The fellow with the parrot: a color that no list of the shop holds, after an article and with no noun, is a thing. */
function isThing(spans: readonly Span[], at: number, { shade, next }: Shaded, { tokens }: Parting): boolean {
  const isNoun = isPart(spans[next]) || isNamed(spans[next], 'ones') || spans[next]?.is === 'value';
  const isNamedThing = isNamed(spans[at - 1], 'link') && ARTICLES.has(tokens[shade.at - 1]?.stem ?? '');
  return isNamedThing && isEmpty(shade.colour) && spans[at]?.is === 'colour' && !isNoun;
}
const ARTICLES: ReadonlySet<string> = new Set(['the', 'our', 'his', 'her', 'el', 'la']);

/** Guards: brown on the footballs, clear on the swims. What a sentence begins with, and a colon after it, is what its colours are of. */
function headedBy(spans: readonly Span[], at: number): Part | undefined {
  const start = spans.slice(0, at).findLastIndex((span) => isMark(span, 'stop', 'question', 'line')) + 1;
  const noun = spans[start];
  const isAimed =
    isMark(spans[start + 1], 'colon') && spans.slice(start, at).some((span) => isNamed(span, 'aim', 'for'));
  return isAimed && isPart(noun, 'guard', 'skirt') ? noun.part : undefined;
}

function unclaimed(shade: Shade, { asked, tokens }: Parting): readonly Item[] {
  if (asked === 'guard') return [claimed(shade, 'guard', shade)];
  if (asked === 'dressing') return [claimed(shade, 'skirt', shade)];
  const said = tokens.slice(shade.at, shade.until);
  if (shade.dressing !== undefined && (isEmpty(shade.colour) || said.some(({ stem }) => stem === '/')))
    return [fact(shade, 'dressing', [shade.dressing])];
  if (shade.colour.paint === undefined && shade.colour.guard !== undefined && said[0]?.stem === 'clear') return [];
  return [claimed(shade, 'paint', shade)];
}

/** The colour as the guard, skirt or paint it is. */
export function claimed(shade: Shade, part: Part, place: Place): Fact {
  if (part === 'guard') return fact(place, 'guard', listOf(shade.colour.guard));
  if (part === 'skirt') return fact(place, 'dressing', listOf(shade.dressing));
  return fact(place, 'paint', listOf(shade.colour.paint));
}
/** The colour that begins here, with its skirt if a skirt goes by it; several words that no paint goes by are a colour the shop does not have. */
export function shadeAt(
  spans: readonly Span[],
  at: number,
  parting: Parting,
): Readonly<{ shade: Shade; next: number }> | undefined {
  let next = at;
  let tinted = false;
  while (isNamed(spans[next], 'tint', 'shade')) {
    tinted ||= isNamed(spans[next], 'tint');
    next += 1;
  }
  const first = spans[next];
  if (first?.is !== 'colour') return undefined;
  const skirt = skirtAt(spans, next, parting);
  if (skirt) return skirt;
  let colour = tinted ? {} : first.colour;
  let last: Span = first;
  for (next += 1; ; next += 1) {
    const span = spans[next];
    const joint = span?.is === 'mark' && span.mark === 'slash' && spans[next + 1]?.is === 'colour' ? 1 : 0;
    const more = spans[next + joint];
    const blends = more?.is === 'colour' && (joint === 1 || isEmpty(more.colour) || isEmpty(colour));
    if (
      !(blends && !isPart(spans[next + joint + 1], 'guard', 'skirt')) &&
      !(isNamed(more, 'tint') && !isColourNext(spans, next + joint) && (more as { word: string }).word === 'tint')
    )
      break;
    colour = {};
    last = more as Span;
    next += joint;
  }
  return { shade: { ...over(spans[at] as Span, last), colour, ...skirtId(spans, at, last.until, parting) }, next };
}
const isEmpty = (colour: Colour): boolean => Object.keys(colour).length === 0;
const isColourNext = (spans: readonly Span[], at: number): boolean => spans[at + 1]?.is === 'colour';

/** A skirt by both its colours, where a skirt is named beside it or a slash joins them. */
function skirtAt(
  spans: readonly Span[],
  at: number,
  parting: Parting,
): Readonly<{ shade: Shade; next: number }> | undefined {
  const first = spans[at] as Span;
  const found = phraseAt(parting.lexicon.dressings, parting.tokens, first.at);
  if (!found) return undefined;
  const next = spans.findIndex((span) => span.at >= found.until);
  const until = next === -1 ? spans.length : next;
  const isSlashed = parting.tokens.slice(first.at, found.until).some(({ stem }) => stem === '/');
  const isNamedSkirt =
    isPart(spans[until], 'skirt') || isAfterSkirt(spans, at, until - at) || parting.asked === 'dressing';
  const isOnlySkirt = until > at + 1 && (isSlashed || isNoPaint(spans, at, until));
  if (!isNamedSkirt && !isOnlySkirt) return undefined;
  if (isSlashed && isPart(spans[until], 'guard')) return undefined;
  const colour = first.is === 'colour' && until === at + 1 ? first.colour : {};
  return { shade: { ...over(first, spans[until - 1] ?? first), colour, dressing: found.found }, next: until };
}

/** Black and blue: where one of the two is no paint here, both together can only be a skirt. */
const isNoPaint = (spans: readonly Span[], at: number, until: number): boolean =>
  spans.slice(at, until).some((span) => span.is === 'colour' && isEmpty(span.colour));

const skirtId = (
  spans: readonly Span[],
  at: number,
  until: number,
  { lexicon, tokens }: Parting,
): Readonly<{ dressing?: string }> => {
  const found = phraseAt(lexicon.dressings, tokens, (spans[at] as Span).at);
  return found && found.until === until ? { dressing: found.found } : {};
};

function isAfterSkirt(spans: readonly Span[], at: number, words = 1): boolean {
  const joins = words > 1 ? ['colon', 'dash', 'comma'] : ['colon', 'dash'];
  let before = at - 1;
  while (isNamed(spans[before], 'link', 'ones', 'all') || isMark(spans[before], ...joins)) before -= 1;
  return isPart(spans[before], 'skirt') && spans[before - 1]?.is !== 'colour';
}
