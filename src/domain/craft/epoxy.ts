import { z } from 'zod';
import type { Celsius } from './temperature.ts';

/** The glue that holds a guard; starting values are common practice, no source, unless said. */
export const epoxySettings = z.strictObject({
  /** Minutes from mixing to gel at `atCelsius`; 5, which is what "5-minute" names (adhesives trade magazine, Nov 2013). */
  potLifeMinutes: z.number().positive().default(5),
  /** Hours to full cure at `atCelsius`; 24 (same page). */
  cureHours: z.number().positive().default(24),
  /** Hours after which the maker handles a head, full cure or not; 10. */
  overnightHours: z.number().positive().default(10),
  /** The temperature both are quoted at, °C; 23. */
  atCelsius: z.number().default(23),
  /** °C by which the cure halves or doubles; 10 ("How Epoxy Pot Life Changes with Temperature"). */
  doublingCelsius: z.number().positive().default(10),
  /** Below this it may never cure through, °C; 10 (10–15 from memory of typical data sheets). */
  leastCelsius: z.number().default(10),
  /** Share of the pot life in which guards are still set; 0.8. */
  usableShare: z.number().positive().max(1).default(0.8),
  /** Seconds to set one guard; 18. */
  secondsAGuard: z.number().positive().default(18),
  /** Glue a guard, cm³; 0.03 (0.02–0.05). */
  guardCm3: z.number().positive().default(0.03),
});
export type EpoxySettings = Readonly<z.infer<typeof epoxySettings>>;

/** Minutes from mixing to gel at a temperature; doubles every 10 °C colder. Small mixes: a cupful heats itself and gels sooner. */
export const potLife = (celsius: Celsius, settings: EpoxySettings): number =>
  settings.potLifeMinutes * slowing(celsius, settings);

/** How much slower than at the quoted temperature. */
const slowing = (celsius: Celsius, { atCelsius, doublingCelsius }: EpoxySettings): number =>
  2 ** ((atCelsius - celsius) / doublingCelsius);

/** Guards that one mix sets while it still flows, at least one. @example guardsPerMix(23, epoxySettings.parse({})) //=> 13 */
export const guardsPerMix = (celsius: Celsius, settings: EpoxySettings): number =>
  Math.max(1, Math.floor((potLife(celsius, settings) * 60 * settings.usableShare) / settings.secondsAGuard + 1e-9));

export type TooCold = Readonly<{ ok: false; code: 'epoxy-too-cold'; celsius: Celsius; leastCelsius: Celsius }>;

export type CureTime = Readonly<{ ok: true; fullHours: number; overnightHours: number }> | TooCold;

/** Hours to full cure at a temperature, and the maker's overnight, which is another time; refused below the least temperature.
 *  @example cureTime(15, epoxySettings.parse({})) //=> { ok: true, fullHours: 41.78…, overnightHours: 10 } */
export function cureTime(celsius: Celsius, settings: EpoxySettings): CureTime {
  const { leastCelsius, overnightHours, cureHours } = settings;
  if (celsius < leastCelsius) return { ok: false, code: 'epoxy-too-cold', celsius, leastCelsius };
  return { ok: true, fullHours: cureHours * slowing(celsius, settings), overnightHours };
}

/** How a lot's guards are glued. */
export type GluePlan =
  | Readonly<{
      ok: true;
      mixes: number;
      guardsPerMix: number;
      /** Until a mix stops flowing. */
      potLifeMinutes: number;
      cm3PerMix: number;
      cm3: number;
      fullHours: number;
      overnightHours: number;
    }>
  | TooCold;

/** The mixes, glue and hours for so many guards in a garage at this temperature. */
export function gluePlan(guards: number, celsius: Celsius, settings: EpoxySettings): GluePlan {
  const cure = cureTime(celsius, settings);
  if (!cure.ok) return cure;
  const each = guardsPerMix(celsius, settings);
  return {
    ...cure,
    mixes: Math.ceil(guards / each),
    guardsPerMix: each,
    potLifeMinutes: potLife(celsius, settings),
    cm3PerMix: Math.min(each, guards) * settings.guardCm3,
    cm3: guards * settings.guardCm3,
  };
}

/** Volume in cm³ of a guard's hole of this diameter and depth in inches; its fibres fill 80–90 % of it (common practice, no source).
 *  @example holeVolume(1 / 8, 0.3) //=> 0.0603… */
export const holeVolume = (diameterInches: number, depthInches: number): number =>
  (Math.PI / 4) * diameterInches ** 2 * depthInches * CM3_PER_CUBIC_INCH;

const CM3_PER_CUBIC_INCH = 2.54 ** 3;

/** A stretch of a cure at one temperature. */
export type Spell = Readonly<{ hours: number; celsius: Celsius }>;

/** The share of a full cure that the spells have done, 0 to 1; a spell below the least temperature does nothing. */
export const cureDone = (spells: readonly Spell[], settings: EpoxySettings): number =>
  Math.min(
    1,
    spells.reduce((sum, spell) => sum + shareOf(spell, settings), 0),
  );

function shareOf({ hours, celsius }: Spell, settings: EpoxySettings): number {
  const cure = cureTime(celsius, settings);
  return cure.ok ? hours / cure.fullHours : 0;
}

/** Hours still to full cure when the garage is now at this temperature: what a running cure is recomputed with. */
export function cureLeft(spells: readonly Spell[], celsius: Celsius, settings: EpoxySettings): CureTime {
  const cure = cureTime(celsius, settings);
  if (!cure.ok) return cure;
  const passed = spells.reduce((sum, { hours }) => sum + hours, 0);
  return {
    ok: true,
    fullHours: cure.fullHours * (1 - cureDone(spells, settings)),
    overnightHours: Math.max(0, cure.overnightHours - passed),
  };
}
