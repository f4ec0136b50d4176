import { emptyLine, type DraftLine } from '../../order/draft.ts';
import { turned } from '../../order/talk.ts';
import { proceed } from '../ask.ts';
import type { Tap } from '../tap.ts';
import type { Decision, Turn } from '../turn.ts';
import { opened } from './draft.ts';
import { noSuchOrder } from './orders.ts';

/** A new draft with the lines of one of the sender's own past orders, checked and priced as things stand now. It takes the place of an open draft. */
export function again(turn: Turn, tap: Tap): Decision {
  const past = turn.by.past.find(({ order }) => order === tap.on);
  if (past === undefined) return noSuchOrder(turn, tap.on);
  const [at, draft] = opened(turn);
  const lines = past.lines.map(({ spec, quantity }): DraftLine => ({ ...emptyLine, spec, quantity }));
  return proceed(at, turned({ ...draft, lines, shipTo: turn.by.place }, turn.now), 'below');
}
