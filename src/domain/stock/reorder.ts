/** How much of an item to order at a time: √(2DS/H), where D is used in a year, S an order costs and H a piece costs to keep a year.
 *  Nothing when nothing is used; infinite when keeping costs nothing.
 *  @example orderQuantity({ yearly: 1000, perOrder: 10, keeping: 0.5 }) //=> 200 */
export const orderQuantity = ({ yearly, perOrder, keeping }: OrderTerms): number =>
  yearly <= 0 ? 0 : Math.sqrt((2 * yearly * perOrder) / keeping);

/** Demand a year, the cost of an order, and of one piece kept a year, in one currency. */
export type OrderTerms = Readonly<{ yearly: number; perOrder: number; keeping: number }>;

/** Demand a unit of time with its deviation, the lead time in that unit with its own, and how often a delivery should come in time. */
export type ReorderTerms = Readonly<{ demand: number; sigma: number; lead: number; leadSigma: number; z: number }>;

/** The stock to reorder at: what the lead time uses, and a reserve against demand and supplier: d·L + z·√(L·σ² + d²·σ_L²).
 *  @example reorderPoint({ demand: 60, sigma: 0, lead: 6, leadSigma: 2, z: 1.28 }) //=> 513.6 */
export const reorderPoint = (terms: ReorderTerms): number => terms.demand * terms.lead + safetyStock(terms);

/** The reserve alone. */
export const safetyStock = ({ demand, sigma, lead, leadSigma, z }: ReorderTerms): number =>
  z * Math.sqrt(lead * sigma ** 2 + (demand * leadSigma) ** 2);

/** The deviations above the mean that a normal chance stays below with this probability, 0.5 to 1.
 *  Abramowitz & Stegun 26.2.23, off by less than 0.00045. @example normalQuantile(0.95) //=> 1.645… */
export function normalQuantile(probability: number): number {
  const t = Math.sqrt(-2 * Math.log(1 - probability));
  const over = 2.515517 + 0.802853 * t + 0.010328 * t ** 2;
  const under = 1 + 1.432788 * t + 0.189269 * t ** 2 + 0.001308 * t ** 3;
  return t - over / under;
}
