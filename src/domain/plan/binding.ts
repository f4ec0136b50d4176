import type { Instant } from '../craft/time.ts';
import { MINUTE } from '../craft/time.ts';
import { firstAtLeast } from './arrays.ts';
import { cutOff, dayAfter } from './calendar.ts';
import type { Doing } from './doing.ts';
import type { Model } from './model.ts';
import type { Because } from './plan.ts';
import { isWait } from './problem.ts';

/** What was done when, found by task; for each place the place of the last load before it, -1 for none. */
export type Course = Readonly<{
  doings: readonly Doing[];
  ofTask: ReadonlyMap<number, readonly number[]>;
  loadBefore: readonly number[];
}>;

/** The doings in order of time with the places of each task's parts and loads among them. */
export function courseOf(doings: readonly Doing[]): Course {
  const ofTask = new Map<number, number[]>();
  const loadBefore: number[] = [];
  let load = -1;
  for (const [place, doing] of doings.entries()) {
    loadBefore.push(load);
    if (doing.does === 'load') load = place;
    for (const task of doing.does === 'part' ? [doing.task] : doing.tasks) {
      const places = ofTask.get(task);
      if (places === undefined) ofTask.set(task, [place]);
      else places.push(place);
    }
  }
  return { doings, ofTask, loadBefore };
}

/** What bound a lot, in order of time: before each of its steps what it waited for, each lag, and the post at the end. */
export function because(model: Model, course: Course, lot: number, ships: number): Because[] {
  const reasons: Because[] = [...material(model, lot)];
  let free = Math.max(model.calendar.now, model.problem.lots[lot]?.release ?? -Infinity);
  let task = model.firstTask[lot] ?? 0;
  for (const [step, does] of (model.problem.lots[lot]?.steps ?? []).entries()) {
    if (isWait(does)) {
      free += Math.round(does.wait * MINUTE);
      reasons.push({ code: 'lag', do: does.do, until: free });
    } else if (isTask(model, task, lot, step)) {
      const held = whatHeld(model, course, task, free);
      free = endOf(course, task++, free);
      reasons.push(...held, { code: 'work', do: does.do, until: free });
    }
  }
  return [...telling(reasons), post(model, ships)];
}

const isTask = ({ tasks }: Model, task: number, lot: number, step: number): boolean =>
  tasks[task]?.lot === lot && tasks[task]?.step === step;

const endOf = ({ ofTask, doings }: Course, task: number, free: Instant): Instant =>
  doings[ofTask.get(task)?.at(-1) ?? -1]?.end ?? free;

function material({ problem, calendar }: Model, lot: number): Because[] {
  const release = problem.lots[lot]?.release ?? null;
  return release !== null && release > calendar.now ? [{ code: 'material', until: release }] : [];
}

/** Why the bench did not begin with this when it was free: closed, busy with others, or the oven taken. */
function whatHeld(model: Model, course: Course, task: number, free: Instant): Because[] {
  const place = course.ofTask.get(task)?.[0] ?? -1;
  const first = course.doings[place];
  if (first === undefined || startOf(first) <= free) return [];
  const until = startOf(first);
  const before = justBefore(course, place, until);
  if (before === undefined) {
    const opens = opening(model, until);
    return opens > free ? [{ code: 'hours', until: opens }] : [];
  }
  const bothBake = first.does === 'load' && before.does === 'load';
  return bothBake ? [{ code: 'oven', until }] : [{ code: 'hands', until, with: lotsOf(model, before) }];
}

/** What ended at the very instant this began: the part before it, or a load that came out. */
const justBefore = ({ doings, loadBefore }: Course, place: number, at: Instant): Doing | undefined =>
  [doings[loadBefore[place] ?? -1], doings[place - 1]].find((doing) => doing?.end === at);

/** When the stretch of hours around an instant begins. */
function opening({ calendar: { starts } }: Model, at: Instant): Instant {
  const next = firstAtLeast(starts, at);
  return (starts[next] === at ? at : starts[next - 1]) ?? at;
}

/** Own work is worth a word only where nothing else is said after it; of the same held-up twice in a row the last counts. */
const telling = (reasons: readonly Because[]): Because[] =>
  reasons.filter(({ code }, i) =>
    code === 'work' ? i === reasons.length - 1 : code === 'lag' || code !== reasons[i + 1]?.code,
  );

const post = ({ calendar }: Model, day: number): Because => ({
  code: 'post',
  day: dayAfter(calendar, day),
  by: cutOff(calendar, day) - MINUTE + 1,
});

const startOf = (doing: Doing): Instant => (doing.does === 'part' ? doing.setup : doing.start);

function lotsOf({ problem, lotOf }: Model, doing: Doing): string[] {
  const tasks = doing.does === 'part' ? [doing.task] : doing.tasks;
  return tasks.map((task) => problem.lots[lotOf[task] ?? -1]?.id ?? '');
}
