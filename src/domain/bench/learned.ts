import { z } from 'zod';
import { MINUTE, type Instant, type Minutes } from '../craft/time.ts';
import { cavityFor } from '../order/rules.ts';
import { count, learn, MISSED, shareOf, SHOP_FILE, tempoOf, type Belief } from '../plan/learning.ts';
import { UNKNOWN, type Spread, type Tempo } from '../plan/world.ts';
import type { Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import type { Lot } from './lot.ts';
import type { Session } from './session.ts';

const beliefSchema = z.strictObject({
  mean: z.number(),
  strength: z.number(),
  shape: z.number(),
  scale: z.number(),
});

const countsSchema = z.strictObject({ hits: z.number().min(0), misses: z.number().min(0) });

/** What start and done have taught: one belief a step about its minutes, heads counted bad and good, evenings missed and kept. It never grows. */
export const learnedSchema = z.strictObject({
  steps: z.record(z.string(), beliefSchema),
  scrap: countsSchema,
  /** Heads poured and found bad as they were counted, every one of them. */
  counted: z.strictObject({ poured: z.number().int(), bad: z.number().int() }).default({ poured: 0, bad: 0 }),
  /** Evenings on which nothing was done though there was work, against those on which something was. */
  missed: countsSchema.default({ hits: 0, misses: 0 }),
});
export type Learned = Readonly<z.infer<typeof learnedSchema>>;

export const NOTHING_LEARNED: Learned = {
  steps: {},
  scrap: { hits: 0, misses: 0 },
  counted: { poured: 0, bad: 0 },
  missed: { hits: 0, misses: 0 },
};

/** The steps whose minutes are hands' alone, so that a clock on them says something of the hands. */
export const TIMED = [
  'pour',
  'trim',
  'paint',
  'clear-eyes',
  'guard',
  'dress',
  'pack',
] as const satisfies readonly Step[];
export type Timed = (typeof TIMED)[number];

/** Steps timed, and heads poured, from which on what was learned is gone by. */
export const ENOUGH = { times: 6, heads: 100 } as const;
/** The shop file's own share of scrap counts as so many heads, and no more than so many counted ones are remembered. */
const FILE_HEADS = 50;
const HEADS_MOST = 1000;
/** A whole spoiled batch says little of the usual share: of one session no more than this counts. */
const SPOILED = 0.3;
/** A deviation of the log beyond this says that the taps are careless, not the hands. */
const SIGMA_MOST = 0.6;
/** However odd the clock, minutes are never taken for less or more than so many times the shop file's. */
const FACTORS = [0.25, 4] as const;

/** The belief after one more session: its minutes against those expected, its scrap against its heads.
 *  `shop` is the one its work was expected by, with what was learned before already in it. */
export function learnFrom(
  shop: Shop,
  learned: Learned,
  session: Session,
  lots: Readonly<Record<string, Lot>>,
  now: Instant,
): Learned {
  const counted = { ...learned, scrap: scrapAfter(learned, session), counted: countedAfter(learned, session) };
  const step = TIMED.find((one) => one === session.step);
  if (step === undefined || session.parted) return counted;
  const belief = beliefOf(learned, step);
  const expected = expectedMinutes(shop, step, session, lots) / factorOf(learned, step);
  return {
    ...counted,
    steps: { ...learned.steps, [step]: { ...learn(belief, expected, (now - session.startedAt) / MINUTE) } },
  };
}

/** The shop with the minutes and the scrap that the bench has shown, where it has shown enough. */
export function taught(shop: Shop, learned: Learned): Shop {
  const steps = { ...shop.steps };
  for (const step of TIMED) {
    const factor = factorOf(learned, step);
    if (factor !== 1) steps[step] = { setup: steps[step].setup * factor, each: steps[step].each * factor };
  }
  return { ...shop, steps, casting: { ...shop.casting, scrapShare: scrapShareOf(shop, learned) } };
}

/** How many times the shop file's minutes a step takes; 1 until there is enough. */
export function factorOf(learned: Learned, step: Timed): number {
  if (timesOf(learned, step) < ENOUGH.times) return 1;
  const { factor } = tempoOf(beliefOf(learned, step));
  return Math.min(FACTORS[1], Math.max(FACTORS[0], factor));
}

/** What is known of how the weeks differ from the plan: how sure the minutes of each step are, the share of scrap, and of evenings
 *  that fall out. `shop` has in it what was learned already. */
export const spreadFrom = (shop: Shop, learned: Learned): Spread => ({
  ...UNKNOWN,
  minutes: temposOf(learned),
  scrap: shop.casting.scrapShare,
  missed: missedShareOf(learned),
});

/** Evenings remembered; older ones fade. */
const EVENINGS_MOST = 100;

/** The belief after one more evening with hours and work: it fell out, or something was done on it. */
export function afterEvening(learned: Learned, evening: 'missed' | 'kept'): Learned {
  const more = evening === 'missed' ? { hits: 1, misses: 0 } : { hits: 0, misses: 1 };
  const { hits, misses } = count(learned.missed, more);
  const kept = Math.min(1, EVENINGS_MOST / (hits + misses));
  return { ...learned, missed: { hits: hits * kept, misses: misses * kept } };
}

/** The share of evenings that fall out, leaning on one in twenty. */
export const missedShareOf = ({ missed }: Learned): number => shareOf(count(MISSED, missed));

/** How sure the minutes of each step are that was timed often enough. */
const temposOf = (learned: Learned): Readonly<Record<string, Tempo>> =>
  Object.fromEntries(
    TIMED.filter((step) => timesOf(learned, step) >= ENOUGH.times).map((step) => [
      step,
      { factor: 1, sigma: Math.min(SIGMA_MOST, tempoOf(beliefOf(learned, step)).sigma) },
    ]),
  );

/** How often a step was timed, a forgotten tap counting next to nothing. */
export const timesOf = (learned: Learned, step: Timed): number => beliefOf(learned, step).strength - SHOP_FILE.strength;

/** The share of heads cast that do not survive; the shop file's until enough were poured, then leaning on it a little. */
export function scrapShareOf(shop: Shop, { scrap }: Learned): number {
  const { scrapShare } = shop.casting;
  if (scrap.hits + scrap.misses < ENOUGH.heads) return scrapShare;
  return shareOf(count({ hits: FILE_HEADS * scrapShare, misses: FILE_HEADS * (1 - scrapShare) }, scrap));
}

const beliefOf = ({ steps }: Learned, step: Timed): Belief => steps[step] ?? SHOP_FILE;

/** Not rounded up as the plan's minutes are: a bias of half a minute would be learned. */
function expectedMinutes(shop: Shop, step: Timed, { shares }: Session, lots: Readonly<Record<string, Lot>>): Minutes {
  const { setup, each } = shop.steps[step];
  return shares.reduce((sum, { lot, heads }) => sum + each * timesDone(shop, step, lots[lot], heads), setup);
}

/** A pour fills all cavities of its mold at a time. */
function timesDone(shop: Shop, step: Timed, lot: Lot | undefined, heads: number): number {
  const cavities = step === 'pour' && lot ? (cavityFor(shop, lot.spec)?.cavity.count ?? 1) : 1;
  return Math.ceil(heads / cavities);
}

function countedAfter({ counted }: Learned, { step, shares, scrap }: Session): Learned['counted'] {
  const bad = Object.values(scrap).reduce((sum, one) => sum + one, 0);
  const poured = step === 'pour' ? shares.reduce((sum, { heads }) => sum + heads, 0) : 0;
  return { poured: counted.poured + poured, bad: counted.bad + bad };
}

/** Poured heads count as good until a later step finds one bad. */
function scrapAfter({ scrap }: Learned, { step, shares, scrap: bad }: Session): Learned['scrap'] {
  const heads = shares.reduce((sum, share) => sum + share.heads, 0);
  const scrapped = Object.values(bad).reduce((sum, one) => sum + one, 0);
  const hits = Math.min(scrapped, heads * SPOILED);
  const { hits: all, misses } = count(scrap, { hits, misses: (step === 'pour' ? heads : 0) - hits });
  const kept = Math.min(1, HEADS_MOST / (all + misses || 1));
  return { hits: all * kept, misses: Math.max(0, misses) * kept };
}
