import { currentStep, hasBegun, isFinished, isMade, newLot, type Lot, type LotStep } from '../bench/lot.ts';
import type { Shop } from '../shop/shop.ts';
import { addAmounts, needsOf } from '../stock/needs.ts';
import type { Change } from './change.ts';
import { putBy } from './extras.ts';
import type { Desk } from './state.ts';
import { freshLotId } from './topUp.ts';

export type OfLot = Extract<Change, Readonly<{ lot: string }>>;

/** What stands against a change of a lot. */
export const OBSTACLES = [
  'no-lot',
  'running',
  'waiting',
  'not-poured',
  'not-made',
  'packed',
  'off-shelf',
  'part-baked',
  'too-many',
  'moved-on',
  'alone',
] as const;
export type Obstacle = (typeof OBSTACLES)[number];

/** The desk with a lot changed, or what stands against it. */
export function lotChanged(shop: Shop, desk: Desk, change: OfLot): Desk | Obstacle {
  const lot = desk.lots[change.lot];
  if (lot === undefined) return 'no-lot';
  const running = lot.steps.find(({ state }) => state === 'running');
  if (running !== undefined) return running.step === 'cool' || running.step === 'cure' ? 'waiting' : 'running';
  const next = OF_LOT[change.do](shop, desk, lot, change);
  return typeof next === 'string' ? next : { ...next, undo: null };
}

type MadeOf = (shop: Shop, desk: Desk, lot: Lot, change: OfLot) => Desk | Obstacle;

/** What can become of a lot as it stands, each shown before it is made; of the ways to split it the one in half. */
export const changesOf = (shop: Shop, desk: Desk, { id, heads }: Lot): readonly OfLot[] =>
  (
    [
      { do: 'split', lot: id, heads: Math.floor(heads / 2), of: heads },
      { do: 'join', lot: id },
      { do: 'shelve', lot: id },
      { do: 'remake', lot: id },
    ] as const
  ).filter((change) => typeof lotChanged(shop, desk, change) !== 'string');

const OF_LOT: Readonly<Record<OfLot['do'], MadeOf>> = { remake, shelve, join, split };

/** All heads of the lot are lost; as many begin again. */
function remake(shop: Shop, desk: Desk, lot: Lot): Desk | Obstacle {
  return lot.good === 0 ? 'not-poured' : begunAnew(shop, desk, lot, { scrap: lot.scrap + lot.good, used: lot.used });
}

/** Finished heads go on the shelf; as many begin again for the order. */
function shelve(shop: Shop, desk: Desk, lot: Lot): Desk | Obstacle {
  const put = { ...desk, shelf: putBy(desk.shelf, lot.spec, lot.good) };
  return isMade(lot) ? begunAnew(shop, put, lot, { scrap: lot.scrap, used: lot.used }) : 'not-made';
}

/** The heir of a lot that is gone tells what that one used and scrapped, so that no material is forgotten. */
function begunAnew(shop: Shop, desk: Desk, lot: Lot, lost: Pick<Lot, 'scrap' | 'used'>): Desk {
  const again = newLot(freshLotId(desk, lot), lot.order, lot.spec, lot.heads, {
    ...needsOf(shop, { spec: lot.spec, quantity: lot.heads }),
  });
  return { ...standingIn(desk, lot.id, again.id), lots: withLots(desk, lot, [{ ...again, ...lost }]) };
}

/** Why the heads of a lot cannot be parted or put together; undefined where they can. */
function asOne(lot: Lot): Obstacle | undefined {
  if (isFinished(lot)) return 'packed';
  if (lot.shelf > 0) return 'off-shelf';
  return (currentStep(lot)?.through ?? 0) > 0 ? 'part-baked' : undefined;
}

/** A lot in two, at whatever step it waits: so many heads, and the rest, which goes on telling what it used and scrapped so far. */
function split(shop: Shop, desk: Desk, lot: Lot, change: OfLot): Desk | Obstacle {
  const { heads, of } = change.do === 'split' ? change : { heads: 0, of: 0 };
  const obstacle = asOne(lot);
  if (obstacle !== undefined) return obstacle;
  if (lot.heads !== of) return 'moved-on';
  if (!(heads > 0 && heads < lot.heads)) return 'too-many';
  const id = freshLotId(desk, lot);
  const parts = hasBegun(lot) ? partedBegun(shop, lot, id, heads) : partedFresh(shop, lot, id, heads);
  return { ...standingIn(desk, lot.id, id), lots: withLots(desk, lot, parts) };
}

/** The rest, then those split off, each with the material that it needs. */
function partedFresh(shop: Shop, lot: Lot, id: string, heads: number): readonly Lot[] {
  const part = (name: string, quantity: number): Lot => ({
    ...newLot(name, lot.order, lot.spec, quantity, { ...needsOf(shop, { spec: lot.spec, quantity }) }),
    from: lot.from,
  });
  return [{ ...part(lot.id, lot.heads - heads), scrap: lot.scrap, used: lot.used }, part(id, heads)];
}

/** Of a lot that is poured just as many heads go as are split off; heads made over stay, and no material is put aside anew. */
function partedBegun(shop: Shop, lot: Lot, id: string, heads: number): readonly Lot[] {
  const needs = needsOf(shop, { spec: lot.spec, quantity: heads });
  const items = Object.entries(lot.reserved).map(
    ([item, amount]) => [item, amount, Math.min(amount, needs[item] ?? 0)] as const,
  );
  const had = (of: (done: number) => number): LotStep[] =>
    lot.steps.map((one) => (one.state === 'done' ? { ...one, through: of(one.through) } : one));
  const off: Lot = {
    ...lot,
    id,
    heads,
    good: heads,
    scrap: 0,
    used: {},
    reserved: Object.fromEntries(items.map(([item, , taken]) => [item, taken])),
    steps: had(() => heads),
  };
  const rest: Lot = {
    ...lot,
    heads: lot.heads - heads,
    good: lot.good - heads,
    reserved: Object.fromEntries(items.map(([item, amount, taken]) => [item, amount - taken])),
    steps: had((done) => done - heads),
  };
  return [rest, off];
}

/** The desk's lots with others where one stood. */
const withLots = ({ lots }: Desk, { id }: Lot, instead: readonly Lot[]): Desk['lots'] =>
  Object.fromEntries(
    Object.entries(lots).flatMap(([name, lot]) =>
      name === id ? instead.map((one) => [one.id, one] as const) : [[name, lot] as const],
    ),
  );

/** The order of work with another lot where one stands: a lot that it does not know would come last. */
function standingIn(desk: Desk, lot: string, other: string): Desk {
  if (desk.planOrder === null) return desk;
  const places = desk.planOrder.places.flatMap((place) =>
    place.lot === lot ? [place, { ...place, lot: other }] : [place],
  );
  return { ...desk, planOrder: { ...desk.planOrder, places } };
}

/** A lot together with the other ones of its order that are the same and wait for the same step. */
function join(shop: Shop, desk: Desk, lot: Lot): Desk | Obstacle {
  const obstacle = asOne(lot);
  if (obstacle !== undefined) return obstacle;
  const alike = Object.values(desk.lots).filter((one) => isAlike(one, lot));
  if (alike.length < 2) return 'alone';
  const left = Object.entries(desk.lots).filter(([, one]) => !alike.includes(one));
  return { ...desk, lots: Object.fromEntries([...left, [lot.id, joined(shop, lot, alike)]]) };
}

const isAlike = (one: Lot, lot: Lot): boolean =>
  one.order === lot.order &&
  JSON.stringify(one.spec) === JSON.stringify(lot.spec) &&
  asOne(one) === undefined &&
  currentStep(one)?.state === 'ready' &&
  currentStep(one)?.step === currentStep(lot)?.step;

function joined(shop: Shop, lot: Lot, alike: readonly Lot[]): Lot {
  const total = (of: (one: Lot) => number): number => alike.reduce((sum, one) => sum + of(one), 0);
  const heads = total((one) => one.heads);
  const kept = { scrap: total(({ scrap }) => scrap), used: { ...addAmounts(alike.map(({ used }) => used)) } };
  if (!hasBegun(lot)) {
    const needs = { ...needsOf(shop, { spec: lot.spec, quantity: heads }) };
    return { ...newLot(lot.id, lot.order, lot.spec, heads, needs), from: lot.from, ...kept };
  }
  return {
    ...lot,
    ...kept,
    heads,
    good: total(({ good }) => good),
    reserved: { ...addAmounts(alike.map(({ reserved }) => reserved)) },
    steps: lot.steps.map((one, at) => ({ ...one, through: total(({ steps }) => steps[at]?.through ?? 0) })),
  };
}
