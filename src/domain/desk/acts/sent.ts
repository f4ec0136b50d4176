import type { Command } from '../command.ts';
import { currentLine, isBlank, MOST_PHOTOS, withLine, type Draft } from '../../order/draft.ts';
import { turned } from '../../order/talk.ts';
import { universalIn } from '../../order/universal.ts';
import { proceed } from '../ask.ts';
import type { Saying } from '../card.ts';
import { card, isMaker, says, withPerson, type Decision, type Turn } from '../turn.ts';
import { asksForHeads } from './answers.ts';
import { answerQuestion } from './asks.ts';
import { draftOf, opened } from './draft.ts';
import { photoAfter } from './loose.ts';
import { said } from './said.ts';

type Sent = Extract<Command, { type: 'sent' }>;

/** A photo goes with what is being talked about; words under it count as said. Everything else gets a fitting answer. */
export function sent(turn: Turn, { thing, file, album, caption }: Sent): Decision {
  const again = album !== null && album === turn.by.album;
  const at = inAlbum(turn, album, again);
  if (thing === 'photo' && file !== null)
    return again ? quietly(at, photo(at, file, caption)) : photo(at, file, caption);
  return answered(at, { code: 'fitting-answer', thing, kept: false }, caption);
}

/** Photos sent together come one by one; the first of them is answered for all, and all answer what the first did. */
function inAlbum(turn: Turn, album: string | null, again: boolean): Turn {
  const { asked } = turn.by;
  const albumFor = again ? turn.by.albumFor : album !== null && asked?.for === 'reply' ? asked.question : null;
  const by = { ...turn.by, album, albumFor };
  return { ...turn, by, desk: withPerson(turn.desk, by) };
}

/** What is said to others stands. */
const quietly = ({ by }: Turn, decision: Decision): Decision => ({
  ...decision,
  cards: decision.cards.filter(({ to }) => to !== by.id),
});

/** A photo answers the buyer who asked, goes with the head that is being put together, or with the order placed before. */
function photo(turn: Turn, file: string, caption: string): Decision {
  const { asked, albumFor } = turn.by;
  const question = asked?.for === 'reply' ? asked.question : albumFor;
  if (question !== null) return answerQuestion(turn, question, caption, file);
  const open = draftOf(turn);
  const isOfDraft = asksForHeads(turn, caption) || (open !== undefined && !isBlank(open));
  return (isOfDraft ? undefined : photoAfter(turn, file, caption)) ?? photoOfDraft(turn, file, caption);
}

/** Kept with the line being talked about. A buyer without one begins an order with it; for the maker it is of nothing. */
function photoOfDraft(turn: Turn, file: string, caption: string): Decision {
  const open = draftOf(turn);
  if (open === undefined && isMaker(turn.world, turn.by.id))
    return answered(turn, { code: 'fitting-answer', thing: 'photo', kept: false }, caption);
  const [at, draft] = open === undefined ? opened(turn) : [turn, open];
  const { photos } = currentLine(draft);
  if (photos.length >= MOST_PHOTOS) return answered(at, { code: 'photos-full', most: MOST_PHOTOS }, caption);
  const shown = turned(withPhoto(draft, file), turn.now);
  const isHeard = saysOfHead(turn, caption);
  const kept = isHeard ? shown : withSaid(shown, caption);
  const desk = { ...at.desk, drafts: { ...at.desk.drafts, [turn.by.id]: kept } };
  return answered({ ...at, desk }, { code: 'fitting-answer', thing: 'photo', kept: true }, isHeard ? caption : '');
}

/** Whether words under a photo order something; others, as "make the eye bigger like this", are for the maker. */
const saysOfHead = ({ world, now, by }: Turn, caption: string): boolean =>
  universalIn(caption) !== undefined ||
  caption.trim().endsWith('?') ||
  JSON.stringify(world.reader.read(caption, now, by.language)) !== NOTHING_READ;
const NOTHING_READ = JSON.stringify({ lines: [], needBy: null, shipTo: null, unclear: [], refers: null });

/** The line at hand with what was said under its photo, for the bench. */
function withSaid(draft: Draft, caption: string): Draft {
  const line = currentLine(draft);
  const words = caption.trim().slice(0, LONGEST_SAID);
  return words === '' ? draft : withLine(draft, draft.current, { ...line, said: [...line.said, words].slice(-10) });
}
const LONGEST_SAID = 300;

function withPhoto(draft: Draft, file: string): Draft {
  const line = currentLine(draft);
  const photos = line.photos.includes(file) ? line.photos : [...line.photos, file];
  return withLine(draft, draft.current, { ...line, photos });
}

/** The answer, then what the words under it come to, else the draft again where a photo was kept with it. */
function answered(turn: Turn, say: Saying, caption: string): Decision {
  const open = draftOf(turn);
  const isKept = say.code === 'fitting-answer' && say.kept;
  const follow =
    caption.trim() !== '' ? said(turn, caption) : isKept && open ? proceed(turn, open, 'below') : says(turn.desk);
  return { ...follow, cards: [card(turn.by.id, say), ...follow.cards] };
}
