import type { Rate } from '../domain/craft/money.ts';
import type { Voice } from './voice.ts';

/** A rate in whole per cent, or one digit after the point where it is small. @example percent(6875, voice) //=> '6.9 %' */
export const percent = (rate: Rate, voice: Voice): string =>
  `${voice.number(Math.abs(rate) < 10_000 ? Math.round(rate / 100) / 10 : Math.round(rate / 1000))} %`;
