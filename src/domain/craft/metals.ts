/** The metals a jig head is made of. `Zn` is the caster's zinc, die-casting alloy no. 3 (ASTM B86 AG40A), not pure zinc. */
export const ELEMENTS = ['Pb', 'Sb', 'Sn', 'Bi', 'Zn'] as const;
export type Element = (typeof ELEMENTS)[number];
export type ByElement<T> = Readonly<Record<Element, T>>;

/** Shares of the mass by element; they add up to 1. @example const hardLead: Composition = { Pb: 0.96, Sb: 0.04 } */
export type Composition = Readonly<Partial<Record<Element, number>>>;

export const PURE_LEAD: Composition = { Pb: 1 };

/** What the heat and weight arithmetic needs to know of a metal, at 20–27 °C. */
type Properties = Readonly<{
  /** g/cm³ */
  density: number;
  /** J/(kg·K) */
  specificHeat: number;
  /** W/(m·K) */
  conductivity: number;
}>;

/** Lead: Mechanical Engineers' Handbook vol. 4, "Heat-Transfer Fundamentals", Table 1 (11 340 kg/m³, 129, 35.3).
 *  Tin: the same table for 227 and 66.6; density 7.287 from memory of the CRC Handbook (the table prints 7.31).
 *  Bismuth: 122 J/(kg·K) from a published element table; density and conductivity from memory of the CRC Handbook.
 *  Antimony: from memory of the CRC Handbook. Zinc alloy no. 3: die-casters' data pages (6.6, 419); conductivity from memory. */
const PROPERTIES: ByElement<Properties> = {
  Pb: { density: 11.34, specificHeat: 129, conductivity: 35.3 },
  Sb: { density: 6.697, specificHeat: 207, conductivity: 24.4 },
  Sn: { density: 7.287, specificHeat: 227, conductivity: 66.6 },
  Bi: { density: 9.79, specificHeat: 122, conductivity: 7.97 },
  Zn: { density: 6.6, specificHeat: 419, conductivity: 113 },
};

/** Density in g/cm³ by the mixture rule 1/ρ = Σ wᵢ/ρᵢ, near 20 °C.
 *  Within 0.1 % of handbook values for antimonial lead and bismuth-tin; it ignores pores and shrinkage.
 *  @example density({ Pb: 0.96, Sb: 0.04 }) //=> 11.03… */
export const density = (composition: Composition): number =>
  1 / sumOver(composition, (element, share) => share / PROPERTIES[element].density);

/** Specific heat in J/(kg·K), the mass-weighted mean; good to a few per cent from room to baking temperature. */
export const specificHeat = (composition: Composition): number =>
  sumOver(composition, (element, share) => share * PROPERTIES[element].specificHeat);

/** Conductivity in W/(m·K) of the poorest conductor present, which makes a Biot check err towards caution. */
export const leastConductivity = (composition: Composition): number =>
  Math.min(...elementsIn(composition).map((element) => PROPERTIES[element].conductivity));

/** Heat held by a cubic metre, ρc in J/(m³·K). */
export const volumetricHeat = (composition: Composition): number =>
  density(composition) * 1000 * specificHeat(composition);

/** Share of lead by mass, 0 to 1. @example leadShare({ Bi: 0.58, Sn: 0.42 }) //=> 0 */
export const leadShare = (composition: Composition): number => composition.Pb ?? 0;

/** Elements of which any is present, in the order of the table. */
export const elementsIn = (composition: Composition): readonly Element[] =>
  ELEMENTS.filter((element) => (composition[element] ?? 0) > 0);

function sumOver(composition: Composition, term: (element: Element, share: number) => number): number {
  return elementsIn(composition).reduce((sum, element) => sum + term(element, composition[element] ?? 0), 0);
}

/** Grams of another metal that fill the same space, shrinkage ignored.
 *  @example recast(100, PURE_LEAD, { Bi: 0.58, Sn: 0.42 }) //=> 75.4… */
export const recast = (grams: number, from: Composition, to: Composition): number =>
  (grams * density(to)) / density(from);
