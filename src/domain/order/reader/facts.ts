import type { LineSlot } from '../../shop/words.ts';
import type { Grammar, Part } from './language/language.ts';
import type { Fact, Item, Place, Span } from './span.ts';

/** What one stretch, or a few, say of a head, and the stretch that follows. */
export type Step = Readonly<{ items: readonly Item[]; next: number }>;

/** A fact at a place; no values mean that it was spoken of and not understood. */
export const fact = (place: Place, slot: LineSlot, values: readonly string[]): Fact => ({
  is: 'fact',
  slot,
  values,
  from: place.from,
  to: place.to,
  at: place.at,
  until: place.until,
});
/** From the one to the other. */
export const over = (a: Place, b: Place): Place => ({ from: a.from, to: b.to, at: a.at, until: b.until });
export const isPart = (
  span: Span | undefined,
  ...parts: readonly Part[]
): span is Span & Readonly<{ is: 'part'; part: Part }> =>
  span?.is === 'part' && (parts.length === 0 || parts.includes(span.part));

export const isMark = (span: Span | undefined, ...marks: readonly string[]): boolean =>
  span?.is === 'mark' && marks.includes(span.mark);

export const isNamed = (span: Item | Span | undefined, ...words: readonly Grammar[]): boolean =>
  span?.is === 'grammar' && words.includes(span.word);

/** Something said of a head, beside which a number counts heads. */
export const isContent = (span: Span | undefined): boolean =>
  span !== undefined &&
  (span.is === 'value' ||
    span.is === 'colour' ||
    span.is === 'stranger' ||
    (span.is === 'part' && span.part === 'head'));

/** The slot that a noun speaks of. */
export const SLOT_OF_NOUN: Readonly<Partial<Record<Part, LineSlot>>> = {
  guard: 'guard',
  skirt: 'dressing',
  collar: 'dressing',
  keeper: 'keeper',
  paint: 'paint',
  hook: 'hook',
  metal: 'metal',
  head: 'style',
};

export const listOf = (value: string | undefined): readonly string[] => (value === undefined ? [] : [value]);
