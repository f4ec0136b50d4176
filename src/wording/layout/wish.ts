import type { Finding } from '../../domain/order/finding.ts';
import { isWishSlot } from '../../domain/order/wish.ts';
import { paragraphs } from '../clip.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';
import { findingLines, known } from './draft.ts';

/** What the maker is asked for: a buyer's words, or a finding that only the maker can let pass, with the order as far as it is said. */
export const buyerWishes = (say: SayingOf<'buyer-wishes'>, voice: Voice, phrases: Phrases): string =>
  paragraphs(
    phrases.order.wishes(say.buyer, about(say.question.said, say.finding, voice, phrases)),
    say.draft && known(say.draft, voice, phrases.draft),
  );

export const wishSent = (say: SayingOf<'wish-sent'>, voice: Voice, phrases: Phrases): string =>
  phrases.order.wishSent(about(say.said, say.finding, voice, phrases));

export function wishAnswered(
  { said, slot, cents }: SayingOf<'wish-answered'>,
  voice: Voice,
  { order: words }: Phrases,
): string {
  const what = isWishSlot(slot) || cents === null ? voice.terms.quote(said) : '';
  if (cents === null) return words.denied(what);
  return words.granted(what, cents > 0 ? voice.money(cents) : null);
}

function about(said: string, finding: Finding | null, voice: Voice, phrases: Phrases): string {
  return finding === null ? voice.terms.quote(said) : findingLines([finding], 1, voice, phrases);
}
