import type { Draft } from '../order/draft.ts';
import type { Finding } from '../order/finding.ts';
import type { CardButton } from './card.ts';
import type { LabelWord } from './label.ts';
import type { ActName, Tap } from './tap.ts';

/** Cards of one draft follow each other in its slot. */
export const draftSlot = (draft: string): string => `draft:${draft}`;

/** A button on a draft. */
export const draftTap = (draft: Draft, act: ActName, arg = '-'): Tap => ({
  act,
  on: draft.id,
  version: draft.version,
  arg,
});

export const wordButton = (word: LabelWord, tap: Tap): CardButton => ({ label: { code: 'word', word }, tap });

/** Buttons in rows of so many; long labels wrap on a phone, so two. */
export const inRows = <T>(buttons: readonly T[], width: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(buttons.length / width) }, (_, row) => buttons.slice(row * width, (row + 1) * width));

/** Ways out of findings as buttons, one a row, numbered as `finding.way`. */
export const wayRows = (draft: Draft, findings: readonly Finding[]): readonly (readonly CardButton[])[] =>
  findings.flatMap(({ ways }, finding) =>
    ways.map(({ put }, way): readonly CardButton[] => [
      {
        label: { code: 'way', put: put as Record<string, string | number> },
        tap: draftTap(draft, 'take', `${finding}.${way}`),
      },
    ]),
  );
