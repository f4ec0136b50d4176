import { choicesFor } from '../../order/choices.ts';
import { currentLine } from '../../order/draft.ts';
import type { Enquiry } from '../../order/enquiry.ts';
import { nextAsk } from '../../order/next.ts';
import { draftTap, wordButton } from '../draftButtons.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { draftOf, newButton } from './draft.ts';

/** The shop's range of a slot: all of it, or what goes with the head that is being talked about. The draft stays as it is. */
export function answerEnquiry(turn: Turn, { about }: Enquiry): Decision {
  const { world, desk, by } = turn;
  const draft = draftOf(turn);
  const spec = draft ? { ...currentLine(draft).spec, [about]: undefined } : {};
  const all = choicesFor(world.shop, {}, about);
  const fitting = choicesFor(world.shop, spec, about);
  const open = draft !== undefined && nextAsk(world.shop, draft) !== undefined;
  const rows = open ? [[wordButton('keep-on', draftTap(draft, 'keep-on'))]] : draft ? [] : [[newButton()]];
  return says(
    desk,
    card(by.id, { code: 'range', about, all, fitting: fitting.length < all.length ? fitting : null }, { rows }),
  );
}
