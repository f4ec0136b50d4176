import { bookSchema, type Book } from './app/book.ts';
import type { Versions } from './app/saved.ts';
import { deskSchema, type Desk } from './domain/desk/state.ts';

/** How a stored book of every version becomes today's. */
export const BOOK_VERSIONS: Versions<Book<Desk>> = { steps: [], schema: bookSchema(deskSchema) };
