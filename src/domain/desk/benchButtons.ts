import { offerOf, writeOffer } from '../bench/offer.ts';
import type { Ready, Session } from '../bench/session.ts';
import { inRows, wordButton } from './draftButtons.ts';
import type { CardButton } from './card.ts';
import { writeChange, type Change } from './change.ts';
import type { ActName, Tap } from './tap.ts';

/** A tap of the maker's; what it acts on is looked up, so it needs no version. */
export const benchTap = (act: ActName, on = '-', arg = '-'): Tap => ({ act, on, version: 0, arg });

export const sessionSlot = (session: string): string => `session:${session}`;

/** Starts just the work that it names. */
export const startButton = (work: Ready): CardButton => ({
  label: { code: 'start', work },
  tap: benchTap('start', '-', writeOffer(offerOf(work))),
});

/** Work that runs: done with one tap, or its card again, where scrap can be counted. */
export const runningButtons = (session: Session): readonly CardButton[] => [
  { label: { code: 'finish', session }, tap: benchTap('done', session.id) },
  { label: { code: 'session', session }, tap: benchTap('look', session.id) },
];

/** A change to look at before it is made. */
export const proposeButton = (change: Change): CardButton => ({
  label: { code: 'propose', change },
  tap: benchTap('propose', '-', writeChange(change)),
});

/** Counts that are worth one tap when a session has one lot. */
const HANDY = [1, 2, 3, 5];

/** All good with one tap; with one lot the usual small counts too, with several a way to count each. */
export function sessionButtons(session: Session, photos: readonly CardButton[]): readonly (readonly CardButton[])[] {
  const [only, ...others] = session.shares;
  const done = wordButton(
    Object.values(session.scrap).some((count) => count > 0) ? 'done' : 'all-good',
    benchTap('done', session.id),
  );
  const single = only !== undefined && others.length === 0;
  const quick = single
    ? HANDY.filter((count) => count <= only.heads).map((count): CardButton => ({
        label: { code: 'scrapped', count },
        tap: benchTap('done', session.id, `${only.lot}=${count}`),
      }))
    : [];
  const counts = session.shares.map(({ lot }): CardButton => ({
    label: { code: 'count-lot', lot },
    tap: benchTap('count', session.id, lot),
  }));
  return [
    [done],
    ...inRows(quick, 4),
    ...inRows(counts, 2),
    ...inRows(photos, 2),
    [wordButton('undo', benchTap('undo')), wordButton('bench', benchTap('bench'))],
  ];
}
