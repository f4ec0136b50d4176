import { offered, parseOffer, passedBy, type Offer } from '../../bench/offer.ts';
import type { Ready } from '../../bench/session.ts';
import { bakingSession, begin } from '../bench.ts';
import { readyAt } from '../benchWork.ts';
import { benchTap, runningButtons, startButton } from '../benchButtons.ts';
import { wordButton } from '../draftButtons.ts';
import { news } from '../news.ts';
import type { Tap } from '../tap.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { remember } from '../undo.ts';
import { caredFor, workFacts } from '../work.ts';
import { sessionCard, showSession } from './bench.ts';

/** Starts the work that a button names, as it was named: once its heads have moved on, or others have come to them, it starts nothing. */
export function start(turn: Turn, tap: Tap): Decision {
  const { world, desk, now } = turn;
  const ready = readyAt(world.shop, desk, now);
  const offer = parseOffer(tap.arg);
  const work = offer && offered(ready, offer);
  return work === undefined ? passed(turn, offer, ready) : begun(turn, work);
}

function begun(turn: Turn, work: Ready): Decision {
  const { world, desk, now } = turn;
  const baking = bakingSession(desk);
  if (work.step === 'bake' && baking)
    return says(desk, sessionCard(turn, { code: 'oven-taken', session: baking }, baking));
  const { desk: after, session } = begin(world.shop, desk, work, now);
  const facts = workFacts(world.shop, after, session, now);
  if (facts.tooColdBelow !== null) return says(desk, card(turn.by.id, { code: 'too-cold', below: facts.tooColdBelow }));
  const cared = remember(desk, caredFor(world.shop, after, session, now), `start/${session.step}`, now);
  return news(turn, desk, {
    ...says(cared, showSession({ ...turn, desk: cared }, session, facts, 'below')),
    toast: 'done',
  });
}

/** What a button named is not there to be started: why, and what can be started now. */
function passed({ desk, by }: Turn, offer: Offer | undefined, ready: readonly Ready[]): Decision {
  const running = Object.values(desk.sessions).filter(({ shares }) => shares.some(({ lot }) => lot === offer?.lot));
  const say = {
    code: 'start-passed',
    offer: offer ?? null,
    why: offer === undefined ? 'other' : passedBy(desk.lots[offer.lot], offer),
    ready,
  } as const;
  const rows = [
    ...running.map(runningButtons),
    ...ready.map((work) => [startButton(work)]),
    [wordButton('bench', benchTap('bench'))],
  ];
  return { ...says(desk, card(by.id, say, { rows })), toast: 'stale' };
}
