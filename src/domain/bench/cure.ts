import { cureLeft, type EpoxySettings } from '../craft/epoxy.ts';
import type { Celsius } from '../craft/temperature.ts';
import { HOUR, later, type Instant } from '../craft/time.ts';
import type { Timer } from './timer.ts';

/** A running cure in a garage that is warmer or colder from now on: what it has done counts, what is left goes at the new rate.
 *  Below the least temperature it stands still, and is taken up again when it is warm enough. */
export function inGarage(timer: Timer, celsius: Celsius, now: Instant, settings: EpoxySettings): Timer {
  const { course } = timer;
  if (course === null) return timer;
  const spells = [...course.spells, { hours: Math.max(0, now - course.since) / HOUR, celsius: course.celsius }];
  const left = cureLeft(spells, celsius, settings);
  const hours = left.ok ? (timer.kind === 'cure' ? left.fullHours : left.overnightHours) : null;
  return {
    ...timer,
    dueAt: hours === null ? timer.dueAt : later(now, hours * 60),
    course: { spells, since: now, celsius, still: hours === null },
  };
}
