import { BARE, NONE, type LineSlot } from '../../shop/words.ts';
import type { Part } from './language/language.ts';
import type { Lexicon } from './lexicon.ts';
import { phraseAt } from './phrases.ts';
import { isContent, isNamed, type Asked } from './quantities.ts';
import type { Colour, Fact, Item, Place, Span } from './span.ts';
import type { Token } from './tokens.ts';

/** What the shop's own words leave open: the id of its plain collar, if it has one. */
export type Parting = Readonly<{
  tokens: readonly Token[];
  lexicon: Lexicon;
  collar: string | undefined;
  asked: Asked | undefined;
}>;

type Part3 = 'guard' | 'skirt' | 'paint' | 'hook' | 'collar' | 'keeper';
/** A colour as said: one that the shop knows, or none of its own (pink glitter, dark brown). */
type Shade = Place & Readonly<{ colour: Colour; dressing?: string }>;

/** Every stretch becomes what it says of a head: colours go to the noun beside them, nouns without are wishes, `no` takes them away. */
export function partedOf(spans: readonly Span[], parting: Parting): readonly Item[] {
  const items: Item[] = [];
  for (let at = 0; at < spans.length;) {
    const step = stepAt(spans, at, parting);
    items.push(...step.items);
    at = step.next;
  }
  return items;
}

type Step = Readonly<{ items: readonly Item[]; next: number }>;

function stepAt(spans: readonly Span[], at: number, parting: Parting): Step {
  const span = spans[at] as Span;
  if (span.is === 'word' && isNamedByWord(spans, at)) return namedByWord(spans, at);
  if (isNamed(span, 'no', 'drop')) return refused(spans, at, parting) ?? { items: [span as Item], next: at + 1 };
  if (isNamed(span, 'match', 'usual', 'same')) return likened(spans, at) ?? { items: [span as Item], next: at + 1 };
  if (span.is === 'colour' || isNamed(span, 'tint', 'shade')) return coloured(spans, at, parting);
  if (span.is === 'part') return parted(spans, at, parting);
  if (span.is === 'value') return { items: [fact(span, span.slot, [span.value])], next: at + 1 };
  if (span.is === 'stranger') return stranger(spans, at);
  if (span.is === 'pattern' || span.is === 'number') return { items: [], next: at + 1 };
  return { items: [span], next: at + 1 };
}

const fact = (place: Place, slot: LineSlot, values: readonly string[]): Fact => ({
  is: 'fact',
  slot,
  values,
  from: place.from,
  to: place.to,
  at: place.at,
  until: place.until,
});
const over = (a: Place, b: Place): Place => ({ from: a.from, to: b.to, at: a.at, until: b.until });
const isPart = (
  span: Span | undefined,
  ...parts: readonly Part[]
): span is Span & Readonly<{ is: 'part'; part: Part }> => span?.is === 'part' && parts.includes(span.part);

/** 15 gorgo heads, in shad color: a word that no list holds names a style or a paint that the shop does not have. */
function isNamedByWord(spans: readonly Span[], at: number): boolean {
  const next = spans[at + 1];
  const before = spans[at - 1];
  if (isPart(next, 'paint')) return isNamed(before, 'link') || before?.is === 'value';
  return isPart(next, 'head') && (before?.is === 'value' || before?.is === 'colour') && spans[at + 2]?.is !== 'part';
}

function namedByWord(spans: readonly Span[], at: number): Step {
  const [word, noun] = [spans[at] as Span, spans[at + 1] as Span];
  return { items: [fact(over(word, noun), isPart(noun, 'paint') ? 'paint' : 'style', [])], next: at + 2 };
}

/** no guards, skirts or keepers */
function refused(spans: readonly Span[], at: number, { collar }: Parting): Step | undefined {
  const facts: Fact[] = [];
  let next = at + 1;
  for (;;) {
    while (isNamed(spans[next], 'link', 'all', 'each', 'only')) next += 1;
    const start = spans[next]?.is === 'colour' ? next + 1 : next;
    const span = spans[start];
    const slot = isPart(span, 'guard', 'skirt', 'collar', 'keeper', 'paint')
      ? SLOT_OF[span.part]
      : span?.is === 'stranger' && start === next && facts.length === 0
        ? span.slot
        : undefined;
    if (span === undefined || slot === undefined || !REFUSABLE.has(slot)) break;
    facts.push(fact(span, slot, [slot === 'paint' ? BARE : NONE]));
    next = start + 1;
    const joint = jointAt(spans, next);
    if (joint === undefined) return { items: facts, next };
    next = joint;
  }
  return facts.length === 0 || collar === '' ? undefined : { items: facts, next };
}
const SLOT_OF: Readonly<Record<string, LineSlot>> = {
  guard: 'guard',
  skirt: 'dressing',
  collar: 'dressing',
  keeper: 'keeper',
  paint: 'paint',
};
const REFUSABLE: ReadonlySet<LineSlot> = new Set(['guard', 'dressing', 'keeper', 'paint']);

/** Past a comma, an or, an and, if what follows is refused too: a bare noun that no colour and no `no` of its own begins. */
function jointAt(spans: readonly Span[], from: number): number | undefined {
  let next = from;
  if (spans[next]?.is === 'mark' && (spans[next] as { mark?: string }).mark === 'comma') next += 1;
  if (isNamed(spans[next], 'or', 'and')) next += 1;
  else if (!(spans[next - 1]?.is === 'mark' && next > from && isNamed(spans[next + 1], 'or', 'and'))) return undefined;
  return isPart(spans[next], 'guard', 'skirt', 'collar', 'keeper', 'paint') && spans[next + 1]?.is !== 'colour'
    ? next
    : undefined;
}

/** Same hooks: as the line before; matching guards: a colour that was not said; the usual hook: nothing was said. */
function likened(spans: readonly Span[], at: number): Step | undefined {
  const span = spans[at] as Span;
  const next = isNamed(spans[at + 1], 'link') ? at + 2 : at + 1;
  const noun = spans[next];
  if (noun?.is !== 'part') return undefined;
  const slot = NOUN_SLOT[noun.part];
  if (slot === undefined) return undefined;
  const place = over(span, noun);
  if (isNamed(span, 'usual')) return { items: [], next: next + 1 };
  return {
    items: [isNamed(span, 'same') ? { ...fact(place, slot, []), copied: true } : fact(place, slot, [])],
    next: next + 1,
  };
}
const NOUN_SLOT: Readonly<Partial<Record<Part, LineSlot>>> = {
  guard: 'guard',
  skirt: 'dressing',
  collar: 'dressing',
  keeper: 'keeper',
  paint: 'paint',
  hook: 'hook',
  metal: 'metal',
  head: 'style',
};

/** A colour goes to the guard, skirt or paint named beside it, else to the paint. */
function coloured(spans: readonly Span[], at: number, parting: Parting): Step {
  const shade = shadeAt(spans, at, parting);
  if (!shade) return { items: [spans[at] as Item], next: at + 1 };
  const next = shade.next;
  const noun = spans[next];
  if (isPart(noun, 'guard') || (isPart(noun, 'skirt') && !claimsNext(spans, next, parting)))
    return { items: [claimed(shade.shade, noun.part as Part3, over(shade.shade, noun))], next: next + 1 };
  if (isPart(noun, 'paint')) return { items: [claimed(shade.shade, 'paint', shade.shade)], next: next + 1 };
  if (isPart(noun, 'hook') && spans[next + 1]?.is !== 'value' && spans[at - 1]?.is !== 'value')
    return { items: [fact(over(shade.shade, noun), 'hook', [])], next: next + 1 };
  return { items: unclaimed(shade.shade, parting), next };
}

/** `gp skirt` takes the colour before it, unless it is followed by one of its own that no other noun takes. */
const claimsNext = (_spans: readonly Span[], _at: number, _parting: Parting): boolean => false;

function unclaimed(shade: Shade, { asked, tokens }: Parting): readonly Item[] {
  if (asked === 'guard') return [claimed(shade, 'guard', shade)];
  if (asked === 'dressing') return [claimed(shade, 'skirt', shade)];
  const said = tokens.slice(shade.at, shade.until);
  if (shade.dressing !== undefined && (isEmpty(shade.colour) || said.some(({ stem }) => stem === '/')))
    return [fact(shade, 'dressing', [shade.dressing])];
  if (shade.colour.paint === undefined && shade.colour.guard !== undefined && said[0]?.stem === 'clear') return [];
  return [claimed(shade, 'paint', shade)];
}

function claimed(shade: Shade, part: Part3, place: Place): Fact {
  if (part === 'guard') return fact(place, 'guard', listOf(shade.colour.guard));
  if (part === 'skirt') return fact(place, 'dressing', listOf(shade.dressing));
  return fact(place, 'paint', listOf(shade.colour.paint));
}
const listOf = (value: string | undefined): readonly string[] => (value === undefined ? [] : [value]);

/** The colour that begins here, with its skirt if a skirt goes by it; several words that no paint goes by are a colour the shop does not have. */
function shadeAt(
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
  if (
    until === at + 1 &&
    !isPart(spans[until], 'skirt') &&
    !isAfterSkirt(spans, at, until - at) &&
    parting.asked !== 'dressing'
  )
    return undefined;
  if (
    !isSlashed &&
    !isPart(spans[until], 'skirt') &&
    !isAfterSkirt(spans, at, until - at) &&
    parting.asked !== 'dressing'
  )
    return undefined;
  if (isSlashed && isPart(spans[until], 'guard')) return undefined;
  const colour = first.is === 'colour' && until === at + 1 ? first.colour : {};
  return { shade: { ...over(first, spans[until - 1] ?? first), colour, dressing: found.found }, next: until };
}

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
  while (isNamed(spans[before], 'link') || isMark(spans[before], ...joins)) before -= 1;
  return isPart(spans[before], 'skirt') && spans[before - 1]?.is !== 'colour';
}
const isMark = (span: Span | undefined, ...marks: readonly string[]): boolean =>
  span?.is === 'mark' && marks.includes(span.mark);

/** A noun with no colour before it: it takes the colour after it, or is a wish of its own. */
function parted(spans: readonly Span[], at: number, parting: Parting): Step {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  const answer = answerAfter(spans, at);
  const slot = SLOT_OF[span.part];
  if (slot && answer)
    return {
      items: [fact(span, slot, answer.is === 'none' ? [slot === 'paint' ? BARE : NONE] : wished(span.part, parting))],
      next: answer.next,
    };
  if (span.part === 'guard' || span.part === 'skirt')
    return (
      withColourAfter(spans, at, parting) ?? {
        items: [fact(span, SLOT_OF[span.part] as LineSlot, wished(span.part, parting))],
        next: at + 1,
      }
    );
  if (span.part === 'keeper' || span.part === 'collar')
    return { items: [fact(span, SLOT_OF[span.part] as LineSlot, wished(span.part, parting))], next: at + 1 };
  return { items: [], next: at + 1 };
}

const wished = (part: Part, { collar }: Parting): readonly string[] =>
  part === 'guard' ? ['yes'] : part === 'keeper' ? ['wire'] : part === 'collar' ? listOf(collar) : [];

/** guards: none, keeper yes */
function answerAfter(spans: readonly Span[], at: number): Readonly<{ is: 'none' | 'yes'; next: number }> | undefined {
  let next = at + 1;
  while (isNamed(spans[next], 'link') || isMark(spans[next], 'colon', 'dash')) next += 1;
  if (isNamed(spans[next], 'none') || (isNamed(spans[next], 'no') && !isNextNoun(spans[next + 1])))
    return { is: 'none', next: next + 1 };
  return isNamed(spans[next], 'yes') && next <= at + 2 ? { is: 'yes', next: next + 1 } : undefined;
}
const isNextNoun = (span: Span | undefined): boolean =>
  span?.is === 'part' ||
  span?.is === 'colour' ||
  span?.is === 'value' ||
  span?.is === 'stranger' ||
  isNamed(span, 'link');

/** guard black, skirts in gp, skirt: brown/orange */
function withColourAfter(spans: readonly Span[], at: number, parting: Parting): Step | undefined {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  let next = at + 1;
  while (isNamed(spans[next], 'link') || isMark(spans[next], 'colon', 'dash')) next += 1;
  const shade = shadeAt(spans, next, parting);
  if (!shade || isPart(spans[shade.next], 'guard', 'skirt', 'paint') || isPart(spans[shade.next], 'head'))
    return undefined;
  return { items: [claimed(shade.shade, span.part as Part3, over(span, shade.shade))], next: shade.next };
}

/** A thing that other benches have, with its noun; a style counts only with a head, a number or a size beside it: rocks and grass are also places to fish. */
function stranger(spans: readonly Span[], at: number): Step {
  const span = spans[at] as Span & Readonly<{ is: 'stranger'; slot: LineSlot }>;
  const next = spans[at + 1];
  const before = spans[at - 1];
  const noun = next?.is === 'part' && NOUN_SLOT[next.part] === span.slot ? next : undefined;
  const isSaid = noun !== undefined || next?.is === 'value' || before?.is === 'value' || before?.is === 'colour';
  if (span.slot === 'style' && !isSaid) return { items: [], next: at + 1 };
  if (span.slot === 'quantity' && !isBeforeHeads(spans, at + 1)) return { items: [], next: at + 1 };
  return { items: [fact(noun ? over(span, noun) : span, span.slot, [])], next: at + (noun ? 2 : 1) };
}

/** A bunch of quarter ounce ball heads. */
function isBeforeHeads(spans: readonly Span[], from: number): boolean {
  let at = from;
  while (isNamed(spans[at], 'link', 'more')) at += 1;
  return isContent(spans[at]);
}
