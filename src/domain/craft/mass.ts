import { density, PURE_LEAD, recast, type Composition } from './metals.ts';
import { grams, type Weight } from './weight.ts';

/** Density of hook steel in g/cm³: from memory, plain carbon steel in any handbook. */
export const STEEL_DENSITY = 7.85;

/** A hook's mass in grams, and how many cm³ of it lie inside the cavity (nothing said: its room is not taken off). */
export type HookInMold = Readonly<{ grams: number; insideCm3?: number | undefined }>;

export type HeadFacts = Readonly<{
  /** The cavity's rating in pure lead. */
  weight: Weight;
  composition: Composition;
  hook?: HookInMold | undefined;
  /** The maker's own weighing of the finished head in this metal, hook included, grams; it wins. */
  measuredGrams?: number | undefined;
}>;

/** Grams of cast metal, grams with the hook, and whether they were weighed or worked out. */
export type HeadMass = Readonly<{ metalGrams: number; totalGrams: number; by: 'weighing' | 'arithmetic' }>;

/** What one head of a metal weighs out of a cavity rated in lead.
 *  Arithmetic ignores shrinkage and pores, so it is good to some per cent; a weighing wins.
 *  @example headMass({ weight: '1/2', composition: { Bi: 0.58, Sn: 0.42 } }).metalGrams //=> 10.69… */
export function headMass({ weight, composition, hook, measuredGrams }: HeadFacts): HeadMass {
  const hookGrams = hook?.grams ?? 0;
  if (measuredGrams !== undefined)
    return { metalGrams: Math.max(0, measuredGrams - hookGrams), totalGrams: measuredGrams, by: 'weighing' };
  const roomGrams = (hook?.insideCm3 ?? 0) * density(composition);
  const metalGrams = Math.max(0, recast(grams(weight), PURE_LEAD, composition) - roomGrams);
  return { metalGrams, totalGrams: metalGrams + hookGrams, by: 'arithmetic' };
}

/** The room in cm³ that a hook takes in a cavity when this share of it lies inside. @example hookRoom(1.57, 0.25) //=> 0.05 */
export const hookRoom = (hookGrams: number, shareInside: number): number => (hookGrams * shareInside) / STEEL_DENSITY;

/** A weighing in one metal turned into the finished mass in another, hook unchanged, grams. */
export const reweigh = (measured: number, hookGrams: number, from: Composition, to: Composition): number =>
  recast(Math.max(0, measured - hookGrams), from, to) + hookGrams;
