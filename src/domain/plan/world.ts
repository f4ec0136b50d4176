import { HOUR } from '../craft/time.ts';
import { int, num } from './arrays.ts';
import type { Model } from './model.ts';
import { isBake } from './problem.ts';
import { gauss, randomOf } from './random.ts';
import type { World } from './run.ts';

/** How the true minutes of a step lie about the planned ones: log-normal, `factor` times as many at the median. */
export type Tempo = Readonly<{ factor: number; sigma: number }>;

/** What is known of how the weeks differ from the plan. */
export type Spread = Readonly<{
  /** By what is done; `usual` for a step not named. */
  minutes: Readonly<Record<string, Tempo>>;
  usual: Tempo;
  /** Deviation of the log of the pace all steps of one course of weeks share. */
  pace: number;
  /** Share of heads that are scrapped and poured again. */
  scrap: number;
  /** Share of evenings that fall out. */
  missed: number;
  /** Mean days that material still to come is late. */
  lateDays: number;
}>;

/** A shop of which nothing is known yet. */
export const UNKNOWN: Spread = {
  minutes: {},
  usual: { factor: 1, sigma: 0.3 },
  pace: 0.1,
  scrap: 0.03,
  missed: 0.05,
  lateDays: 1,
};

/** Imagined courses of the coming weeks, the same for the same seed: a lot fares alike whatever other lots there are
 *  (common random numbers), and the shared pace is spread evenly over the courses. */
export function worldsOf(model: Model, spread: Spread, count: number, seed: number): readonly World[] {
  const law = lawOf(model, spread);
  return Array.from({ length: count }, (_, k) => worldOf(law, { k, count, seed }));
}

type Which = Readonly<{ k: number; count: number; seed: number }>;

/** The spread by task and lot in flat arrays. */
type Law = Readonly<{
  model: Model;
  spread: Spread;
  factor: Float64Array;
  /** Below 0 for a bake, whose minutes are sure. */
  sigma: Float64Array;
  /** The setup of casting scrapped heads again; below 0 where nothing is done again. */
  again: Float64Array;
  salt: Int32Array;
  /** 1 for material still to come. */
  late: Uint8Array;
}>;

/** Scrapped heads are cast again, with a setup of its own; what comes after has as many heads as before. */
const CAST: readonly string[] = ['pour', 'trim'];

function lawOf(model: Model, spread: Spread): Law {
  const { tasks, problem, calendar } = model;
  const tempos = tasks.map(({ does }) => (isBake(does) ? { factor: 1, sigma: -1 } : tempoOf(spread, does.do)));
  return {
    model,
    spread,
    factor: Float64Array.from(tempos, ({ factor }) => factor),
    sigma: Float64Array.from(tempos, ({ sigma }) => sigma),
    again: Float64Array.from(tasks, ({ does }, task) =>
      CAST.includes(does.do) ? (model.setup[model.kindOf[task] ?? -1] ?? -1) : -1,
    ),
    salt: Int32Array.from(problem.lots, ({ id }) => hashed(id)),
    late: Uint8Array.from(problem.lots, ({ release }) => (release !== null && release > calendar.now ? 1 : 0)),
  };
}

const tempoOf = ({ minutes, usual }: Spread, what: string): Tempo => minutes[what] ?? usual;

function worldOf(law: Law, { k, count, seed }: Which): World {
  const { model, spread, salt, late } = law;
  const amount = model.amount.slice();
  const free = model.free.slice();
  const pace = Math.exp(spread.pace * normalAt(shuffled(k, count, seed) + 0.5, count));
  for (let lot = 0; lot < salt.length; lot++) {
    const draw = mixed(salt[lot] as number, seed, k);
    handsOf(law, lot, { amount, draw, pace });
    if (late[lot] === 1) {
      free[lot] = num(free, lot) - Math.log(1 - unit(mixed(draw, 99, 2))) * spread.lateDays * 24 * HOUR;
    }
  }
  return { amount, free, missed: missedIn(model, spread.missed, mixed(seed, k, 3)) };
}

type Drawn = Readonly<{ amount: Float64Array; draw: number; pace: number }>;

/** Draws the hands time of a lot's tasks into `amount`. */
function handsOf(law: Law, lot: number, { amount, draw, pace }: Drawn): void {
  const { model, factor, sigma, again, spread } = law;
  const first = int(model.firstTask, lot);
  const end = int(model.firstTask, lot + 1);
  const heads = model.problem.lots[lot]?.heads ?? 0;
  const bad = scrapped(heads, spread.scrap, unit(draw));
  for (let task = first; task < end; task++) {
    const wide = num(sigma, task);
    if (wide < 0) continue;
    const normal = num(NORMALS, mixed(draw, task - first, 1) & MASK);
    const drawn = num(amount, task) * pace * num(factor, task) * Math.exp(wide * normal);
    const setup = bad > 0 ? num(again, task) : -1;
    amount[task] = setup < 0 ? drawn : drawn * (1 + bad / heads) + setup;
  }
}

/** How many of the heads are scrapped: the binomial law turned about, for a share `luck` of it. */
function scrapped(heads: number, share: number, luck: number): number {
  if (share <= 0 || heads <= 0) return 0;
  let [bad, chance] = [0, (1 - share) ** heads];
  for (let below = chance; below < luck && bad < heads; below += chance) {
    chance *= ((heads - bad) * share) / ((bad + 1) * (1 - share));
    bad++;
  }
  return bad;
}

/** Which of the stretches of hours known so far, and as many again, fall out. */
function missedIn({ calendar }: Model, share: number, seed: number): Uint8Array {
  const missed = new Uint8Array(calendar.starts.length * 2);
  for (let i = 0; i < missed.length; i++) missed[i] = unit(mixed(seed, i, 4)) < share ? 1 : 0;
  return missed;
}

/** A place among `count` for world `k`, each taken once, so that the pace is not in step with the other draws. */
function shuffled(k: number, count: number, seed: number): number {
  const step = [7, 11, 13, 17, 1].find((prime) => count % prime !== 0) ?? 1;
  return (k * step + (Math.abs(seed) % count)) % count;
}

const TABLE = 4096;
const MASK = TABLE - 1;
const NORMALS = normals();
const SORTED = NORMALS.slice().sort();

/** The value of the normal law at a share `place / count` of it. */
const normalAt = (place: number, count: number): number => SORTED[Math.floor((place / count) * TABLE)] ?? 0;

/** Normal draws in a table, in pairs of opposite sign so that their mean is exactly 0. */
function normals(): Float64Array {
  const random = randomOf(20_260_101);
  const table = new Float64Array(TABLE);
  for (let i = 0; i < TABLE; i += 2) {
    const drawn = gauss(random);
    table[i] = drawn;
    table[i + 1] = -drawn;
  }
  return table;
}

const unit = (bits: number): number => (bits >>> 0) / 4_294_967_296;

function mixed(a: number, b: number, c: number): number {
  let bits =
    Math.imul(a ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(b + 0x165667b1, 0xc2b2ae35) ^ Math.imul(c + 1, 0x27d4eb2f);
  bits = Math.imul(bits ^ (bits >>> 15), 0x2c1b3c6d);
  bits = Math.imul(bits ^ (bits >>> 12), 0x297a2d39);
  return (bits ^ (bits >>> 15)) >>> 0;
}

const hashed = (text: string): number =>
  [...text].reduce((bits, letter) => Math.imul(bits ^ (letter.codePointAt(0) ?? 0), 0x01000193), 0x811c9dc5 | 0);
