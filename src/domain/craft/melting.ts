import { z } from 'zod';
import { ELEMENTS, type Composition, type Element } from './metals.ts';
import type { Celsius } from './temperature.ts';

/** A share of an element up to which it changes no melting point: about what refined ingot carries as an impurity (common practice, no source). */
export const TRACE = 0.001;

/** Where melting begins as soon as every listed element is above its share. */
type Row = Readonly<{ above: Partial<Readonly<Record<Element, number>>>; celsius: Celsius }>;

const withAny = (celsius: Celsius, ...elements: readonly Element[]): Row => ({
  above: Object.fromEntries(elements.map((element) => [element, TRACE])),
  celsius,
});

/** CRC = CRC Handbook of Chemistry and Physics, §15 p. 15-18, "Metals and Alloys with Low Melting Temperature". */
const ROWS: readonly Row[] = [
  withAny(327.46, 'Pb'), // encyclopedia lead data page, 600.61 K
  withAny(231.93, 'Sn'), // published element-properties page
  withAny(271.4, 'Bi'), // from memory, CRC
  withAny(630.6, 'Sb'), // from memory, CRC
  withAny(381, 'Zn'), // alloy no. 3, die-casters' data pages
  withAny(313, 'Pb', 'Sb'), // up to 1 % antimony: from memory, ASM Handbook vol. 2
  { above: { Pb: TRACE, Sb: 0.01 }, celsius: 252 }, // the lead-antimony eutectic, encyclopedia page on hard lead
  withAny(183, 'Pb', 'Sn'), // CRC
  withAny(138.5, 'Bi', 'Sn'), // CRC
  withAny(124, 'Bi', 'Pb'), // CRC
  withAny(95, 'Bi', 'Pb', 'Sn'), // CRC
  withAny(318, 'Pb', 'Zn'), // this and the rest from memory of published phase diagrams
  withAny(254, 'Bi', 'Zn'),
  withAny(198, 'Sn', 'Zn'),
  withAny(177, 'Pb', 'Sn', 'Zn'),
  withAny(130, 'Bi', 'Sn', 'Zn'),
];

/** The temperature in °C at which a metal may begin to melt: the lowest of all rows that apply to what is in it.
 *  That is a floor, not the equilibrium solidus: a little tin in lead freezes last and at the eutectic, so any amount above
 *  a trace counts, and antimony between two table rows takes the lower one. Throws when no element is above a trace.
 *  @example solidus({ Bi: 0.58, Sn: 0.42 }) //=> 138.5 */
export function solidus(composition: Composition): Celsius {
  const lowest = Math.min(...ROWS.filter((row) => applies(row, composition)).map(({ celsius }) => celsius));
  if (!Number.isFinite(lowest)) throw new Error('A composition must name at least one metal.');
  return lowest;
}

const applies = ({ above }: Row, composition: Composition): boolean =>
  ELEMENTS.every((element) => above[element] === undefined || (composition[element] ?? 0) > above[element]);

/** What keeps a bake safely below melting; starting values are common practice, no source. */
export const bakeGuardSettings = z.strictObject({
  /** How far the oven may swing above its setting, °C; 15 for a small oven. */
  overshootCelsius: z.number().min(0).default(15),
  /** How far below the solidus the metal must stay, °C; 25. */
  marginCelsius: z.number().min(0).default(25),
});
export type BakeGuard = Readonly<z.infer<typeof bakeGuardSettings>>;

/** The highest oven setting in °C at which a metal of this solidus may be baked. */
export const hottestBake = (solidusC: Celsius, { overshootCelsius, marginCelsius }: BakeGuard): Celsius =>
  solidusC - marginCelsius - overshootCelsius;

/** Whether a metal of this solidus may be baked at this oven setting, °C.
 *  @example bakeable(138.5, 177, { overshootCelsius: 15, marginCelsius: 25 }) //=> false */
export const bakeable = (solidusC: Celsius, ovenC: Celsius, guard: BakeGuard): boolean =>
  ovenC <= hottestBake(solidusC, guard);
