import type { Draft } from '../../order/draft.ts';
import { turned } from '../../order/talk.ts';
import { proceed } from '../ask.ts';
import { askedOf } from '../quoting.ts';
import { soonerWays } from '../sooner.ts';
import type { Decision, Turn } from '../turn.ts';

/** Makes the draft what would be there by the day asked for, in the way that was tapped. */
export function takeSooner(turn: Turn, draft: Draft, arg: string): Decision {
  const { world, desk, now } = turn;
  const asked = askedOf(world.shop, draft);
  const ways = asked === undefined || draft.needBy === null ? [] : soonerWays(world, desk, asked, draft.needBy, now);
  const found = ways.find(({ way }) => way === arg);
  if (found === undefined) return { ...proceed(turn, draft, 'over'), toast: 'stale' };
  if (found.way === 'rush') return proceed(turn, turned({ ...draft, rush: true }, now), 'over');
  const lines = draft.lines.map((line, at) => {
    const sooner = found.lines[at];
    return sooner === undefined ? line : { ...line, spec: sooner.spec, quantity: sooner.quantity, wantsGuard: false };
  });
  return proceed(turn, turned({ ...draft, lines }, now), 'over');
}
