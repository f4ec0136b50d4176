import type { Day } from '../../src/domain/craft/time.ts';
import { addDays, daysBetween, HOUR, instantOf, localDay, MINUTE, weekdayOf } from '../../src/domain/craft/time.ts';
import type { Belief } from '../../src/domain/plan/learning.ts';
import { count, learn, MISSED, SCRAP, SHOP_FILE, spreadOf } from '../../src/domain/plan/learning.ts';
import type { Order, Plan } from '../../src/domain/plan/plan.ts';
import { isImpossible } from '../../src/domain/plan/plan.ts';
import type { PlanLot, PlanStep, Problem } from '../../src/domain/plan/problem.ts';
import { isHands, isWait } from '../../src/domain/plan/problem.ts';
import type { Chance } from '../../src/domain/plan/promise.ts';
import { dayFor, promise, TERMS } from '../../src/domain/plan/promise.ts';
import type { Random } from '../../src/domain/plan/random.ts';
import { gauss, pick, randomOf } from '../../src/domain/plan/random.ts';
import { follow } from '../../src/domain/plan/schedule.ts';
import { shipDayByWall } from '../domain/plan/feasible.ts';

/** How the made-up year truly goes. The planner is told none of it: its minutes come from gamma laws, its bad evenings
 *  come together, its orders in bursts. */
export type Truth = Readonly<{
  seed: number;
  days: number;
  ordersPerWeek: number;
  /** True minutes over the shop file's, by what is done. */
  bias: Readonly<Record<string, number>>;
  /** Shape of the gamma law of a step's minutes: the higher the steadier. */
  steady: number;
  scrap: number;
  missed: number;
  hooksLate: number;
}>;

export const USUAL: Truth = {
  seed: 1,
  days: 365,
  ordersPerWeek: 5.5,
  bias: {},
  steady: 10,
  scrap: 0.04,
  missed: 0.05,
  hooksLate: 0.3,
};

/** One order: when it was asked for, what was said of it, and when it went. */
export type Kept = Readonly<{
  asked: Day;
  went: Day;
  /** What was said of the days: the chance that it has left by each. */
  outlook: readonly Chance[];
}>;

const ZONE = 'America/Chicago';
const EVENING = [['18:30', '21:30']] as const;
const WEEKLY = { mon: EVENING, tue: EVENING, wed: EVENING, thu: EVENING, sat: [['08:00', '14:00']] as const };
const SHOP: Omit<Problem, 'now' | 'lots'> = {
  id: 'year',
  zone: ZONE,
  hours: { weekly: WEEKLY, daysOff: [], extra: [] },
  post: { days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'], by: '12:00', closed: [] },
  setup: { pour: 12, paint: 6, guard: 4 },
  oven: { rack: 48, load: 3, unload: 3 },
};

type Job = { lot: PlanLot; scrapSeen: boolean; promised: Omit<Kept, 'went'>; hooks: number };
type Year = {
  readonly truth: Truth;
  readonly random: Random;
  now: number;
  jobs: Job[];
  order: Order;
  running: { out: number } | undefined;
  beliefs: Record<string, Belief>;
  scrap: typeof SCRAP;
  missed: typeof MISSED;
  readonly kept: Kept[];
  /** What has been spent on a step so far, against what the file says, by lot and step. */
  readonly spent: Map<string, { expected: number; true: number; left: number }>;
  /** Everything is slower on some evenings. */
  mood: number;
};

/** Lives through the year evening by evening, planning again after every session, and tells of every order that went. */
export function liveThrough(truth: Truth): readonly Kept[] {
  const random = randomOf(truth.seed);
  const start = instantOf('2026-01-05', '08:00', ZONE);
  const year: Year = {
    truth,
    random,
    now: start,
    jobs: [],
    running: undefined,
    beliefs: {},
    scrap: SCRAP,
    missed: MISSED,
    kept: [],
    mood: 1,
    order: { places: [], grouping: 40, ahead: 12, patience: HOUR, yields: 1e15, crumb: 5 * MINUTE },
    spent: new Map(),
  };
  let absent = false;
  for (let i = 0, day = localDay(start, ZONE); i < truth.days; i++, day = addDays(day, 1)) {
    for (let orders = ordersOn(year); orders > 0; orders--) takeOrder(year, day, i);
    hooksArrive(year, day);
    const spans = WEEKLY[weekdayOf(day) as keyof typeof WEEKLY] ?? [];
    for (const [from, to] of spans) {
      absent = random() < truth.missed * (absent ? 3 : 0.9);
      year.missed = count(year.missed, { hits: absent ? 1 : 0, misses: absent ? 0 : 1 });
      year.mood = gamma(random, 40);
      if (!absent) workThrough(year, instantOf(day, from, ZONE), instantOf(day, to, ZONE));
    }
  }
  return year.kept;
}

/** Orders come in bursts: some weeks thrice as many. */
function ordersOn({ truth, random }: Year): number {
  const rate = (truth.ordersPerWeek / 7) * gamma(random, 0.7);
  let [orders, product] = [0, random()];
  for (const limit = Math.exp(-rate); product > limit; product *= random()) orders++;
  return orders;
}

function takeOrder(year: Year, day: Day, serial: number): void {
  year.now = Math.max(year.now, instantOf(day, '06:00', ZONE) + pick(year.random, 115) * MINUTE);
  const lot = someOrder(year.random, `K${serial}-${year.jobs.length}-${year.kept.length}`, year.now);
  const spread = { ...spreadOf(year.beliefs, year.scrap, year.missed), lateDays: 1.2 };
  const problem: Problem = { ...problemOf(year), lots: lotsOf(year) };
  const terms = { ...TERMS, worlds: 200, seed: year.kept.length + 1, spread, before: year.order };
  const promised = promise(problem, [lot], terms);
  if (isImpossible(promised)) throw new Error(JSON.stringify(promised));
  year.order = promised.plan.order;
  const hooksLate = lot.release !== null && year.random() < year.truth.hooksLate ? 1 + pick(year.random, 4) : 0;
  year.jobs.push({
    lot: { ...lot, due: promised.day, release: promised.from ?? lot.release },
    scrapSeen: false,
    hooks: (lot.release ?? 0) + hooksLate * 24 * HOUR,
    promised: { asked: day, outlook: promised.outlook },
  });
}

/** What was said to come and has not come is expected tomorrow. */
function hooksArrive(year: Year, day: Day): void {
  const evening = instantOf(day, '18:00', ZONE);
  for (const job of year.jobs) {
    const { release } = job.lot;
    if (release === null || release > evening) continue;
    job.lot = { ...job.lot, release: job.hooks > evening ? evening + 24 * HOUR : null };
  }
}

function workThrough(year: Year, opens: number, closes: number): void {
  year.now = Math.max(year.now, opens);
  for (let guard = 0; year.now < closes && guard < 200; guard++) {
    const plan = follow({ ...problemOf(year), lots: lotsOf(year) }, year.order);
    if (isImpossible(plan)) throw new Error(JSON.stringify(plan));
    year.order = plan.order;
    if (!doNext(year, plan, closes)) break;
  }
}

/** Does the first thing of the plan, or waits for it; false when tonight has nothing more. */
function doNext(year: Year, { sessions, loads }: Plan, closes: number): boolean {
  const out = year.running?.out ?? Infinity;
  const [session, load] = [sessions[0], loads[0]];
  const [work, bake] = [session?.start ?? Infinity, load?.start ?? Infinity];
  year.now = Math.max(year.now, Math.min(work, bake, out, closes));
  if (year.now >= closes) return false;
  if (year.now >= out) unload(year);
  else if (load !== undefined && bake < work) fillOven(year, load);
  else if (session !== undefined) workSession(year, session, Math.min(closes, out));
  return true;
}

function unload(year: Year): void {
  year.now += SHOP.oven.unload * MINUTE;
  year.running = undefined;
}

/** Orders of this year fit the rack, so a load finishes the bake of every lot in it. */
function fillOven(year: Year, { start, out, end, lots }: Plan['loads'][number]): void {
  for (const id of Object.keys(lots)) {
    const job = jobOf(year, id);
    job.lot = { ...job.lot, steps: job.lot.steps.slice(1), release: end };
    settle(year, job, end);
  }
  year.now = start + SHOP.oven.load * MINUTE;
  year.running = { out };
}

function workSession(year: Year, session: Plan['sessions'][number], until: number): void {
  year.now += (SHOP.setup[session.do] ?? 0) * MINUTE;
  for (const { lot } of session.parts) {
    if (year.now >= until) return;
    const job = jobOf(year, lot);
    const [step, ...rest] = job.lot.steps;
    if (step === undefined || !isHands(step) || step.do !== session.do) return;
    const tally = tallyOf(year, job, step);
    const spent = Math.min(tally.left, (until - year.now) / MINUTE);
    tally.left -= spent;
    year.now = Math.round(year.now + spent * MINUTE);
    if (tally.left > 1e-6) {
      // The maker sees how much of the lot is done, not how long the rest will take.
      const share = tally.left / tally.true;
      job.lot = { ...job.lot, steps: [{ ...step, minutes: tally.expected * share }, ...rest] };
      return;
    }
    finishStep(year, job, step, rest);
  }
}

const wholeMs = (minutes: number): number => Math.max(1, Math.round(minutes * MINUTE)) / MINUTE;

function tallyOf(year: Year, { lot }: Job, step: PlanStep & { minutes: number }) {
  const name = `${lot.id} ${lot.steps.length} ${step.do}`;
  const known = year.spent.get(name);
  if (known !== undefined) return known;
  const { bias, steady } = year.truth;
  const minutes = wholeMs(step.minutes * (bias[step.do] ?? 1) * gamma(year.random, steady) * year.mood);
  const tally = { expected: step.minutes, true: minutes, left: minutes };
  year.spent.set(name, tally);
  return tally;
}

function finishStep(year: Year, job: Job, step: PlanStep & { minutes: number }, rest: readonly PlanStep[]): void {
  const tally = tallyOf(year, job, step);
  year.beliefs[step.do] = learn(year.beliefs[step.do] ?? SHOP_FILE, tally.expected, tally.true);
  job.lot = { ...job.lot, steps: rest, release: null };
  if (step.do === 'trim' && !job.scrapSeen) countScrap(year, job, step.minutes);
  settle(year, job, year.now);
}

/** Heads that came out bad are poured and trimmed again before the lot goes on. */
function countScrap(year: Year, job: Job, trimMinutes: number): void {
  const { heads, steps } = job.lot;
  job.scrapSeen = true;
  let bad = 0;
  for (let i = 0; i < heads; i++) if (year.random() < year.truth.scrap) bad++;
  year.scrap = count(year.scrap, { hits: bad, misses: heads - bad });
  if (bad === 0) return;
  const again: PlanStep[] = [
    { do: 'pour', with: moldOf(job.lot.id), minutes: Math.ceil(bad * 0.9) },
    { do: 'trim', minutes: Math.max(1, (trimMinutes * bad) / heads) },
  ];
  job.lot = { ...job.lot, steps: [...again, ...steps] };
}

/** Passes over waits: the lot is free when they are over; the last of them done, it ships. */
function settle(year: Year, job: Job, at: number): void {
  let free = at;
  let steps = job.lot.steps;
  for (let [step] = steps; step !== undefined && isWait(step); [step] = steps) {
    free += step.wait * MINUTE;
    steps = steps.slice(1);
  }
  job.lot = { ...job.lot, steps, release: free > year.now ? free : job.lot.release };
  if (steps.length > 0) return;
  const went = shipDayByWall({ ...SHOP, now: year.now, lots: [] }, free);
  year.kept.push({ ...job.promised, went });
  year.jobs = year.jobs.filter((one) => one !== job);
}

const problemOf = ({ now, running }: Year): Omit<Problem, 'lots'> => ({
  ...SHOP,
  now,
  oven: running === undefined ? SHOP.oven : { ...SHOP.oven, running: { out: running.out } },
});

/** What the planner is told of the open lots. */
const lotsOf = ({ jobs }: Year): PlanLot[] => jobs.map(({ lot }) => lot);

function jobOf({ jobs }: Year, id: string): Job {
  const job = jobs.find(({ lot }) => lot.id === id);
  if (job === undefined) throw new Error(`no lot ${id}`);
  return job;
}

const MOLDS = ['ball-1/8', 'ball-1/4', 'football-3/8', 'swim-3/8'];
const COLOURS = ['black', 'white', 'chartreuse', 'green-pumpkin'];
const moldOf = (id: string): string => MOLDS[id.length % MOLDS.length] ?? 'ball-1/8';

function someOrder(random: Random, id: string, now: number): PlanLot {
  const heads = Math.min(48, 8 + Math.floor(-Math.log(1 - random()) * 18));
  const steps: PlanStep[] = [
    { do: 'pour', with: moldOf(id), minutes: Math.ceil(heads * 0.9) },
    { do: 'trim', minutes: Math.ceil(heads * 0.5) },
  ];
  if (random() < 0.75) {
    steps.push({ do: 'paint', with: COLOURS[pick(random, 4)] ?? 'black', minutes: Math.ceil(heads * 0.75) });
    steps.push({ do: 'bake', with: '177C', hold: 27 }, { do: 'cool', wait: 30 });
  }
  if (random() < 0.5) steps.push({ do: 'guard', minutes: Math.ceil(heads * 0.35) }, { do: 'cure', wait: 1440 });
  steps.push({ do: 'pack', minutes: 3 + Math.ceil(heads * 0.1) });
  const release = random() < 0.15 ? now + (2 + pick(random, 6)) * 24 * HOUR : null;
  return { id, heads, due: null, weight: 1, release, steps };
}

/** A draw from the gamma law with mean 1 (Marsaglia and Tsang 2000). */
function gamma(random: Random, shape: number): number {
  if (shape < 1) return (gamma(random, shape + 1) * (shape + 1) * random() ** (1 / shape)) / shape;
  const d = shape - 1 / 3;
  for (;;) {
    const x = gauss(random);
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - random()) < x ** 2 / 2 + d - d * v + d * Math.log(v)) return (d * v) / shape;
  }
}

/** How well promises at one confidence held. Days are coarse: `kept` is to be held against `said`, the mean chance the promised
 *  days were given. `longer` is the mean promised over the mean actual lead, less one. */
export function judged(all: readonly Kept[], confidence: number) {
  const mean = (of: (one: Kept) => number) => all.reduce((sum, one) => sum + of(one), 0) / all.length;
  const promised = mean((one) => daysBetween(one.asked, dayFor(one.outlook, confidence).day));
  const actual = mean((one) => daysBetween(one.asked, one.went));
  return {
    orders: all.length,
    kept: mean((one) => (one.went <= dayFor(one.outlook, confidence).day ? 1 : 0)),
    said: mean(({ outlook }) => dayFor(outlook, confidence).chance),
    promised,
    actual,
    longer: promised / actual - 1,
    between: mean((one) => keptBetween(one, confidence)),
  };
}

/** How far a promise of exactly this confidence is kept. Ship days are whole, so it lies between two days: the later is promised as
 *  often as brings the chances to the confidence, the earlier else. That is how a law on whole numbers is tested for calibration:
 *  Czado, Gneiting and Held, Predictive model assessment for count data, Biometrics 65 (2009), section 2.1 (from memory). */
function keptBetween({ outlook, went }: Kept, confidence: number): number {
  const at = outlook.findIndex(({ chance }) => chance >= confidence);
  const later = outlook[at] ?? outlook.at(-1);
  const earlier = outlook[(at < 0 ? outlook.length : at) - 1];
  if (later === undefined) return 0;
  const [low, high] = [earlier?.chance ?? 0, later.chance];
  const share = high <= low ? 1 : Math.min(1, (confidence - low) / (high - low));
  const isKept = (day: Day | undefined): number => (day !== undefined && went <= day ? 1 : 0);
  return share * isKept(later.day) + (1 - share) * isKept(earlier?.day);
}
