// Every index used here lies inside its array by construction. One reader for each sort of array keeps each fast.
export const int = (array: Int32Array, index: number): number => array[index] as number;
export const num = (array: Float64Array, index: number): number => array[index] as number;
export const item = (array: readonly number[], index: number): number => array[index] as number;

/** The first index whose value is at least `value` in a rising list; its length when none is. */
export function firstAtLeast(sorted: readonly number[], value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
