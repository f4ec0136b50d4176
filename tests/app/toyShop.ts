import { z } from 'zod';
import { type Book, bookSchema, emptyBook } from '../../src/app/book.ts';
import type { Rules, Turn } from '../../src/app/handle.ts';
import type { LetterDraft } from '../../src/app/letter.ts';
import type { Versions } from '../../src/app/saved.ts';

/** The smallest shop there is: it notes what was said, says it back, and gives everything away. */
export type Toy = Readonly<{ notes: readonly string[]; lost: readonly number[] }>;
export type ToyBook = Book<Toy>;

export const toySchema = z.strictObject({ notes: z.array(z.string()), lost: z.array(z.number()) });
export const toyVersions: Versions<ToyBook> = { steps: [], schema: bookSchema<Toy>(toySchema) };
export const emptyToy: ToyBook = emptyBook<Toy>({ notes: [], lost: [] });

export const letter = (to: number, text: string, more: Partial<LetterDraft> = {}): LetterDraft => ({
  to,
  kind: 'answer',
  text,
  rows: [],
  picture: null,
  slot: null,
  place: 'below',
  ...more,
});

/** `card …` answers on one card, written over; `below …` on one card sent anew; `close …` finishes an order; `fall over` is a bug. */
export const toyRules: Rules<Toy> = (desk, command) => {
  switch (command.type) {
    case 'said':
      return heard(desk, command.by.id, command.text);
    case 'tapped':
      return { ...still(noted(desk, `tap ${command.tap?.act ?? 'unknown'}`)), toast: 'tapped' };
    case 'reach':
      return still(command.reachable ? desk : { ...desk, lost: [...desk.lost, command.by.id] });
    case 'tick':
      return { ...still(desk), letters: [letter(1, 'good morning', { key: 'digest/2026-11-25', kind: 'digest' })] };
    default:
      return still(noted(desk, command.type));
  }
};

function heard(desk: Toy, by: number, text: string): Turn<Toy> {
  if (text === 'fall over') throw new TypeError('a bug');
  const [word, id] = text.split(' ');
  const next = noted(desk, text);
  if (word === 'close') return { ...still(next), closed: [{ id: id ?? '', month: '2026-11', record: { id } }] };
  return { ...still(next), letters: [letter(by, `${next.notes.length}: ${text}`, cardFor(word))] };
}

const cardFor = (word: string | undefined): Partial<LetterDraft> =>
  word === 'card' || word === 'below'
    ? { slot: 'draft', place: word === 'card' ? 'over' : 'below', rows: [[{ label: 'Help', data: 'help|-|0|' }]] }
    : {};

const noted = (desk: Toy, note: string): Toy => ({ ...desk, notes: [...desk.notes, note] });
const still = (desk: Toy): Turn<Toy> => ({ desk, letters: [], toast: null, closed: [] });
