import type { Ready } from '../domain/bench/session.ts';
import { capital } from './clip.ts';
import { headName, valueName } from './names.ts';
import type { Voice } from './voice.ts';

/** A step with what its work is shared by: "Pour 1/4 oz ball head, lead", "Paint green pumpkin", "Bake 350°F", "Trim". */
export function workName(
  voice: Voice,
  { step, family }: Readonly<{ step: Ready['step'] | string; family: string }>,
): string {
  const shared = sharedName(voice, step, family);
  const name = (voice.terms.steps as Readonly<Record<string, string>>)[step] ?? step;
  return capital(shared === null ? name : voice.terms.shared(name, shared));
}

function sharedName(voice: Voice, step: string, family: string): string | null {
  if (family === '-') return null;
  if (step === 'pour') return castName(voice, family);
  if (step === 'paint') return valueName(voice, 'paint', family);
  return step === 'bake' ? voice.temperature(voice.shop.oven.celsius) : family;
}

/** A mold, a weight and a metal are joined by dashes, and ids may hold dashes themselves: so it is looked for, not taken apart. */
function castName(voice: Voice, family: string): string {
  const { molds, metals } = voice.shop;
  for (const { id, style, cavities } of molds)
    for (const { weight } of cavities)
      for (const metal of metals)
        if (family === `${id}-${weight}-${metal.id}`)
          return `${headName(voice, { style, weight })}, ${valueName(voice, 'metal', metal.id)}`;
  return family;
}
