import { wordButton } from '../draftButtons.ts';
import { card, nothing, says, withPerson, type Decision, type Turn } from '../turn.ts';
import { draftOf } from './draft.ts';
import { said } from './said.ts';
import { talkAnew } from './talk.ts';

/** A message was changed after it was answered: nothing happens by itself, but the new words can be gone by with one tap. */
export function edited(turn: Turn, text: string): Decision {
  const desk = withPerson(turn.desk, { ...turn.by, reworded: text.slice(0, 4096) });
  const rows = [[wordButton('reword', { act: 'reworded', on: '-', version: 0, arg: '-' })]];
  return says(desk, card(turn.by.id, { code: 'edited', text }, { rows }));
}

/** Takes the changed words as said now. A second tap finds nothing to take. */
export function reworded(turn: Turn): Decision {
  const text = turn.by.reworded;
  const by = { ...turn.by, reworded: null };
  const desk = withPerson(turn.desk, by);
  return text === null ? { ...nothing(desk), toast: 'already' } : reheard({ ...turn, by, desk }, text);
}

/** Into an open draft the words go in place of those before; without one they are as new. */
const reheard = (turn: Turn, text: string): Decision =>
  draftOf(turn) === undefined ? said(turn, text) : talkAnew(turn, text);
