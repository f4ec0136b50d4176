import { z } from 'zod';
import { sphereLength, volumeOf, type Casting } from './casting.ts';
import { leastConductivity, PURE_LEAD, volumetricHeat } from './metals.ts';
import type { Celsius } from './temperature.ts';
import { grams, parseWeight } from './weight.ts';

/** A body small enough to be at one temperature throughout, in SI units: ρc J/(m³·K), k W/(m·K), volume over surface m. */
export type Body = Readonly<{ volumetricHeat: number; conductivity: number; length: number }>;

/** Below this Biot number one temperature describes the whole body (Incropera & DeWitt, ch. 5). */
export const BIOT_LIMIT = 0.1;

/** A head as the sphere of its mass: the slowest shape, so times err long. */
export const bodyOf = (casting: Casting): Body => ({
  volumetricHeat: volumetricHeat(casting.composition),
  conductivity: leastConductivity(casting.composition),
  length: sphereLength(casting),
});

/** Biot number hL/k for a film coefficient in W/(m²·K). */
export const biot = ({ length, conductivity }: Body, film: number): number => (film * length) / conductivity;

/** Whether the lumped model may be used: Biot number at most 0.1. */
export const isLumped = (body: Body, film: number): boolean => biot(body, film) <= BIOT_LIMIT;

/** Time constant ρcL/h in seconds (Incropera & DeWitt, eq. 5.7). Free air 2–25, forced air 25–250 W/(m²·K). */
export const timeConstant = (body: Body, film: number): number => (body.volumetricHeat * body.length) / film;

/** Where a heating or cooling goes, °C. */
export type Course = Readonly<{ start: Celsius; air: Celsius; target: Celsius }>;

/** Time constants needed to reach the target, ln[(T∞ − T₀)/(T∞ − T)]: 0 when it is already passed, undefined when the air never brings it there.
 *  @example constantsToReach({ start: 25, air: 200, target: 199 }) //=> 5.16… */
export function constantsToReach({ start, air, target }: Course): number | undefined {
  if ((target - air) * (start - air) <= 0) return start === target ? 0 : undefined;
  return Math.max(0, Math.log((air - start) / (air - target)));
}

/** Seconds to reach the target with this time constant; undefined when it is never reached. Lumped bodies only. */
export function secondsToReach(tau: number, course: Course): number | undefined {
  const constants = constantsToReach(course);
  return constants === undefined ? undefined : tau * constants;
}

/** The temperature in °C after so many seconds in the air. */
export const temperatureAfter = (tau: number, { start, air }: Omit<Course, 'target'>, seconds: number): Celsius =>
  air + (start - air) * Math.exp(-seconds / tau);

/** How a head is heated before the powder dip; every starting value is common practice, no source, and set by the maker's own trial. */
export const heatSettings = z.strictObject({
  /** The head of soft lead the maker knows the count of: `3/8`, 20 to 25 seconds. */
  reference: z
    .strictObject({
      weight: z.string().refine((said) => parseWeight(said) === said, 'an exact fraction of an ounce in lowest terms'),
      from: z.number().positive(),
      to: z.number().positive(),
    })
    .refine(({ from, to }) => from <= to, 'a count that ends no lower than it begins')
    .default({ weight: '3/8', from: 20, to: 25 }),
  /** How the count grows with size: 1/3 by the physics of one film coefficient, up to 1/2 in a blown stream. */
  exponent: z
    .number()
    .min(0.2)
    .max(0.7)
    .default(1 / 3),
  /** The garage when the reference was found, °C; 20. */
  garageCelsius: z.number().default(20),
  /** The hot air, °C; 300. */
  airCelsius: z.number().default(300),
  /** What the head should reach, °C; 116. Powder melts at 82–116 °C (finishing trade magazine, "Proper Metal Temperature for Application"). */
  targetCelsius: z.number().default(116),
});
export type HeatSettings = Readonly<z.infer<typeof heatSettings>>;

/** Seconds, or counts spoken at one a second. */
export type Count = Readonly<{ from: number; to: number }>;

/** What changes a count besides the head: the paint's own factor (1 for most) and the garage now, °C. */
export type Dip = Readonly<{ paintFactor: number; garageCelsius: Celsius }>;

/** The count to hold a head in the heat before the dip, whole seconds, at least 1; undefined when the air is too cool to get there.
 *  Same shape assumed: flatter heads are quicker. The hook's heat is left out.
 *  @example heatCount({ grams: 10.63, composition: { Pb: 1 } }, { paintFactor: 1, garageCelsius: 20 }, heatSettings.parse({})) //=> { from: 20, to: 25 } */
export function heatCount(casting: Casting, dip: Dip, settings: HeatSettings): Count | undefined {
  const garage = garageFactor(dip.garageCelsius, settings);
  if (garage === undefined) return undefined;
  const factor = headFactor(casting, settings) * dip.paintFactor * garage;
  const { from, to } = settings.reference;
  return { from: wholeCount(from * factor), to: wholeCount(to * factor) };
}

const wholeCount = (seconds: number): number => Math.max(1, Math.round(seconds));

/** A head's count over the reference's: τ = ρcV/(hA) goes as ρc times a power of the volume.
 *  @example headFactor({ grams: 8 * 10.631, composition: { Pb: 1 } }, heatSettings.parse({})) //=> 2.00… */
export function headFactor(casting: Casting, { reference, exponent }: HeatSettings): number {
  const known: Casting = { grams: grams(reference.weight), composition: PURE_LEAD };
  const heat = volumetricHeat(casting.composition) / volumetricHeat(known.composition);
  return heat * (volumeOf(casting) / volumeOf(known)) ** exponent;
}

/** How much longer a colder garage makes the count; below 1 in a warmer one, 0 where it is as hot as the target. */
export function garageFactor(garageCelsius: Celsius, settings: HeatSettings): number | undefined {
  const course = { air: settings.airCelsius, target: settings.targetCelsius };
  const now = constantsToReach({ ...course, start: garageCelsius });
  const then = constantsToReach({ ...course, start: settings.garageCelsius });
  return now === undefined || !then ? undefined : now / then;
}
