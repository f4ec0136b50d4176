import type { PersonId } from '../domain/desk/person.ts';
import type { Card } from './book.ts';
import type { Letter } from './letter.ts';
import type { Outcome } from './outcome.ts';

/** The way out to people. It never throws: whatever happens is an outcome. */
export interface Chat {
  /** A new message below all others. */
  send(letter: Letter): Promise<Outcome>;
  /** Writes over an older card; repeating it changes nothing. */
  edit(letter: Letter, card: Card): Promise<Outcome>;
  /** Takes the buttons off an older card. */
  strip(to: PersonId, message: number): Promise<Outcome>;
}
