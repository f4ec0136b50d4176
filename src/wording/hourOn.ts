import { instantOf, type Day } from '../domain/craft/time.ts';
import type { Voice } from './voice.ts';

/** A time on the wall clock as it is said elsewhere. @example hourOn('2026-12-04', '13:00', voice) //=> '1:00 PM' */
export const hourOn = (day: Day, clock: string, voice: Voice): string =>
  voice.hour(instantOf(day, clock, voice.shop.zone));
