/** The platform's own limit, in code points. */
export const TEXT_MOST = 4096;

/** What someone typed, without characters that nobody sees or that turn text around, and no longer than `most` code points.
 *  Line ends and tabs stay; a line end is always `\n`.
 *  @example cleanText('a\u202Eb\r\n') //=> 'ab\n' */
export const cleanText = (text: string, most: number = TEXT_MOST): string =>
  clipped(text.replaceAll(/\r\n?|[\u2028\u2029]/g, '\n').replaceAll(UNSEEN, ''), most);

/** Control characters, bidirectional marks, overrides and isolates, byte order marks, and halves of surrogate pairs. */
const UNSEEN = /(?![\t\n])[\p{Cc}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\uFEFF\p{Cs}]/gu;

const clipped = (text: string, most: number): string =>
  text.length <= most ? text : Array.from(text).slice(0, most).join('');
