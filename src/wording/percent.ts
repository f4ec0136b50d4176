import type { Rate } from '../domain/craft/money.ts';
import type { Voice } from './voice.ts';

/** A rate in whole per cent, or to one digit after the point where it is small. @example percent(6875, voice) //=> '6.9%' */
export const percent = (rate: Rate, voice: Voice): string =>
  voice.percent(rate / 100_000, Math.abs(rate) < 10_000 ? 1 : 0);
