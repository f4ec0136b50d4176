import type { Step } from '../shop/words.ts';
import type { Amounts } from './needs.ts';

/** The step at which each kind of material is used up. */
const USED_AT: Readonly<Record<string, Step>> = {
  metal: 'pour',
  hook: 'pour',
  keeper: 'pour',
  paint: 'paint',
  guard: 'guard',
  epoxy: 'guard',
  dressing: 'dress',
  bag: 'pack',
  label: 'pack',
};

/** What a step takes of a lot's share, and what is left of it afterwards. */
export function usedAt(step: Step, reserved: Amounts): Readonly<{ used: Amounts; left: Record<string, number> }> {
  const entries = Object.entries(reserved);
  const isUsed = ([item]: readonly [string, number]): boolean => USED_AT[item.split(':')[0] ?? ''] === step;
  return {
    used: Object.fromEntries(entries.filter(isUsed)),
    left: Object.fromEntries(entries.filter((entry) => !isUsed(entry))),
  };
}
