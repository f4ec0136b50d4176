import type { Saying } from '../domain/desk/card.ts';
import { LAYOUTS } from './layout/layouts.ts';
import type { Voice } from './voice.ts';
import { LAID_OUT, type LaidOut, type Phrases } from './words.ts';

/** The text of a saying: laid out from phrases, or the sentences of its code. */
export const textOf = (say: Saying, voice: Voice, phrases: Phrases): string => onePoint(said(say, voice, phrases));

function said(say: Saying, voice: Voice, phrases: Phrases): string {
  const { code } = say;
  // Each table gives every code the facts of that very code, which a look-up by a code in general cannot show.
  if (isLaidOut(code)) return (LAYOUTS[code] as Laid)(say, voice, phrases);
  return (phrases.plain[code] as Plain)(say as never, voice);
}

/** A sentence that ends with an hour such as "7:00 p.m." has its point already. */
const onePoint = (text: string): string => text.replaceAll(/\b([ap]\.m\.)\./g, '$1');

type Laid = (say: Saying, voice: Voice, phrases: Phrases) => string;
type Plain = (say: never, voice: Voice) => string;

const isLaidOut = (code: Saying['code']): code is LaidOut => LAID_OUT.some((one) => one === code);
