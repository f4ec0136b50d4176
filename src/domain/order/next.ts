import type { Shop } from '../shop/shop.ts';
import { NONE, type SpecSlot } from '../shop/words.ts';
import { choicesFor, usualSpec } from './choices.ts';
import type { Ask, Draft, DraftLine } from './draft.ts';
import { openDay } from './needBy.ts';
import type { Line, PartialSpec } from './spec.ts';

/** What to ask next, and about which line; undefined when the order is whole. */
export type Next = Readonly<{ ask: Ask; line: number }>;

/** Fittings that matter for how a head fishes, so they are asked; as usual or one by one. */
const FITTINGS: readonly SpecSlot[] = ['hook', 'guard', 'dressing'];
/** Slots that are taken as usual when nothing was said of them, and shown as such on the summary. */
const TAKEN_AS_USUAL: readonly SpecSlot[] = ['keeper', 'metal'];

/** The next question of a draft: the slot that is being changed, else the first that is missing. Computed, never remembered. */
export function nextAsk(shop: Shop, draft: Draft): Next | undefined {
  if (draft.changing !== null) return { ask: draft.changing, line: draft.current };
  for (const [line, words] of draft.lines.entries()) {
    const ask = missingOf(shop, draft, words);
    if (ask) return { ask, line };
  }
  if (draft.shipTo === null) return { ask: 'shipTo', line: draft.current };
  return openDay(draft) === undefined ? undefined : { ask: 'needBy', line: draft.current };
}

/** How many questions are still to come, this one counted; it is counted anew as answers open or close branches. */
export function questionsLeft(shop: Shop, draft: Draft): number {
  const perLine = draft.lines.map((line) => {
    const fittings = askedFittings(shop, line);
    const fits = line.each ? fittings.length : Math.min(1, fittings.length);
    const plain = (['style', 'weight', 'paint'] as const).filter((slot) => line.spec[slot] === undefined).length;
    return plain + fits + (line.quantity === null && fits === 0 ? 1 : 0);
  });
  return (
    perLine.reduce((sum, count) => sum + count, 0) +
    Number(draft.shipTo === null) +
    Number(openDay(draft) !== undefined)
  );
}

/** The line as it would be ordered: what was not said filled in as usual; undefined while something must be asked or cannot be made. */
export function wholeLine(shop: Shop, { spec, quantity, extra }: DraftLine): Line | undefined {
  const whole = usualSpec(shop, spec);
  return whole && quantity !== null ? { spec: whole, quantity, ...(extra > 0 ? { extra } : {}) } : undefined;
}

function missingOf(shop: Shop, draft: Draft, line: DraftLine): Ask | undefined {
  for (const slot of ['style', 'weight', 'paint'] as const) if (line.spec[slot] === undefined) return slot;
  if (line.wantsGuard && line.spec.guard === undefined) return 'guard';
  const unclear = TAKEN_AS_USUAL.find((slot) => line.spec[slot] === undefined && isUnclear(draft, slot));
  if (unclear) return unclear;
  const [fitting] = askedFittings(shop, line);
  if (fitting) return line.each ? fitting : 'usual';
  return line.quantity === null ? 'quantity' : undefined;
}

/** Open fittings that leave a real choice. */
function askedFittings(shop: Shop, { spec }: DraftLine): readonly SpecSlot[] {
  return FITTINGS.filter((slot) => spec[slot] === undefined && choicesFor(shop, spec, slot).length > 1);
}

const isUnclear = (draft: Draft, slot: string): boolean => draft.unclear.some((one) => one.slot === slot);

/** The guards that a buyer can mean who wants one and did not say which. */
export const guardColours = (shop: Shop, spec: PartialSpec): readonly string[] =>
  choicesFor(shop, spec, 'guard').filter((guard) => guard !== NONE);
