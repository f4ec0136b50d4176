import { MINUTE } from '../craft/time.ts';
import { because, courseOf } from './binding.ts';
import type { Doing } from './doing.ts';
import { dayAfter } from './calendar.ts';
import { costOf, shipDayOf } from './cost.ts';
import type { Rule, World } from './run.ts';
import { dispatch } from './dispatch.ts';
import type { Model } from './model.ts';
import type { Load, LotPlan, Order, Part, Plan, Session } from './plan.ts';

/** The world in which all goes as the problem says. */
export const asPlanned = ({ amount, free }: Model): World => ({ amount, free, missed: new Uint8Array(0) });

/** Runs the rule as planned and writes the course of work down as a plan. */
export function layOut(model: Model, rule: Rule): Plan {
  const doings: Doing[] = [];
  const outcome = dispatch(model, rule, asPlanned(model), {
    part: (task, setup, start, end) => doings.push({ does: 'part', task, setup, start, end }),
    load: (recipe, start, tasks, heads) =>
      doings.push({ does: 'load', recipe, ...loadTimes(model, recipe, start), tasks: [...tasks], heads: [...heads] }),
  });
  const course = courseOf(doings);
  const lots = model.problem.lots.map(({ id }, lot): LotPlan => {
    const ready = outcome.ready[lot] as number;
    const day = shipDayOf(model, ready);
    const late = Math.max(0, day - (model.due[lot] as number));
    return { id, ready, ships: dayAfter(model.calendar, day), late, because: because(model, course, lot, day) };
  });
  return {
    id: model.problem.id,
    sessions: sessionsOf(model, doings),
    loads: doings.flatMap((doing) => (doing.does === 'load' ? [loadOf(model, doing)] : [])),
    lots,
    cost: costOf(model, outcome),
    order: orderOf(model, rule),
  };
}

function loadTimes({ problem, cycle }: Model, recipe: number, start: number) {
  const end = start + (cycle[recipe] as number);
  return { start, out: end - Math.round(problem.oven.unload * MINUTE), end };
}

/** Parts of one kind that follow on without a new setup are one session. */
function sessionsOf(model: Model, doings: readonly Doing[]): Session[] {
  const sessions: { kind: number; start: number; end: number; parts: Part[] }[] = [];
  for (const doing of doings) {
    if (doing.does === 'load') continue;
    const { task, setup, start, end } = doing;
    const kind = model.kindOf[task] as number;
    const part = { lot: lotId(model, task), start, end };
    const last = sessions.at(-1);
    if (last?.kind === kind && last.end === start) {
      last.parts.push(part);
      last.end = end;
    } else sessions.push({ kind, start: setup, end, parts: [part] });
  }
  return sessions.map(({ kind, start, end, parts }) => ({ ...kindAt(model, kind), start, end, parts }));
}

function loadOf(model: Model, doing: Extract<Doing, { does: 'load' }>): Load {
  const { start, out, end } = doing;
  const lots = Object.fromEntries(doing.tasks.map((task, i) => [lotId(model, task), doing.heads[i] ?? 0]));
  const recipe = model.recipes[doing.recipe];
  if (recipe === undefined) throw new Error('a load has a recipe');
  return { ...recipe, start, out, end, lots };
}

function kindAt(model: Model, kind: number) {
  const known = model.kinds[kind];
  if (known === undefined) throw new Error('a part has a kind');
  return known;
}

/** The order of work of a rule as plain data. */
export function orderOf({ tasks, problem }: Model, { keys, ...rule }: Rule): Order {
  const places = tasks.map(({ lot, does }, task) => ({
    lot: problem.lots[lot]?.id ?? '',
    do: does.do,
    key: keys[task] ?? 0,
  }));
  return { ...rule, places };
}

const lotId = ({ problem, lotOf }: Model, task: number): string => problem.lots[lotOf[task] ?? -1]?.id ?? '';
