import { z } from 'zod';
import type { Casting } from './casting.ts';
import { bodyOf, secondsToReach, timeConstant } from './heat.ts';
import { bakeGuardSettings } from './melting.ts';
import { kelvinOf, type Celsius } from './temperature.ts';
import type { Minutes } from './time.ts';

/** The baking oven; starting values are common practice, no source, unless said. */
export const ovenSettings = z.strictObject({
  /** Heads on one rack; 40 (a toaster oven holds 30–60). */
  rack: z.number().int().min(1).default(40),
  /** The setting; 177 °C = 350 °F. Powder sheets ask for 177–204 °C metal temperature (coatings trade magazine, Sept 2022). */
  celsius: z.number().min(50).max(260).default(177),
  /** Time at metal temperature; 20 minutes. */
  holdMinutes: z.number().positive().default(20),
  ...bakeGuardSettings.shape,
  /** Film coefficient with radiation, W/(m²·K); 25 with a fan, 15 still. A thermocouple run replaces it. */
  filmCoefficient: z.number().positive().default(25),
  /** Heads as they go in, °C; 25 cold, about 120 straight from the dip. */
  loadedCelsius: z.number().default(25),
  /** A head counts as up to heat this far below the setting, °C; 5. */
  withinCelsius: z.number().positive().default(5),
  /** Most time at heat, as a multiple of the hold, that the lightest head may get; 2 (powders stand 50–100 % overbake: a powder maker's page). */
  overbake: z.number().min(1).default(2),
  /** Activation energy of the cure, kJ/mol; 62 (10 min at 200 °C as 20 min at 180 °C gives 61.8; 60–90 from memory). */
  activation: z.number().positive().default(62),
});
export type OvenSettings = Readonly<z.infer<typeof ovenSettings>>;

/** Minutes until a head is up to heat; 0 when it goes in at that heat. Lumped body, oven kept at its setting: door and rack come on top.
 *  @example comeUp({ grams: 28.35, composition: { Pb: 1 } }, ovenSettings.parse({})) //=> 9.3… */
export function comeUp(casting: Casting, settings: OvenSettings): Minutes {
  const { loadedCelsius, celsius, withinCelsius, filmCoefficient } = settings;
  const course = { start: loadedCelsius, air: celsius, target: celsius - withinCelsius };
  return (secondsToReach(timeConstant(bodyOf(casting), filmCoefficient), course) ?? 0) / 60;
}

/** How one rack is baked: first up to heat, then the hold, which begins when the slowest head is hot. */
export type Bake = Readonly<{
  comeUpMinutes: Minutes;
  holdMinutes: Minutes;
  /** What the quickest head gets at heat. */
  longestHoldMinutes: Minutes;
  /** That over the hold asked for. */
  overbake: number;
  verdict: 'even' | 'overbaked';
}>;

/** The bake of one rack, governed by its slowest head; undefined for an empty rack. Whether a metal may go in at all is `bakeable`. */
export function bakeOf(heads: readonly Casting[], settings: OvenSettings): Bake | undefined {
  const times = heads.map((head) => comeUp(head, settings));
  if (times.length === 0) return undefined;
  const comeUpMinutes = Math.max(...times);
  const longestHoldMinutes = settings.holdMinutes + comeUpMinutes - Math.min(...times);
  const overbake = longestHoldMinutes / settings.holdMinutes;
  const verdict = overbake > settings.overbake ? 'overbaked' : 'even';
  return { comeUpMinutes, holdMinutes: settings.holdMinutes, longestHoldMinutes, overbake, verdict };
}

/** Heads that hang in an oven without touching. @example rackPlaces(12, 1, 4) //=> 48 */
export const rackPlaces = (widthInches: number, pitchInches: number, rods: number): number =>
  Math.floor(widthInches / pitchInches) * rods;

/** The gas constant in J/(mol·K), exact (CODATA 2018). */
export const GAS_CONSTANT = 8.314462618;

/** A cure: minutes at a metal temperature, °C. */
export type Cure = Readonly<{ minutes: Minutes; celsius: Celsius }>;

/** Minutes at another temperature that cure as far, by Arrhenius with an activation energy in kJ/mol.
 *  For warning only: outside the powder's own window the film may never cure, whatever the minutes say.
 *  @example equivalentMinutes({ minutes: 20, celsius: 176.67 }, 204.44, 62) //=> 7.6… */
export const equivalentMinutes = ({ minutes, celsius }: Cure, at: Celsius, activation: number): Minutes =>
  minutes * Math.exp(((activation * 1000) / GAS_CONSTANT) * (1 / kelvinOf(at) - 1 / kelvinOf(celsius)));

/** The activation energy in kJ/mol that makes two cures of one powder sheet equal; NaN when they name one temperature. */
export const activationOf = (one: Cure, other: Cure): number =>
  (GAS_CONSTANT * Math.log(other.minutes / one.minutes)) /
  (1 / kelvinOf(other.celsius) - 1 / kelvinOf(one.celsius)) /
  1000;

/** A cure measured against the powder's sheet: its minutes carried to the sheet's temperature, and what to warn of. */
export type CureCheck = Readonly<{ equivalentMinutes: Minutes; verdict: 'short' | 'enough' | 'long' }>;

/** Whether a bake falls short of what the sheet asks, or goes past the overbake allowed. */
export function checkCure(given: Cure, sheet: Cure, { activation, overbake }: OvenSettings): CureCheck {
  const minutes = equivalentMinutes(given, sheet.celsius, activation);
  const verdict = minutes < sheet.minutes ? 'short' : minutes > sheet.minutes * overbake ? 'long' : 'enough';
  return { equivalentMinutes: minutes, verdict };
}
