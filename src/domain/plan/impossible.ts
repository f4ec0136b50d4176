import type { Instant, Minutes } from '../craft/time.ts';
import { MINUTE } from '../craft/time.ts';
import { hasWindow, shipDay } from './calendar.ts';
import type { Outcome } from './dispatch.ts';
import type { Model } from './model.ts';
import type { Hindrance, Impossible } from './plan.ts';

/** Stretches of hours looked at for the longest: a year of evenings. */
const LOOKED_AT = 400;

/** Every lot that can never be done or never leaves, with the reason; empty when all can. */
export function hindrances(model: Model): Impossible['impossible'] {
  const longest = longestWindow(model);
  return model.problem.lots.flatMap(({ id }, lot) => {
    const why = hindranceOf(model, lot, longest);
    return why === undefined ? [] : [{ lot: id, why }];
  });
}

/** The lots a run did not get ready because their hours end before, or that no post takes. */
export const unfinished = (model: Model, { ready }: Outcome): Impossible['impossible'] =>
  model.problem.lots.flatMap(({ id }, lot) => {
    const why = neverShips(model, ready[lot] ?? Infinity);
    return why === undefined ? [] : [{ lot: id, why }];
  });

function neverShips({ calendar }: Model, ready: Instant): Hindrance | undefined {
  if (ready === Infinity) return { code: 'hours-end' };
  return shipDay(calendar, ready) < 0 ? { code: 'no-post' } : undefined;
}

function hindranceOf(model: Model, lot: number, longest: Minutes): Hindrance | undefined {
  if (shipDay(model.calendar, model.calendar.now) < 0) return { code: 'no-post' };
  for (let task = model.firstTask[lot] ?? 0; task < (model.firstTask[lot + 1] ?? 0); task++) {
    const why =
      longest <= 0
        ? ({ code: 'no-hours' } as const)
        : (setupHinders(model, task, longest) ?? bakeHinders(model, task, longest));
    if (why !== undefined) return why;
  }
  return undefined;
}

function setupHinders(model: Model, task: number, longest: Minutes): Hindrance | undefined {
  const kind = model.kindOf[task] ?? -1;
  const minutes = (model.setup[kind] ?? 0) / MINUTE;
  const of = model.kinds[kind];
  return of !== undefined && minutes >= longest ? { code: 'setup-too-long', do: of.do, minutes, longest } : undefined;
}

function bakeHinders(model: Model, task: number, longest: Minutes): Hindrance | undefined {
  const cycle = model.cycle[model.recipeOf[task] ?? -1];
  if (cycle === undefined) return undefined;
  if (cycle / MINUTE > longest) return { code: 'bake-too-long', minutes: cycle / MINUTE, longest };
  return model.problem.oven.rack < 1 ? { code: 'no-rack', heads: model.amount[task] ?? 0 } : undefined;
}

/** The longest stretch of hours, looked for until one is long enough for all. */
function longestWindow(model: Model): Minutes {
  const { calendar, setup, cycle } = model;
  const enough = Math.max(0, ...setup, ...cycle);
  let longest = 0;
  for (let i = 0; i < LOOKED_AT && longest <= enough && hasWindow(calendar, i); i++) {
    longest = Math.max(longest, (calendar.ends[i] ?? 0) - (calendar.starts[i] ?? 0));
  }
  return longest / MINUTE;
}
