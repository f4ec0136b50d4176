import type { CardButton, Saying } from '../domain/desk/card.ts';
import type { Label } from '../domain/desk/label.ts';
import type { Button } from '../app/letter.ts';
import { writeTap } from './buttons.ts';
import { capital, clipped, LABEL_MOST } from './clip.ts';
import { partName } from './names.ts';
import type { Voice } from './voice.ts';
import type { LabelWords, Phrases } from './words.ts';

/** The buttons of a card in words. No two of a card read the same: one that does the same as an earlier one is left out, and one that does not is told apart. */
export function buttonRows(
  rows: readonly (readonly CardButton[])[],
  say: Saying,
  voice: Voice,
  phrases: Phrases,
): Button[][] {
  const seen = new Map<string, string>();
  return rows
    .map((row) => row.flatMap((button) => buttonOf(button, say, seen, voice, phrases)))
    .filter((row) => row.length > 0);
}

function buttonOf(
  button: CardButton,
  say: Saying,
  seen: Map<string, string>,
  voice: Voice,
  phrases: Phrases,
): Button[] {
  const data = writeTap(button.tap);
  const text = clipped(capital(labelText(button.label, voice, phrases.labels)), LABEL_MOST);
  const standing = seen.get(text);
  if (standing === data || (standing !== undefined && button.label.code === 'way')) return [];
  const label = standing === undefined ? text : clipped(`${text} (${subjectOf(button, say, voice)})`, LABEL_MOST);
  if (seen.has(label)) return [];
  seen.set(label, data);
  return [{ label, data }];
}

/** What a label says. */
export function labelText(label: Label, voice: Voice, words: LabelWords): string {
  if (label.code === 'word') return words.words[label.word];
  if (label.code === 'choice') return choiceText(label, voice, words);
  const write = words[label.code] as (facts: Label, voice: Voice) => string;
  return write(label, voice);
}

function choiceText({ ask, value }: Extract<Label, { code: 'choice' }>, voice: Voice, words: LabelWords): string {
  if (ask === 'usual') return words.usual(Number(value), voice);
  if (ask === 'quantity') return voice.count(Number(value), voice.terms.heads);
  if (ask === 'shipTo') return voice.place(value);
  if (ask === 'needBy') return voice.shortDay(value);
  return partName(voice, ask, value);
}

/** What tells a button from another with the same words: its timer's kind, else the id that it acts on. */
function subjectOf({ tap }: CardButton, say: Saying, voice: Voice): string {
  const timer = say.code === 'timers-due' ? say.timers.find(({ timer }) => timer.id === tap.on)?.timer : undefined;
  return timer === undefined ? tap.on : voice.terms.timers[timer.kind];
}
