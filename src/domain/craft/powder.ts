import { z } from 'zod';
import { sphereArea, type Casting } from './casting.ts';

/** A mil, a thousandth of an inch, in cm, exact. */
export const CM_PER_MIL = 0.00254;

/** How much powder a head takes; every starting value is common practice, no source. */
export const powderSettings = z.strictObject({
  /** The head's surface over that of a sphere of its mass; 1.3 for keeper, eye and shape. */
  shapeFactor: z.number().min(1).default(1.3),
  /** Film in thousandths of an inch; 3 (2–4). */
  filmMils: z.number().positive().default(3),
  /** Density of the cured powder, g/cm³; 1.5. */
  specificGravity: z.number().positive().default(1.5),
  /** Share of the powder used that stays on heads; 0.9 in a fluid bed (0.85–0.95). */
  utilisation: z.number().positive().max(1).default(0.9),
});
export type PowderSettings = Readonly<z.infer<typeof powderSettings>>;

/** Surface to be coated, cm²: a sphere of the head's volume times the shape factor. */
export const headArea = (casting: Casting, { shapeFactor }: PowderSettings): number =>
  sphereArea(casting) * shapeFactor;

/** Grams of powder on one head: area × film × density.
 *  @example powderOn({ grams: 14.175, composition: { Pb: 1 } }, powderSettings.parse({})) //=> 0.083… */
export const powderOn = (casting: Casting, settings: PowderSettings): number =>
  headArea(casting, settings) * settings.filmMils * CM_PER_MIL * settings.specificGravity;

/** Grams of powder used for a lot, losses counted. */
export const powderFor = (casting: Casting, heads: number, settings: PowderSettings): number =>
  (powderOn(casting, settings) * heads) / settings.utilisation;

/** Square metres covered by a kilogram: 39.37 ÷ density ÷ mils × utilisation (finishing trade magazine, "Coverage of Powder"; it rounds the constant to 39.8). */
export const coverage = ({ filmMils, specificGravity, utilisation }: Omit<PowderSettings, 'shapeFactor'>): number =>
  utilisation / (10 * CM_PER_MIL * filmMils * specificGravity);
