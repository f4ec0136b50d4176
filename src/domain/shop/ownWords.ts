import { z } from 'zod';
import { LANGUAGES, type Language } from './words.ts';

const text = z.string().trim().min(1).max(1000);

/** A text of the shop's own: one for all readers, or one for each language. */
export const ownWords = z.union([text, z.partialRecord(z.enum(LANGUAGES), text)], {
  error: `text in double quotes, or a text for each language as { ${LANGUAGES.map((language) => `"${language}": "…"`).join(', ')} }`,
});
export type OwnWords = z.infer<typeof ownWords>;

/** The text for a reader of a language, else the one in the shop's own language, which the shop file's check wants there.
 *  @example inLanguage({ en: 'Tight lines!', es: '¡Buena pesca!' }, 'es', 'en') //=> '¡Buena pesca!' */
export const inLanguage = (words: OwnWords, language: Language, shops: Language): string =>
  typeof words === 'string' ? words : (words[language] ?? words[shops] ?? '');
