import type { Command } from '../command.ts';
import { currentLine, withLine } from '../../order/draft.ts';
import { turned } from '../../order/talk.ts';
import { proceed } from '../ask.ts';
import { card, says, withPerson, type Decision, type Turn } from '../turn.ts';
import { draftOf } from './draft.ts';
import { said } from './said.ts';

/** A photo goes with the line being talked about; words under it count as said. Everything else gets a fitting answer. */
export function sent(turn: Turn, { thing, file, album, caption }: Extract<Command, { type: 'sent' }>): Decision {
  const kept = thing === 'photo' && file !== null ? keepPhoto(turn, file) : undefined;
  const answered = album !== null && album === turn.by.album;
  const at = inAlbum(kept ?? turn, album);
  if (answered && caption.trim() === '') return says(at.desk);
  const answer = card(turn.by.id, { code: 'fitting-answer', thing, kept: kept !== undefined });
  const open = draftOf(at);
  const follow = caption.trim() !== '' ? said(at, caption) : kept && open ? proceed(at, open, 'below') : says(at.desk);
  return { ...follow, cards: [answer, ...follow.cards] };
}

/** Photos sent together come one by one; the first of them is answered for all. */
function inAlbum(turn: Turn, album: string | null): Turn {
  const by = { ...turn.by, album };
  return { ...turn, by, desk: withPerson(turn.desk, by) };
}

const MOST_PHOTOS = 10;

function keepPhoto(turn: Turn, file: string): Turn | undefined {
  const draft = draftOf(turn);
  const line = draft && currentLine(draft);
  if (draft === undefined || line === undefined || line.photos.length >= MOST_PHOTOS) return undefined;
  const photos = line.photos.includes(file) ? line.photos : [...line.photos, file];
  const next = turned(withLine(draft, draft.current, { ...line, photos }), turn.now);
  return { ...turn, desk: { ...turn.desk, drafts: { ...turn.desk.drafts, [turn.by.id]: next } } };
}
