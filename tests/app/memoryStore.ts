import { NotRecorded, type Store } from '../../src/app/store.ts';

/** A store in memory alone. `failing` makes the next so many writes fail. */
export function memoryStore<T>(first: T) {
  let value = first;
  let failing = 0;
  let writes = 0;
  const change: Store<T>['change'] = async (step) => {
    const { next, result } = step(value);
    if (next === value) return result;
    if (failing > 0) {
      failing -= 1;
      throw new NotRecorded('ENOSPC');
    }
    writes += 1;
    value = next;
    return result;
  };
  return {
    read: () => value,
    change,
    failNext: (count: number) => void (failing = count),
    writes: () => writes,
  };
}
