import { BARE, NONE, type LineSlot } from '../../shop/words.ts';
import { fact, isContent, isMark, isNamed, isPart, listOf, over, SLOT_OF_NOUN, type Step } from './facts.ts';
import type { Grammar, Part } from './language/language.ts';
import { beside } from './lists.ts';
import { answerAfter, leftOff, likened, refused, refusedBefore, without } from './refusals.ts';
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

type Rule = (spans: readonly Span[], at: number, parting: Parting) => Step | undefined;

function stepAt(spans: readonly Span[], at: number, parting: Parting): Step {
  const span = spans[at] as Span;
  const rule = span.is === 'grammar' ? BY_WORD[span.word] : BY_KIND[span.is];
  return rule?.(spans, at, parting) ?? { items: [span as Item], next: at + 1 };
}

const nothing: Rule = (_spans, at) => ({ items: [], next: at + 1 });

const valued: Rule = (spans, at) => {
  const span = spans[at] as Span & Readonly<{ is: 'value' }>;
  return { items: [fact(span, span.slot, [span.value])], next: at + 1 };
};

/** Just leave it off. */
const left: Rule = (spans, at) => ({ items: refusedBefore(spans, at), next: at + 1 });

const alike: Rule = (spans, at, parting) => sameThenColour(spans, at, parting) ?? likened(spans, at);

/** A language in which one word is both no and not. */
const bareNo: Rule = (spans, at, { tokens }) =>
  tokens[spans[at]?.at ?? -1]?.stem === 'no' ? refused(spans, at) : undefined;

/** A noun with no colour before it: it is answered, takes the colour after it, or is a wish of its own. */
function parted(spans: readonly Span[], at: number, parting: Parting): Step {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  const slot = SLOT_OF_NOUN[span.part];
  const after = spans[at + 1];
  if (slot === undefined || !WISHED.has(span.part)) return { items: [], next: at + 1 };
  const answer = answerAfter(spans, at);
  if (answer?.is === 'none') return { items: [fact(span, slot, [slot === 'paint' ? BARE : NONE])], next: answer.next };
  if (answer) return { items: [wish(span, slot, parting)], next: answer.next };
  if (isLeftOpen(spans, at)) return { items: [], next: at + 1 };
  if (after && isNamed(after, 'match')) return { items: [fact(over(span, after), slot, [])], next: at + 2 };
  const coloured = isPart(span, 'guard', 'skirt') ? withColourAfter(spans, at, parting) : undefined;
  if (coloured) return coloured;
  return { items: span.part === 'paint' ? [] : [wish(span, slot, parting)], next: at + 1 };
}
/** Guard whatever you think, skirts the usual: nothing is said of it. */
function isLeftOpen(spans: readonly Span[], at: number): boolean {
  let next = at + 1;
  while (isNamed(spans[next], 'link') || isMark(spans[next], 'colon', 'dash')) next += 1;
  return isNamed(spans[next], 'open', 'usual') && !isMark(spans[next + 1], 'colon');
}
const WISHED: ReadonlySet<Part> = new Set(['guard', 'skirt', 'collar', 'keeper', 'paint']);

/** The part wanted and no more said: a collar stays when the skirt on it is refused. */
function wish(span: Span & Readonly<{ is: 'part'; part: Part }>, slot: LineSlot, parting: Parting): Fact {
  const said = fact(span, slot, wished(span.part, parting));
  return span.part === 'collar' ? { ...said, firm: true } : said;
}

const wished = (part: Part, { collar }: Parting): readonly string[] =>
  part === 'guard' ? ['yes'] : part === 'keeper' ? ['wire'] : part === 'collar' ? listOf(collar) : [];

/** guard black, skirts in gp, skirt: brown/orange; guard brown or black, either of which it may be */
function withColourAfter(spans: readonly Span[], at: number, parting: Parting): Step | undefined {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  let next = at + 1;
  while (isNamed(spans[next], 'link', 'make') || isMark(spans[next], 'colon', 'dash')) next += 1;
  const shade = shadeAt(spans, next, parting) ?? onesAt(spans, next, parting);
  if (!shade) return changedTo(spans, at, parting) ?? lateColour(spans, at, parting);
  if (isPart(spans[shade.next], 'guard', 'skirt', 'paint') || isPart(spans[shade.next], 'head')) return undefined;
  const said = claimed(shade.shade, span.part, over(span, shade.shade));
  const other = isNamed(spans[shade.next], 'or') ? shadeAt(spans, shade.next + 1, parting) : undefined;
  if (!other || isPart(spans[other.next])) return { items: [said], next: shade.next };
  return { items: [beside(said, claimed(other.shade, span.part, other.shade), 'or')], next: other.next };
}

/** The guard on the footballs to brown, the guard on line 1 to brown. */
function changedTo(spans: readonly Span[], at: number, parting: Parting): Step | undefined {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  let next = at + 1;
  while ((isHead(spans[next]) && spans[next]?.is !== 'colour') || isNamed(spans[next], ...REACHING, 'row')) next += 1;
  const shade = TO.has(parting.tokens[spans[next - 1]?.at ?? -1]?.stem ?? '')
    ? shadeAt(spans, next, parting)
    : undefined;
  if (!shade || next === at + 1) return undefined;
  const said = claimed(shade.shade, span.part, over(span, shade.shade));
  return { items: [said, ...partedOf(spans.slice(at + 1, next), parting)], next: shade.next };
}
const TO: ReadonlySet<string> = new Set(['to', 'a', 'into']);

/** Weedguards please, black ones. */
function onesAt(spans: readonly Span[], at: number, parting: Parting): ReturnType<typeof shadeAt> {
  const comma = isNamed(spans[at], 'want') ? at + 1 : at;
  const shade = isMark(spans[comma], 'comma') ? shadeAt(spans, comma + 1, parting) : undefined;
  return shade && isNamed(spans[shade.next], 'ones') ? shade : undefined;
}

/** Yes to the guards, black; same guards on both, green: after a comma the colour is still the noun's where the paint is said, or where nothing else is. */
function lateColour(spans: readonly Span[], at: number, parting: Parting): Step | undefined {
  const span = spans[at] as Span & Readonly<{ is: 'part'; part: Part }>;
  const comma = reachedBy(spans, at);
  const shade = isMark(spans[comma], 'comma') ? shadeAt(spans, comma + 1, parting) : undefined;
  const end = shade && spans[shade.next];
  if (!shade || (end && end.is !== 'mark' && !isNamed(end, 'fits', 'want', 'ones'))) return undefined;
  const said = claimed(shade.shade, span.part, over(span, shade.shade));
  const isOpen = isPainted(spans.slice(0, comma)) || !spans.slice(0, at).some(isContent);
  const isLast = !sentenceFrom(spans, shade.next).some(isContent);
  return said.values.length === 0 || !isOpen || (end && isMark(end, 'slash')) || !isLast
    ? undefined
    : { items: [said, ...partedOf(spans.slice(at + 1, comma), parting)], next: shade.next };
}

/** Past what says on which heads: guards on the footballs only. */
function reachedBy(spans: readonly Span[], at: number): number {
  let next = at + 1;
  while (isNamed(spans[next], ...REACHING)) next += 1;
  if (next === at + 1 || !isNamed(spans[next - 1], 'aim', 'for', 'link')) return next;
  while (isHead(spans[next]) || isNamed(spans[next], ...REACHING, 'row')) next += 1;
  return next;
}

/** What tells one head from another, and is no colour that begins something else. */
const isHead = (span: Span | undefined): boolean => span?.is === 'row' || isContent(span);

function sentenceFrom(spans: readonly Span[], at: number): readonly Span[] {
  const rest = spans.slice(at);
  const end = rest.findIndex((span) => isMark(span, 'stop', 'question', 'line'));
  return end === -1 ? rest : rest.slice(0, end);
}
const sameThenColour = (spans: readonly Span[], at: number, parting: Parting): Step | undefined =>
  isNamed(spans[at], 'same') && isPart(spans[at + 1], 'guard', 'skirt')
    ? lateColour(spans, at + 1, parting)
    : undefined;

const REACHING: readonly Grammar[] = ['link', 'all', 'aim', 'only', 'want', 'each', 'ones'];

/** Whether a colour stands there that is no guard's and no skirt's. */
const isPainted = (spans: readonly Span[]): boolean =>
  spans.some((span, at) => span.is === 'colour' && !isPart(spans[at + 1], 'guard', 'skirt'));

/** `black, open hook, naked`, `naked, brown paint`: what has its paint is naked of a skirt. */
const naked: Rule = (spans, at) => {
  const isAnswered = isMark(spans[at - 1], 'comma') && (spans[at + 1]?.is ?? 'mark') === 'mark';
  const isBeforePaint =
    isMark(spans[at + 1], 'comma') && spans[at + 2]?.is === 'colour' && isPart(spans[at + 3], 'paint');
  return isBeforePaint || (isAnswered && isPainted(spans.slice(0, at)))
    ? { items: [fact(spans[at] as Span, 'dressing', [NONE])], next: at + 1 }
    : undefined;
};

const BY_KIND: Readonly<Partial<Record<Span['is'], Rule>>> = {
  word: namedByWord,
  colour: coloured,
  part: parted,
  value: valued,
  stranger,
  pattern: nothing,
  number: nothing,
};

const BY_WORD: Readonly<Partial<Record<Grammar, Rule>>> = {
  no: (spans, at) => refused(spans, at) ?? without(spans, at),
  drop: refused,
  lose: refused,
  not: bareNo,
  off: left,
  leave: (spans, at, { tokens }) => leftOff(spans, at, tokens),
  match: alike,
  usual: alike,
  same: alike,
  naked,
  tint: coloured,
  shade: coloured,
};
