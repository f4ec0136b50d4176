import type { Lot } from '../../bench/lot.ts';
import { sparesOut, type Ready, type Session } from '../../bench/session.ts';
import { putOff } from '../../bench/timer.ts';
import { MINUTE, type Instant } from '../../craft/time.ts';
import { finish } from '../bench.ts';
import { inWorkingOrder } from '../inOrder.ts';
import { beyondCount, readyAt, shortAt } from '../benchWork.ts';
import { benchTap, runningButtons, sessionSlot, startButton, sessionButtons } from '../benchButtons.ts';
import { lotPhotos, saidOf } from '../buyersLine.ts';
import { inRows, wordButton } from '../draftButtons.ts';
import type { Card, CardButton } from '../card.ts';
import { headsOf } from '../sessionPicture.ts';
import type { LetGo, WorkFacts } from '../facts.ts';
import type { Desk, Undo } from '../state.ts';
import type { Tap } from '../tap.ts';
import { timerFacts } from '../telling.ts';
import { remember, takenBack } from '../undo.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';
import { workFacts } from '../work.ts';
import { news } from '../news.ts';

/** What can be started, what runs, and the timers. */
export function bench(turn: Turn): Decision {
  return says(turn.desk, benchCard(turn));
}

export function benchCard({ world, desk, by, now }: Turn): Card {
  const lots = inWorkingOrder(desk);
  const ready = readyAt(world.shop, desk, now).map((work) => ({ ...work, short: shortAt(world.shop, desk, work) }));
  const running = Object.values(desk.sessions);
  const timers = Object.values(desk.timers).map((timer) => timerFacts(world.shop, desk, timer, now));
  const rows = [
    ...running.map((session) => runningButtons(session)),
    ...ready.map((work) => [startButton(work)]),
    [
      wordButton('timers', benchTap('timers')),
      wordButton('queue', benchTap('queue')),
      wordButton('undo', benchTap('undo')),
    ],
  ];
  return card(by.id, { code: 'bench', ready, running, lots, timers }, { rows, slot: 'bench', place: 'below' });
}

/** The card of a running session again. */
export function look(turn: Turn, tap: Tap): Decision {
  const session = turn.desk.sessions[tap.on];
  if (session === undefined) return { ...says(turn.desk, benchCard(turn)), toast: 'stale' };
  return says(turn.desk, showSession(turn, session, workFacts(turn.world.shop, turn.desk, session, turn.now), 'below'));
}

/** Work that is offered right under a step that is done, so that the next start is one tap. */
const NEXT_STARTS = 4;

/** What the heads just done come to stands first: their eyes are cleared while they are hot. */
function nextAfter({ shares }: Session, ready: readonly Ready[]): readonly Ready[] {
  const goesOn = (work: Ready): boolean => work.shares.some(({ lot }) => shares.some((share) => share.lot === lot));
  return [...ready.filter(goesOn), ...ready.filter((work) => !goesOn(work))].slice(0, NEXT_STARTS);
}

/** A session over. `arg` is `-` when all are good, `lot=scrapped` for the one lot it is about, or `spares` where heads made over wait for another load. */
export function done(turn: Turn, tap: Tap): Decision {
  const { world, desk, now } = turn;
  const session = desk.sessions[tap.on];
  if (session === undefined) return doneAgain(turn, tap) ?? { ...nothing(desk), toast: 'already' };
  const counted = withScrap(session, tap.arg);
  const { desk: after, topUps } = finish(world.shop, desk, counted, now, tap.arg === SPARES ? 'kept' : 'let-go');
  const undoable = remember(desk, after, `done/${session.step}`, now);
  const lots = session.shares.flatMap(({ lot }) => after.lots[lot] ?? []);
  const next = nextAfter(session, readyAt(world.shop, after, now));
  const letGo = tap.arg === SPARES ? [] : letGoOf(desk, counted);
  const rows = [
    ...(letGo.length === 0 ? [] : [[sparesButton(session, letGo)]]),
    ...next.map((work) => [startButton(work)]),
    [wordButton('undo', benchTap('undo')), wordButton('bench', benchTap('bench'))],
  ];
  const told = card(
    turn.by.id,
    {
      code: 'step-done',
      session: counted,
      lots,
      topUps,
      letGo,
      beyond: beyondCount(world.shop, desk, after),
    },
    { rows, slot: sessionSlot(session.id), place: 'over' },
  );
  return news(turn, desk, { ...says(undoable, told), toast: 'done' });
}

/** Says of a load that is over that its spare heads are baked after all. */
const SPARES = 'spares';

const sparesButton = (session: Session, letGo: readonly LetGo[]): CardButton => ({
  label: { code: 'bake-spares', count: letGo.reduce((sum, { heads }) => sum + heads, 0) },
  tap: benchTap('done', session.id, `again/${SPARES}`),
});

/** Heads made over that did not fit into a load. */
const letGoOf = ({ lots }: Desk, { step, shares, scrap }: Session): readonly LetGo[] =>
  shares.flatMap(({ lot: id, heads }) => {
    const lot = lots[id];
    const out = lot === undefined ? 0 : sparesOut(lot, step, heads, scrap[id] ?? 0);
    return out > 0 ? [{ lot: id, heads: out }] : [];
  });

/** Work that is over, taken back and over again with a count that was forgotten: `again/lot=scrapped`. */
export function doneAgain(turn: Turn, { on, arg, ...tap }: Tap): Decision | undefined {
  const { undo } = turn.desk;
  const forgotten = /^again\/(.+)$/.exec(arg)?.[1];
  if (forgotten === undefined || undo === null || !undo.what.startsWith('done/') || !undo.sessions[on])
    return undefined;
  const before = takenBack(turn.desk);
  if (before === undefined) return undefined;
  const over = done({ ...turn, desk: before }, { ...tap, on, arg: forgotten });
  return {
    ...over,
    cards: over.cards.map((one) => ({ ...one, place: one.say.code === 'step-done' ? 'below' : one.place })),
  };
}

/** Without a number: asks how many of one lot were scrapped. With `lot=n`: notes it and shows the session again. */
export function count(turn: Turn, tap: Tap): Decision {
  const { desk } = turn;
  const session = desk.sessions[tap.on];
  if (session === undefined) return { ...nothing(desk), toast: 'already' };
  const share = session.shares.find(({ lot }) => lot === tap.arg);
  const lot = share && desk.lots[share.lot];
  if (share && lot) {
    const rows = inRows(
      scrapChoices(share.heads).map((scrapped) => ({
        label: { code: 'scrapped', count: scrapped } as const,
        tap: benchTap('count', session.id, `${lot.id}=${scrapped}`),
      })),
      4,
    );
    return says(
      desk,
      card(
        turn.by.id,
        { code: 'count', session, lot, heads: share.heads },
        { rows, slot: sessionSlot(session.id), place: 'over' },
      ),
    );
  }
  const counted = withScrap(session, tap.arg);
  const kept: Desk = { ...desk, sessions: { ...desk.sessions, [session.id]: counted } };
  return says(
    kept,
    showSession({ ...turn, desk: kept }, counted, workFacts(turn.world.shop, kept, counted, turn.now), 'over'),
  );
}

/** Five more minutes for the timer that a reminder was about, or with `on-top` those it still has and five more. */
export function more(turn: Turn, tap: Tap): Decision {
  const { desk, now } = turn;
  const timer = desk.timers[tap.on];
  if (timer === undefined) return { ...nothing(desk), toast: 'already' };
  const off = putOff(timer, tap.arg === 'on-top' ? Math.max(now, timer.dueAt) : now, 5);
  return {
    ...says(
      { ...desk, timers: { ...desk.timers, [timer.id]: off } },
      card(turn.by.id, { code: 'put-off', timer: off, minutes: 5 }, { slot: `timer:${timer.id}`, place: 'over' }),
    ),
    toast: 'done',
  };
}

/** Takes the last work back; what is older than a mis-tap only with `old`, from the card that says what it is. */
export function undo(turn: Turn, tap?: Tap): Decision {
  const { desk, by, now } = turn;
  const before = takenBack(desk);
  if (before !== undefined && desk.undo !== null && isDoubtful(desk.undo, now) && tap?.arg !== 'old') {
    const { what, at } = desk.undo;
    const ways = [[wordButton('undo', benchTap('undo', '-', 'old')), wordButton('bench', benchTap('bench'))]];
    return says(desk, card(by.id, { code: 'undo-old', what, at }, { rows: ways }));
  }
  const rows = [[wordButton('bench', benchTap('bench'))]];
  if (before === undefined) return says(desk, card(by.id, { code: 'nothing-to-undo' }, { rows }));
  const undone = card(by.id, { code: 'undone', what: desk.undo?.what ?? '' }, { rows });
  return { ...says(before, undone, ...runningAgain({ ...turn, desk: before }, desk)), toast: 'done' };
}

/** Whether “undo” may mean something else than this work. */
const isDoubtful = ({ at, overtaken }: Undo, now: Instant): boolean => overtaken || now - at > FRESH;

/** How long work is what "undo", or a count said afterwards, must be about. */
export const FRESH = 60 * MINUTE;

/** The cards of sessions that run again now that their end is taken back. */
const runningAgain = (turn: Turn, { sessions }: Desk): readonly Card[] =>
  Object.values(turn.desk.sessions)
    .filter(({ id }) => sessions[id] === undefined)
    .map((session) => showSession(turn, session, workFacts(turn.world.shop, turn.desk, session, turn.now), 'below'));

/** A session's card with all that its step needs. */
export function showSession(turn: Turn, session: Session, facts: WorkFacts, place: 'over' | 'below'): Card {
  const lots = session.shares.flatMap(({ lot, heads }) => {
    const found = turn.desk.lots[lot];
    return found === undefined ? [] : [{ lot: found, heads, said: saidOf(turn.desk, found) }];
  });
  return sessionCard(turn, { code: 'session', session, lots, facts }, session, place);
}

export const sessionCard = (turn: Turn, say: Card['say'], session: Session, place: 'over' | 'below' = 'below'): Card =>
  card(turn.by.id, say, {
    rows: sessionButtons(session, lotPhotos(turn.desk, lotsOf(turn.desk, session))),
    slot: sessionSlot(session.id),
    place,
    picture: headsOf(turn.desk, session),
  });

const lotsOf = ({ lots }: Desk, { shares }: Session): readonly Lot[] => shares.flatMap(({ lot }) => lots[lot] ?? []);

/** The session with the scrap of one lot noted; never more than went in. */
function withScrap(session: Session, arg: string): Session {
  const at = arg.lastIndexOf('=');
  const share = session.shares.find(({ lot }) => lot === arg.slice(0, Math.max(0, at)));
  const scrapped = Number(arg.slice(at + 1));
  if (share === undefined || !Number.isInteger(scrapped) || scrapped < 0) return session;
  return { ...session, scrap: { ...session.scrap, [share.lot]: Math.min(scrapped, share.heads) } };
}

/** Counts worth a button: a few, then by fives, then all. */
const scrapChoices = (heads: number): readonly number[] =>
  [...new Set([0, 1, 2, 3, 4, 5, 6, 8, 10, 15, 20, heads])].filter((scrapped) => scrapped <= heads);
