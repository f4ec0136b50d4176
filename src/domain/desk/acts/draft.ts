import { usualSpec } from '../../order/choices.ts';
import {
  ASKS,
  currentLine,
  emptyDraft,
  emptyLine,
  putSlot,
  withLine,
  type Ask,
  type Draft,
} from '../../order/draft.ts';
import { answered, backed, turned } from '../../order/talk.ts';
import { LINE_SLOTS } from '../../shop/words.ts';
import { proceed, waysOffered } from '../ask.ts';
import { draftSlot, draftTap, inRows, wordButton } from '../draftButtons.ts';
import type { CardButton } from '../card.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, without, type Decision, type Turn } from '../turn.ts';

/** Acts on the sender's own draft. Each takes a tap drawn for the draft as it still is; an older one only shows the draft again. */
type DraftAct = (turn: Turn, draft: Draft, arg: string) => Decision;

/** Finds the sender's draft for a tap, or says kindly that the button is of yesterday. */
export const onDraft =
  (act: DraftAct) =>
  (turn: Turn, tap: Tap): Decision => {
    const draft = draftOf(turn);
    if (draft === undefined || draft.id !== tap.on)
      return { ...says(turn.desk, card(turn.by.id, { code: 'stale' }, { rows: [[newButton()]] })), toast: 'stale' };
    if (draft.version !== tap.version) return { ...proceed(turn, draft, 'over'), toast: 'stale' };
    return act(turn, draft, tap.arg);
  };

export const draftOf = ({ desk, by }: Turn): Draft | undefined => desk.drafts[by.id];

/** Whether a draft stands before its buyer with its price and its day, just as it is now. */
export const isQuoted = ({ desk }: Turn, draft: Draft): boolean => desk.quotes[draft.id]?.version === draft.version;

const answerAt =
  (place: 'over' | 'below'): DraftAct =>
  (turn, draft, arg) => {
    const [ask = '', value = ''] = split(arg, '=');
    const slot = [...LINE_SLOTS, 'shipTo' as const, 'needBy' as const].find((name) => name === ask);
    if (slot === undefined || value === '') return { ...nothing(turn.desk), toast: 'unreadable' };
    return proceed(turn, answered(draft, slot, value, turn.now), place);
  };

/** Answers a question where it stands. */
export const answer = answerAt('over');

/** Takes what the maker's words offer: the draft goes on below them. */
export const offered = answerAt('below');

/** Takes one of the ways out that were offered; they follow from the draft, so their number is enough. */
export const take: DraftAct = (turn, draft, arg) => {
  const [finding = '', way = ''] = split(arg, '.');
  const found = waysOffered(turn, draft)[Number(finding)];
  const put = found?.ways[Number(way)]?.put;
  const line = found && draft.lines[found.line];
  if (found === undefined || put === undefined || line === undefined)
    return { ...proceed(turn, draft, 'over'), toast: 'stale' };
  const mended = LINE_SLOTS.reduce(
    (changed, slot) => (put[slot] === undefined ? changed : putSlot(changed, slot, put[slot])),
    line,
  );
  return proceed(turn, turned(withLine(draft, found.line, mended), turn.now), 'over');
};

/** All open fittings as usual, with the number of heads if the button names one. */
export const usual: DraftAct = (turn, draft, arg) => {
  const line = currentLine(draft);
  const spec = line.spec.style === undefined ? undefined : usualSpec(turn.world.shop, line.spec);
  if (spec === undefined) return proceed(turn, draft, 'over');
  const { hook, dressing } = spec;
  // A guard that was asked for is not taken away by "as usual".
  const guard = line.wantsGuard ? line.spec.guard : spec.guard;
  const filled = {
    ...line,
    spec: { ...line.spec, hook, guard, dressing },
    quantity: arg === '-' ? line.quantity : Number(arg),
  };
  return proceed(
    turn,
    turned({ ...withLine(draft, draft.current, filled), changing: null, trail: [...draft.trail, 'usual'] }, turn.now),
    'over',
  );
};

export const each: DraftAct = (turn, draft) =>
  proceed(
    turn,
    turned({ ...withLine(draft, draft.current, { ...currentLine(draft), each: true }), changing: null }, turn.now),
    'over',
  );

export const back: DraftAct = (turn, draft) => {
  const before = backed(draft, turn.now);
  return proceed(turn, before ?? draft, 'over');
};

/** With a slot: asks it anew and comes back to the summary. Without: shows what can be changed. */
export const change: DraftAct = (turn, draft, arg) => {
  const ask = ASKS.find((name) => name === arg);
  if (ask !== undefined) return proceed(turn, turned({ ...draft, changing: ask }, turn.now), 'over');
  const say = { code: 'change-what', draft } as const;
  return says(turn.desk, card(turn.by.id, say, { rows: changeRows(draft), slot: draftSlot(draft.id), place: 'over' }));
};

export const line: DraftAct = (turn, draft, arg) => {
  const current = Number(arg);
  if (draft.lines[current] === undefined) return proceed(turn, draft, 'over');
  const moved = turned({ ...draft, current }, turn.now);
  return change({ ...turn, desk: withDraft(turn, moved) }, moved, '-');
};

export const addLine: DraftAct = (turn, draft) => {
  if (draft.lines.length >= turn.world.shop.orders.lines) return proceed(turn, draft, 'over');
  const grown = { ...draft, lines: [...draft.lines, emptyLine], current: draft.lines.length, changing: null };
  return proceed(turn, turned(grown, turn.now), 'over');
};

export const dropLine: DraftAct = (turn, draft, arg) => {
  const lines = draft.lines.filter((_, index) => index !== Number(arg));
  const left = lines.length === 0 ? [emptyLine] : lines;
  return proceed(turn, turned({ ...draft, lines: left, current: 0, changing: null }, turn.now), 'over');
};

/** Takes the draft up again where the talk is now. */
export const keepOn: DraftAct = (turn, draft) => proceed(turn, draft, 'below');

/** Back from what can be changed to the draft itself. */
export const show: DraftAct = (turn, draft) => proceed(turn, draft, 'over');

export const startOver: DraftAct = (turn, draft) => {
  const desk = {
    ...turn.desk,
    drafts: without(turn.desk.drafts, String(turn.by.id)),
    quotes: without(turn.desk.quotes, draft.id),
  };
  const say = { code: 'started-over' } as const;
  return says(desk, card(turn.by.id, say, { rows: [[newButton()]], slot: draftSlot(draft.id) }));
};

/** A fresh draft with its first question; a draft that is still open is shown instead of being lost. */
export function newDraft(turn: Turn, place: 'over' | 'below'): Decision {
  const open = draftOf(turn);
  return open === undefined ? proceed(...opened(turn), place) : proceed(turn, open, place);
}

/** The turn with a new, empty draft of the sender's in it. */
export function opened(turn: Turn): [Turn, Draft] {
  const { desk, by, now } = turn;
  const draft = emptyDraft(`D${desk.next.draft}`, null, now);
  const next = { ...desk.next, draft: desk.next.draft + 1 };
  return [{ ...turn, desk: { ...desk, next, drafts: { ...desk.drafts, [by.id]: draft } } }, draft];
}

export const newButton = (): CardButton => wordButton('new-order', { act: 'new', on: '-', version: 0, arg: '-' });

const withDraft = ({ desk, by }: Turn, draft: Draft): Turn['desk'] => ({
  ...desk,
  drafts: { ...desk.drafts, [by.id]: draft },
});

/** Each slot of the current line, then the other lines, then the way back. */
function changeRows(draft: Draft): readonly (readonly CardButton[])[] {
  const slots: readonly Ask[] = [...LINE_SLOTS, 'shipTo', 'needBy'];
  const own = slots.map((ask): CardButton => ({ label: { code: 'change', ask }, tap: draftTap(draft, 'change', ask) }));
  const others = draft.lines.flatMap((_, index): CardButton[] =>
    index === draft.current
      ? []
      : [{ label: { code: 'line', number: index + 1 }, tap: draftTap(draft, 'line', String(index)) }],
  );
  const drop: CardButton[] =
    draft.lines.length < 2
      ? []
      : [
          {
            label: { code: 'drop-line', number: draft.current + 1 },
            tap: draftTap(draft, 'drop-line', String(draft.current)),
          },
        ];
  return [...inRows(own, 3), ...inRows([...others, ...drop], 2), [wordButton('done-change', draftTap(draft, 'show'))]];
}

function split(text: string, mark: string): readonly string[] {
  const at = text.indexOf(mark);
  return at < 0 ? [text] : [text.slice(0, at), text.slice(at + 1)];
}
