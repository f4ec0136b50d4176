import { hasPin } from '../../domain/order/head.ts';
import { cavityFor } from '../../domain/order/rules.ts';
import type { PartialSpec, Spec } from '../../domain/order/spec.ts';
import { SPEC_SLOTS, type SpecSlot, type Step } from '../../domain/shop/words.ts';
import type { Lot } from '../../domain/bench/lot.ts';
import { headName, partName, patternName, valueName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { BenchWords } from '../words.ts';

const FITTINGS = SPEC_SLOTS.filter((slot) => slot !== 'style' && slot !== 'weight');

/** A head as far as it is known: "3/8 oz football head, 4/0 hook, green pumpkin". Null when nothing is. */
export function specName(voice: Voice, spec: PartialSpec, left: readonly string[] = []): string | null {
  const head = spec.style === undefined && spec.weight === undefined ? [] : [headName(voice, spec)];
  const parts = [...head, ...fittingNames(voice, spec, (slot) => !left.includes(slot))];
  return parts.length === 0 ? null : parts.join(', ');
}

/** The parts of a spec that some slots name. */
export const fittingNames = (voice: Voice, spec: PartialSpec, takes: (slot: SpecSlot) => boolean): readonly string[] =>
  FITTINGS.flatMap((slot) => {
    const value = spec[slot];
    return value === undefined || !takes(slot) ? [] : [partName(voice, slot, value)];
  });

/** "24 × 3/8 oz football head". */
export const lotName = (voice: Voice, { spec, heads }: Pick<Lot, 'spec' | 'heads'>): string =>
  `${voice.number(heads)} × ${headName(voice, spec)}`;

/** The lot with the heads that it has once it is poured. */
export const alive = (lot: Lot): Lot => (lot.good > 0 ? { ...lot, heads: lot.good } : lot);

/** Every slot on its own line; what must not be mistaken in capitals. */
export function specLines(voice: Voice, words: BenchWords, spec: Spec): readonly string[] {
  const pattern = cavityFor(voice.shop, spec)?.mold.pattern;
  const { slots } = words;
  const value = (slot: keyof typeof slots): string => large(valueName(voice, slot, spec[slot]));
  return [
    large(headName(voice, spec)),
    `${slots.hook}: ${large(spec.hook)}${pattern === undefined ? '' : `, ${patternName(voice, pattern)}`}`,
    ...(['paint', 'guard', 'keeper', 'dressing', 'metal'] as const).map((slot) => `${slots[slot]}: ${value(slot)}`),
  ];
}

/** Whether the base-hole pin goes in at the pour and comes out after the dip; null where there is no pin to think of. */
export function pinLine(voice: Voice, { pin }: BenchWords, step: Step, spec: Spec): string | null {
  const isIn = hasPin(voice.shop, spec);
  if (isIn === null) return null;
  if (step === 'pour') return isIn ? pin.in : pin.none;
  if (!isIn) return null;
  // It comes out while the head is hot from the dip, so it is said before the first one is dipped.
  return step === 'paint' ? pin.pullAfter : step === 'clear-eyes' ? pin.pull : null;
}

/** Fractions, units and names in capitals. @example large('3/8 oz ball head') //=> '3/8 OZ BALL HEAD' */
export const large = (text: string): string => text.toLocaleUpperCase();
