/** Words of the trade that the rules reason about, so they are the program's and not one shop's. */

/** What holds a soft bait on the head: a barb cast with it, a wire set in the mold, or nothing. */
export const KEEPERS = ['barb', 'wire', 'none'] as const;
export type Keeper = (typeof KEEPERS)[number];

/** The slots of a spec in the order in which a buyer is asked for them. */
export const SPEC_SLOTS = ['style', 'weight', 'hook', 'paint', 'guard', 'keeper', 'dressing', 'metal'] as const;
export type SpecSlot = (typeof SPEC_SLOTS)[number];

/** The slots of an order line. */
export const LINE_SLOTS = [...SPEC_SLOTS, 'quantity'] as const;
export type LineSlot = (typeof LINE_SLOTS)[number];

/** No guard, no dressing, no keeper. */
export const NONE = 'none';
/** A head that is left unpainted. */
export const BARE = 'bare';

/** What is done to a lot, in the order in which it is done. */
export const STEPS = [
  'pour',
  'trim',
  'paint',
  'clear-eyes',
  'bake',
  'cool',
  'guard',
  'cure',
  'dress',
  'pack',
  'post',
] as const;
export type Step = (typeof STEPS)[number];

/** The outlines a style can be drawn with. */
export const SHAPES = ['round', 'football', 'minnow', 'mushroom', 'wedge'] as const;
export type Shape = (typeof SHAPES)[number];

export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];
