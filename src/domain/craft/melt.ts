import { z } from 'zod';

/** How a session of casting goes; every starting value is common practice, no source, to be learned from the maker's own counts. */
export const castingSettings = z.strictObject({
  /** Share of the metal poured that ends as sprue, remelted; 0.25 (small heads 0.15–0.40, large 0.08–0.15). */
  sprueShare: z.number().min(0).max(0.9).default(0.25),
  /** Share of heads cast that are rejected and remelted; 0.05 (warm mold 0.02–0.05, new mold 0.05–0.10). */
  scrapShare: z.number().min(0).max(0.9).default(0.05),
  /** Share of the metal melted that is lost as dross; 0.02 (0.01–0.03). */
  meltLoss: z.number().min(0).max(0.5).default(0.02),
  /** Shots poured without hooks until the mold is warm, all remelted; 4 (3–6). */
  warmShots: z.number().int().min(0).default(4),
});
export type CastingSettings = Readonly<z.infer<typeof castingSettings>>;

/** What is cast: good heads wanted, cavities filled by one shot, grams of metal in one head. */
export type MeltLot = Readonly<{ heads: number; cavities: number; metalGrams: number }>;

/** Grams, but for `castHeads`; `meltGrams` = kept + returned + lost. */
export type Melt = Readonly<{
  /** Heads to cast with hooks so that enough are good. */
  castHeads: number;
  /** All that goes through the pot, if nothing were remelted on the way. */
  meltGrams: number;
  /** In good heads. */
  keptGrams: number;
  /** Sprue, rejects and warming shots: back into the pot. */
  returnedGrams: number;
  /** Dross. */
  lostGrams: number;
  /** What the stock of metal falls by: kept and lost. */
  usedGrams: number;
}>;

/** The metal to melt for a lot of heads.
 *  @example meltFor({ heads: 95, cavities: 1, metalGrams: 10 }, castingSettings.parse({ warmShots: 0, sprueShare: 0, meltLoss: 0 })).meltGrams //=> 1000 */
export function meltFor({ heads, cavities, metalGrams }: MeltLot, settings: CastingSettings): Melt {
  const castHeads = headsToCast(heads, settings.scrapShare);
  const inCavities = (castHeads + settings.warmShots * cavities) * metalGrams;
  const poured = inCavities / (1 - settings.sprueShare);
  const meltGrams = poured / (1 - settings.meltLoss);
  const keptGrams = heads * metalGrams;
  const lostGrams = meltGrams - poured;
  return {
    castHeads,
    meltGrams,
    keptGrams,
    returnedGrams: poured - keptGrams,
    lostGrams,
    usedGrams: keptGrams + lostGrams,
  };
}

/** Heads to cast so that `good` are left after the scrap share, rounded up. @example headsToCast(95, 0.05) //=> 100 */
export const headsToCast = (good: number, scrapShare: number): number => Math.ceil(good / (1 - scrapShare) - 1e-9);
