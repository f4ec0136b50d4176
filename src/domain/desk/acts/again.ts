import { isBlank } from '../../order/draft.ts';
import { asDraftLine } from '../../order/refer.ts';
import { turned } from '../../order/talk.ts';
import { proceed } from '../ask.ts';
import type { Tap } from '../tap.ts';
import type { Decision, Turn } from '../turn.ts';
import { SURE } from '../orderButtons.ts';
import { draftOf, opened } from './draft.ts';
import { askToDrop } from './greet.ts';
import { noSuchOrder } from './orders.ts';

/** A new draft with the lines of one of the sender's own past orders, checked and priced as things stand now. It takes the place of an open draft only after a yes. */
export function again(turn: Turn, tap: Tap): Decision {
  const past = turn.by.past.find(({ order }) => order === tap.on);
  if (past === undefined) return noSuchOrder(turn, tap.on);
  const open = draftOf(turn);
  if (open !== undefined && !isBlank(open) && tap.arg !== SURE) return askToDrop(turn, open, past.order);
  const [at, draft] = opened(turn);
  return proceed(
    at,
    turned({ ...draft, lines: past.lines.map(asDraftLine), shipTo: turn.by.place }, turn.now),
    'below',
  );
}
