import { localClock, type Instant, type Zone } from '../craft/time.ts';
import { weekdayAt } from '../craft/wall.ts';
import type { Because, Hindrance } from './plan.ts';

type Said<F, Code extends string> = { readonly [K in Code]: (fact: Extract<F, { code: K }>, zone: Zone) => string };

/** A reason in the plan format's English.
 *  @example sayBecause({ code: 'lag', do: 'cure', until }, 'America/Chicago') //=> 'cure runs to Fri 19:02' */
export const sayBecause = (reason: Because, zone: Zone): string => say(BECAUSE, reason, zone);

/** Why a lot can never be done, in the plan format's English. */
export const sayHindrance = (why: Hindrance, zone: Zone): string => say(HINDRANCE, why, zone);

const BECAUSE: Said<Because, Because['code']> = {
  material: ({ until }, zone) => `material arrives ${short(until, zone)}`,
  hands: ({ until }, zone) => `hands are taken until ${short(until, zone)}`,
  hours: ({ until }, zone) => `no hours until ${short(until, zone)}`,
  oven: ({ until }, zone) => `the oven is taken until ${short(until, zone)}`,
  lag: ({ do: what, until }, zone) => `${what} runs to ${short(until, zone)}`,
  work: ({ do: what, until }, zone) => `${what} is done ${short(until, zone)}`,
  post: ({ by }, zone) => `post leaves ${short(by, zone)}`,
};

const HINDRANCE: Said<Hindrance, Hindrance['code']> = {
  'no-hours': () => 'there are no working hours at all',
  'hours-end': () => 'the working hours end before it is done',
  'no-post': () => 'no post leaves within 400 days of it being ready',
  'no-rack': ({ heads }) => `the oven rack holds no heads and ${heads} are to be baked`,
  'setup-too-long': ({ do: what, minutes, longest }) =>
    `${what} needs ${minutes} min of setup before any work and the longest stretch of hours is ${longest} min`,
  'bake-too-long': ({ minutes, longest }) =>
    `a bake takes ${minutes} min with loading and unloading and the longest stretch of hours is ${longest} min`,
};

function say<F extends { code: string }>(words: Said<F, F['code']>, fact: F, zone: Zone): string {
  const word: (fact: never, zone: Zone) => string = words[fact.code as F['code']];
  return word(fact as never, zone);
}

/** A weekday and clock time on the shop's wall, such as `Fri 19:02`. */
const short = (at: Instant, zone: Zone): string => `${DAYS[weekdayAt(at, zone)] ?? ''} ${localClock(at, zone)}`;

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
