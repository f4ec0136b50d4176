import { benchTap } from './benchButtons.ts';
import type { Card, CardButton } from './card.ts';
import { wordButton } from './draftButtons.ts';
import type { Digest } from './facts.ts';
import { orderButton } from './orderButtons.ts';

/** Buttons for single orders and questions, of each so many. */
const MOST = 3;

/** The digest with what stands behind it: each order in danger or to be cancelled, an answer to each question, and the lists that it shortens. */
export const digestCard = (digest: Digest): Pick<Card, 'say' | 'rows'> => ({
  say: { code: 'digest', digest },
  rows: [
    digest.danger.slice(0, MOST).map(({ order }): CardButton => orderButton(order)),
    digest.cancels.slice(0, MOST).map(orderButton),
    digest.questions.slice(0, MOST).map(({ id }): CardButton => wordButton('reply', benchTap('reply', id))),
    [wordButton('bench', benchTap('bench')), wordButton('queue', benchTap('queue'))],
    [wordButton('timers', benchTap('timers')), wordButton('stock', benchTap('stock'))],
    [wordButton('week', benchTap('week'))],
  ].filter((row) => row.length > 0),
});
