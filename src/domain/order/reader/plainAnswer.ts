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
/** Single words that say enough to the question they answer. */
const WORDS: Readonly<Partial<Record<Asked, Readonly<Record<string, LineWords>>>>> = {
  paint: { plain: { paint: BARE }, naked: { paint: BARE }, simple: { paint: BARE } },
  dressing: { naked: { dressing: NONE }, bare: { dressing: NONE } },
  weight: { half: { weight: '1/2' }, 'a half': { weight: '1/2' }, media: { weight: '1/2' } },
  keeper: { wire: { keeper: 'wire' }, alambre: { keeper: 'wire' } },
};
const AGREED: Readonly<Partial<Record<Asked, LineWords>>> = { guard: { guard: 'yes' }, keeper: { keeper: 'wire' } };

/** What a bare yes, no or other single word says to the question that was asked; undefined when it is more than that, or says nothing to it.
 *  @example plainAnswer('None.', 'guard') //=> { guard: 'none' } */
export function plainAnswer(said: string, asked: Asked): LineWords | undefined {
  const bare = said
    .trim()
    .toLowerCase()
    .replace(/[.!,\s]+$/, '');
  if (NO.test(bare)) return REFUSED[asked];
  return YES.test(bare) ? AGREED[asked] : WORDS[asked]?.[bare];
}
