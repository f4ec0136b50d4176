import { z } from 'zod';
import type { Instant } from '../craft/time.ts';
import { familyOf, headsToPour } from '../plan/routing.ts';
import type { Shop } from '../shop/shop.ts';
import { STEPS, type Step } from '../shop/words.ts';
import { currentStep, stepOf, withStep, type Lot, type LotStep } from './lot.ts';

/** Work on one step that several lots share: one mold and cavity, one colour, one oven load. */
export const sessionSchema = z.strictObject({
  id: z.string(),
  step: z.enum(STEPS),
  family: z.string(),
  shares: z
    .array(
      z.strictObject({
        lot: z.string(),
        heads: z.number().int().positive(),
        /** On the rack of a lot whose order was cancelled since: its name is all that is left of it. */
        cancelled: z.literal(true).optional(),
        /** Spare heads of the lot that the work leaves out for want of material: they are let go with the scrap. */
        left: z.number().int().positive().optional(),
      }),
    )
    .min(1),
  startedAt: z.number(),
  /** Scrapped heads by lot, as far as they were told before the session is over. */
  scrap: z.record(z.string(), z.number().int().min(0)),
  /** Heads of a cancelled order were in it: its clock says nothing of those that are left. */
  parted: z.literal(true).optional(),
});
export type Session = Readonly<z.infer<typeof sessionSchema>>;

/** Work that could be started now: the lots whose current step is ready, put together where the work allows. */
export type Ready = Readonly<{ step: Step; family: string; shares: Session['shares'] }> & {
  /** Held back until then for what was promised before: begun sooner it would push it. */
  readonly later?: Instant;
};

/** Everything that may be started, in the order of the routing, fed by lots in the order given. An oven load stops at the rack. */
export function readyWork(shop: Shop, lots: readonly Lot[]): readonly Ready[] {
  const found = new Map<string, Ready>();
  const feed = (lot: Lot, step: Step, most: number): void => {
    const family = familyOf(shop, lot.spec, step);
    const work = found.get(`${step}/${family}`) ?? { step, family, shares: [] };
    const heads = Math.min(most, roomIn(shop, work));
    if (heads > 0) found.set(`${step}/${family}`, { ...work, shares: withHeads(work.shares, lot.id, heads) });
  };
  const waiting = lots.flatMap((lot) => {
    const at = currentStep(lot);
    return at?.state === 'ready' ? [{ lot, at, heads: headsAt(shop, lot, at.step) - at.through }] : [];
  });
  for (const { lot, at, heads } of inTurn(shop, waiting)) feed(lot, at.step, heads);
  return [...found.values()].sort((a, b) => STEPS.indexOf(a.step) - STEPS.indexOf(b.step));
}

type Waiting = Readonly<{ lot: Lot; at: LotStep; heads: number }>;

/** Where one load can hold all heads that are ordered, they come before those made over; where another is needed anyway, lots go in whole. */
function inTurn(shop: Shop, waiting: readonly Waiting[]): readonly Waiting[] {
  const ordered = waiting.map((one) => ({ ...one, heads: one.heads - spareAmong(one) }));
  const toBake = ordered.reduce((sum, { at, heads }) => sum + (at.step === 'bake' ? heads : 0), 0);
  if (toBake > shop.oven.rack) return waiting;
  return [...ordered, ...waiting.map((one) => ({ ...one, heads: spareAmong(one) }))];
}

/** Of the heads that wait for the oven, those that the order does not need. */
const spareAmong = ({ lot, at, heads }: Waiting): number =>
  at.step === 'bake' ? Math.min(heads, Math.max(0, at.through + heads - lot.heads)) : 0;

const withHeads = (shares: Session['shares'], lot: string, heads: number): Session['shares'] =>
  shares.some((share) => share.lot === lot)
    ? shares.map((share) => (share.lot === lot ? { ...share, heads: share.heads + heads } : share))
    : [...shares, { lot, heads }];

/** Heads made over that a load in the oven leaves out, where all that the order needs are in or have been. */
export function sparesOut(lot: Lot, step: Step, heads: number, scrapped: number): number {
  const through = (stepOf(lot, step)?.through ?? 0) + heads - scrapped;
  return step === 'bake' && through >= lot.heads ? lot.good - scrapped - through : 0;
}

/** Heads made over, by lot, that the load which waits for the oven leaves out. */
export function leftOutNext(shop: Shop, lots: readonly Lot[]): Readonly<Record<string, number>> {
  const load = readyWork(shop, lots).find(({ step }) => step === 'bake');
  const out = (load?.shares ?? []).flatMap(({ lot: id, heads }) => {
    const lot = lots.find((one) => one.id === id);
    return lot === undefined ? [] : [[id, sparesOut(lot, 'bake', heads, 0)] as const];
  });
  return Object.fromEntries(out);
}

/** Heads of a lot that a step is done to: a few over at the pour, those alive afterwards. */
export const headsAt = (shop: Shop, lot: Lot, step: Step): number =>
  step === 'pour' ? headsToPour(shop, lot.spec, lot.heads) : lot.good;

/** Heads of a lot at the bench: those alive once it is poured, those to be cast before. */
export const headsAlive = (shop: Shop, lot: Lot): number => (lot.good > 0 ? lot.good : headsAt(shop, lot, 'pour'));

export const headsIn = ({ shares }: Pick<Session, 'shares'>): number =>
  shares.reduce((sum, { heads }) => sum + heads, 0);

/** The lots of a session with their step running. */
export const started = (lots: readonly Lot[], { step, shares }: Session, now: Instant): readonly Lot[] =>
  lots.map((lot) =>
    shares.some((share) => share.lot === lot.id) ? withStep(lot, step, { state: 'running', startedAt: now }) : lot,
  );

/** What becomes of heads made over that did not fit into the oven with those ordered: let go, so that they cost no load of their own, or kept for the next. */
export type Spares = 'let-go' | 'kept';

/** The lots of a session once it is over: scrap taken off, the step done, or ready for the rest of a lot that did not fit. */
export function finished(lots: readonly Lot[], session: Session, spares: Spares, now: Instant): readonly Lot[] {
  return lots.map((lot) => {
    const share = session.shares.find(({ lot: id }) => id === lot.id);
    if (share === undefined) return lot;
    const scrapped = session.scrap[lot.id] ?? 0;
    const out = spares === 'let-go' ? sparesOut(lot, session.step, share.heads, scrapped) : 0;
    const done = { ...lot, good: lot.good - out, scrap: lot.scrap + out };
    return finishShare(done, session.step, share, scrapped, now);
  });
}

function finishShare(
  lot: Lot,
  step: Step,
  { heads, left = 0 }: Session['shares'][number],
  bad: number,
  now: Instant,
): Lot {
  const scrapped = bad + left;
  const before = step === 'pour' ? lot.good + heads : lot.good;
  const good = Math.max(0, before - scrapped);
  const at = currentStep(lot);
  // A bad head was poured too.
  const through = (at?.through ?? 0) + heads - (step === 'pour' ? 0 : bad);
  const counted: Lot = { ...lot, good, scrap: lot.scrap + Math.min(scrapped, before) };
  if (step !== 'pour' && through < good) return withStep(counted, step, { state: 'ready', through });
  return withStep(counted, step, { state: 'done', through, doneAt: now });
}

function roomIn(shop: Shop, work: Ready): number {
  return work.step === 'bake' ? shop.oven.rack - headsIn(work) : Infinity;
}
