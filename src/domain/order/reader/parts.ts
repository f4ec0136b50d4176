import { BARE, NONE, type LineSlot } from '../../shop/words.ts';
import { fact, isMark, isPart, listOf, over, SLOT_OF_NOUN, type Step } from './facts.ts';
import type { Part } from './language/language.ts';
import { isNamed } from './quantities.ts';
import { answerAfter, likened, refused } from './refusals.ts';
import { claimed, coloured, shadeAt, type Parting } from './shades.ts';
import type { Fact, Item, Span } from './span.ts';
import { namedByWord, stranger } from './strangers.ts';

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

function stepAt(spans: readonly Span[], at: number, parting: Parting): Step {
  const span = spans[at] as Span;
  if (span.is === 'word') return namedByWord(spans, at) ?? { items: [span], next: at + 1 };
  if (isNamed(span, 'no', 'drop') || isBareNo(span, parting))
    return refused(spans, at) ?? { items: [span as Item], next: at + 1 };
  if (isNamed(span, 'match', 'usual', 'same')) return likened(spans, at) ?? { items: [span as Item], next: at + 1 };
  if (span.is === 'colour' || isNamed(span, 'tint', 'shade')) return coloured(spans, at, parting);
  if (span.is === 'part') return parted(spans, at, parting);
  if (span.is === 'value') return { items: [fact(span, span.slot, [span.value])], next: at + 1 };
  if (span.is === 'stranger') return stranger(spans, at);
  if (span.is === 'pattern' || span.is === 'number') return { items: [], next: at + 1 };
  return { items: [span], next: at + 1 };
}

/** A language in which one word is both no and not. */
const isBareNo = (span: Span, { tokens }: Parting): boolean => isNamed(span, 'not') && tokens[span.at]?.stem === 'no';

/** A noun with no colour before it: it is answered, takes the colour after it, or is a wish of its own. */
function parted(spans: readonly Span[], at: number, parting: Parting): Step {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  const slot = SLOT_OF_NOUN[span.part];
  const after = spans[at + 1];
  if (slot === undefined || !WISHED.has(span.part)) return { items: [], next: at + 1 };
  const answer = answerAfter(spans, at);
  if (answer?.is === 'none') return { items: [fact(span, slot, [slot === 'paint' ? BARE : NONE])], next: answer.next };
  if (answer) return { items: [wish(span, slot, parting)], next: answer.next };
  if (after && isNamed(after, 'match')) return { items: [fact(over(span, after), slot, [])], next: at + 2 };
  const coloured = isPart(span, 'guard', 'skirt') ? withColourAfter(spans, at, parting) : undefined;
  if (coloured) return coloured;
  return { items: span.part === 'paint' ? [] : [wish(span, slot, parting)], next: at + 1 };
}
const WISHED: ReadonlySet<Part> = new Set(['guard', 'skirt', 'collar', 'keeper', 'paint']);

/** The part wanted and no more said: a collar stays when the skirt on it is refused. */
function wish(span: Span & Readonly<{ is: 'part'; part: Part }>, slot: LineSlot, parting: Parting): Fact {
  const said = fact(span, slot, wished(span.part, parting));
  return span.part === 'collar' ? { ...said, firm: true } : said;
}

const wished = (part: Part, { collar }: Parting): readonly string[] =>
  part === 'guard' ? ['yes'] : part === 'keeper' ? ['wire'] : part === 'collar' ? listOf(collar) : [];

/** guard black, skirts in gp, skirt: brown/orange */
function withColourAfter(spans: readonly Span[], at: number, parting: Parting): Step | undefined {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  let next = at + 1;
  while (isNamed(spans[next], 'link', 'make') || isMark(spans[next], 'colon', 'dash')) next += 1;
  const shade = shadeAt(spans, next, parting) ?? onesAt(spans, next, parting);
  if (!shade || isPart(spans[shade.next], 'guard', 'skirt', 'paint') || isPart(spans[shade.next], 'head'))
    return undefined;
  return { items: [claimed(shade.shade, span.part, over(span, shade.shade))], next: shade.next };
}

/** Weedguards please, black ones. */
function onesAt(spans: readonly Span[], at: number, parting: Parting): ReturnType<typeof shadeAt> {
  const comma = isNamed(spans[at], 'want') ? at + 1 : at;
  const shade = isMark(spans[comma], 'comma') ? shadeAt(spans, comma + 1, parting) : undefined;
  return shade && isNamed(spans[shade.next], 'ones') ? shade : undefined;
}
