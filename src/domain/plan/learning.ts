import type { Minutes } from '../craft/time.ts';
import type { Spread, Tempo } from './world.ts';
import { UNKNOWN } from './world.ts';

/** What the bench has taught of a step's minutes: a normal–inverse-gamma belief about log(observed ÷ expected). Plain data. */
export type Belief = Readonly<{
  mean: number;
  /** How many observations the mean weighs. */
  strength: number;
  shape: number;
  scale: number;
}>;

/** What counts of one sort against another have taught, as a beta belief about the share of the first. */
export type Share = Readonly<{ hits: number; misses: number }>;

/** The shop file's minutes, worth one observation, with a deviation of the log of 0.3 worth six. */
export const SHOP_FILE: Belief = { mean: 0, strength: 1, shape: 3, scale: 3 * 0.3 ** 2 };
/** 3 heads in 100 scrapped, worth 50 heads. */
export const SCRAP: Share = { hits: 1.5, misses: 48.5 };
/** One evening in 20 missed, worth 20 evenings. */
export const MISSED: Share = { hits: 1, misses: 19 };

/** Old observations count no more than so many new ones, so that a changed hand is learned again. */
const MEMORY = 80;

/** The belief after a step that was expected to take so long took so long. One far off (a forgotten tap) counts little: it is weighed as an
 *  observation of Student's law would be. Times of nothing teach nothing. */
export function learn(belief: Belief, expected: Minutes, observed: Minutes): Belief {
  if (!(expected > 0 && observed > 0)) return belief;
  const { mean, strength, shape, scale } = faded(belief);
  const log = Math.log(observed / expected);
  const off = (log - mean) / deviation(belief);
  const weight = Math.min(1, (2 * shape + 1) / (2 * shape + off ** 2));
  const stronger = strength + weight;
  return {
    mean: (strength * mean + weight * log) / stronger,
    strength: stronger,
    shape: shape + weight / 2,
    scale: scale + (weight * strength * (log - mean) ** 2) / (2 * stronger),
  };
}

/** Median and spread of the next observation. */
export const tempoOf = (belief: Belief): Tempo => ({ factor: Math.exp(belief.mean), sigma: deviation(belief) });

/** The share after so many hits and misses more. */
export const count = ({ hits, misses }: Share, more: Share): Share => ({
  hits: hits + more.hits,
  misses: misses + more.misses,
});

export const shareOf = ({ hits, misses }: Share): number => hits / (hits + misses);

/** What is known of how the weeks differ from the plan, from what the bench has taught. The less is known of the steps, the more
 *  all of them may be slow together. */
export function spreadOf(steps: Readonly<Record<string, Belief>>, scrap: Share, missed: Share): Spread {
  const beliefs = Object.values(steps);
  const doubt = beliefs.reduce((sum, { scale, shape, strength }) => sum + scale / shape / strength, 0);
  return {
    ...UNKNOWN,
    minutes: Object.fromEntries(Object.entries(steps).map(([step, belief]) => [step, tempoOf(belief)])),
    pace: beliefs.length === 0 ? UNKNOWN.pace : Math.sqrt(doubt / beliefs.length ** 2 + WEEKLY ** 2),
    scrap: shareOf(scrap),
    missed: shareOf(missed),
  };
}

/** Good and bad weeks, however well the steps are known: deviation of the log. Our own choice: less, and made-up years keep too few promises. */
const WEEKLY = 0.12;

const deviation = ({ strength, shape, scale }: Belief): number =>
  Math.sqrt(((scale / shape) * (strength + 1)) / strength);

function faded(belief: Belief): Belief {
  if (belief.strength <= MEMORY) return belief;
  const { mean, shape, scale } = belief;
  const keep = MEMORY / belief.strength;
  return { mean, strength: MEMORY, shape: shape * keep, scale: scale * keep };
}
