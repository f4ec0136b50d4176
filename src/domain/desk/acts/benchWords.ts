import type { Session } from '../../bench/session.ts';
import { benchTap, startButton } from '../benchButtons.ts';
import { readyAt } from '../benchWork.ts';
import type { CardButton } from '../card.ts';
import { wordButton } from '../draftButtons.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { takenBack } from '../undo.ts';
import { count, done, doneAgain, FRESH, more } from './bench.ts';
import { lotIn } from './changes.ts';
import { start } from './start.ts';

/** Words at the bench that do what a button does: "done", "all good", "12 bad", "2 bad K-1001-1", "start", "5 more".
 *  With more than one piece of work that could be meant it asks which. Undefined for words that are none of these. */
export function benchWords(turn: Turn, text: string): Decision | undefined {
  if (turn.by.asked?.for === 'reply' || turn.by.asked?.for === 'question') return undefined;
  const words = text
    .trim()
    .toLowerCase()
    .replace(/[.!]+$/, '');
  const bad = BAD.exec(words);
  if (bad) return scrapped(turn, Number(bad[1]), lotIn(bad[2] ?? ''));
  if (DONE.test(words)) return over(turn);
  if (START.test(words)) return begun(turn);
  return MORE.test(words) ? putOff(turn) : undefined;
}

const BAD = /^(\d{1,3}) (?:bad|scrap|scrapped|mal[ao]s?)(?: (?:of |in |de )?(k\S+))?$/;
const DONE = /^(?:done|all done|all good|done,? all good|hecho|listo|todo bien)$/;
const START = /^(?:start|start it|start next|go|empieza|empezar)$/;
const MORE = /^(?:5|five) (?:more|more minutes)$|^5 (?:minutos )?más$/;

function over(turn: Turn): Decision | undefined {
  const running = Object.values(turn.desk.sessions);
  const [only, ...others] = running;
  if (only === undefined) return idle(turn);
  if (others.length === 0) return done(turn, benchTap('done', only.id));
  return which(
    turn,
    running.map((session) => ({ label: { code: 'session', session }, tap: benchTap('done', session.id) })),
  );
}

type Meant = Readonly<{ session: Session; lot: string }>;

function scrapped(turn: Turn, bad: number, named: string | undefined): Decision | undefined {
  const running = Object.values(turn.desk.sessions);
  if (running.length === 0) return afterwards(turn, bad, named) ?? idle(turn);
  const meant = running
    .flatMap((session) => session.shares.map(({ lot, heads }) => ({ session, lot, heads })))
    .filter(({ lot, heads }) => heads >= bad && (named === undefined || named === lot));
  const [only, ...others] = meant;
  if (only === undefined) return which(turn, running.map(lookButton));
  const tap = (one: Meant) =>
    benchTap(one.session.shares.length === 1 ? 'done' : 'count', one.session.id, `${one.lot}=${bad}`);
  if (others.length === 0) return tap(only).act === 'done' ? done(turn, tap(only)) : count(turn, tap(only));
  return which(
    turn,
    meant.map((one) => ({ label: { code: 'bad-of', lot: one.lot, count: bad }, tap: tap(one) })),
  );
}

/** Said just after "done": the work is counted anew; of several lots it is asked which, and till then nothing changes. */
function afterwards(turn: Turn, bad: number, named: string | undefined): Decision | undefined {
  const { undo } = turn.desk;
  if (undo === null || !undo.what.startsWith('done/') || turn.now - undo.at > FRESH) return undefined;
  const [session] = Object.values(undo.sessions).flatMap((one) => one ?? []);
  const meant = (session?.shares ?? []).filter(
    ({ lot, heads }) => heads >= bad && (named === undefined || named === lot),
  );
  const taps = meant.map(({ lot }) => ({ lot, tap: benchTap('done', session?.id, `again/${lot}=${bad}`) }));
  const [only, ...others] = taps;
  if (only === undefined || takenBack(turn.desk) === undefined) return undefined;
  if (others.length === 0) return doneAgain(turn, only.tap);
  return which(
    turn,
    taps.map(({ lot, tap }) => ({ label: { code: 'bad-of', lot, count: bad }, tap })),
  );
}

/** With nothing to start the word is a greeting, as it is for everyone. */
function begun(turn: Turn): Decision | undefined {
  const ready = readyAt(turn.world.shop, turn.desk, turn.now);
  const [only, ...others] = ready;
  if (only === undefined) return undefined;
  if (others.length === 0) return start(turn, startButton(only).tap);
  return which(turn, ready.map(startButton));
}

function putOff(turn: Turn): Decision | undefined {
  const timers = Object.values(turn.desk.timers).filter(({ kind }) => kind === 'bake');
  const told = timers.find(({ toldAt }) => toldAt !== null) ?? timers[0];
  return told && more(turn, benchTap('more', told.id, 'on-top'));
}

const lookButton = (session: Session): CardButton => ({
  label: { code: 'session', session },
  tap: benchTap('look', session.id),
});

const which = ({ desk, by }: Turn, buttons: readonly CardButton[]): Decision =>
  says(desk, card(by.id, { code: 'which-work' }, { rows: buttons.map((button) => [button]) }));

/** Nothing runs; with no lots at all the words were for something else. */
function idle({ desk, by }: Turn): Decision | undefined {
  if (Object.keys(desk.lots).length === 0) return undefined;
  return says(desk, card(by.id, { code: 'nothing-runs' }, { rows: [[wordButton('bench', benchTap('bench'))]] }));
}
