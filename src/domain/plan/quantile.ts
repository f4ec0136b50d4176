/** The p-quantile of a sample by linear interpolation, type 7 of Hyndman and Fan 1996. Throws on an empty sample.
 *  @example quantile([15, 20, 35, 40, 50], 0.4) //=> 29 */
export function quantile(sample: readonly number[], p: number): number {
  const sorted = [...sample].sort((a, b) => a - b);
  const height = (sorted.length - 1) * Math.min(1, Math.max(0, p));
  const below = sorted[Math.floor(height)];
  const above = sorted[Math.ceil(height)];
  if (below === undefined || above === undefined) throw new Error('a quantile needs a sample');
  // Equal neighbours also when both are Infinity.
  return below === above ? below : below + (height - Math.floor(height)) * (above - below);
}
