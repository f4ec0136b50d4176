import { clipped } from '../clip.ts';
import type { EveningWords } from '../eveningWords.ts';
import type { Voice } from '../voice.ts';

/** What the buyer typed, newest last; where it is long its beginning, which says most. */
export const buyerSaid = (
  said: readonly string[],
  most: number,
  voice: Voice,
  { buyerSaid: words }: EveningWords,
): string | null => (said.length === 0 ? null : clipped(words(said.map(voice.terms.quote).join(' ')), most));
