import { DAY_BEGIN, DAY_END } from '../domain/desk/change.ts';
import type { Day } from '../domain/craft/time.ts';
import { hourOn } from './hourOn.ts';
import type { Voice } from './voice.ts';

type Part = Readonly<{ day: Day; from: string; to: string }>;
type PartWords = Readonly<{
  on: (from: string) => string;
  until: (to: string) => string;
  between: (from: string, to: string) => string;
}>;

/** A part of a day in words: the beginning and the end of the day are not named. @example 'from 8:00 PM on' */
export function partOfDay({ day, from, to }: Part, voice: Voice, words: PartWords): string {
  if (to === DAY_END) return words.on(hourOn(day, from, voice));
  if (from === DAY_BEGIN) return words.until(hourOn(day, to, voice));
  return words.between(hourOn(day, from, voice), hourOn(day, to, voice));
}
