import type { Language } from '../domain/shop/words.ts';
import { EN } from './en/phrases.ts';
import { ES } from './es/phrases.ts';
import type { Phrases } from './words.ts';

/** Everything that is said, by language. */
export const PHRASES: Readonly<Record<Language, Phrases>> = { en: EN, es: ES };
