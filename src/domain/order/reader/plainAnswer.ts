import { BARE, NONE } from '../../shop/words.ts';
import type { Asked } from './quantities.ts';
import type { LineWords } from './reading.ts';

/** Words that refuse or agree when they are all that is said, in English and Spanish. */
const NO =
  /^(?:no|none|nope|nah|nothing|without|neither|no thanks|no thank you|none please|ninguno|ninguna|nada|sin|no gracias)$/;
const YES = /^(?:yes|yep|yeah|sure|yes please|please|sí|si|claro|vale)$/;

const REFUSED: Readonly<Partial<Record<Asked, LineWords>>> = {
  guard: { guard: NONE },
  dressing: { dressing: NONE },
  keeper: { keeper: NONE },
  paint: { paint: BARE },
};
const AGREED: Readonly<Partial<Record<Asked, LineWords>>> = { guard: { guard: 'yes' }, keeper: { keeper: 'wire' } };

/** What a bare yes or no says to the question that was asked; undefined when it is more than that, or says nothing to it.
 *  @example plainAnswer('None.', 'guard') //=> { guard: 'none' } */
export function plainAnswer(said: string, asked: Asked): LineWords | undefined {
  const bare = said
    .trim()
    .toLowerCase()
    .replace(/[.!,\s]+$/, '');
  if (NO.test(bare)) return REFUSED[asked];
  return YES.test(bare) ? AGREED[asked] : undefined;
}
