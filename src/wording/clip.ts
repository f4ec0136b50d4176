/** The most code points of a message, of the words under a picture and of a button. */
export const TEXT_MOST = 4096;
export const CAPTION_MOST = 1024;
export const LABEL_MOST = 100;

/** Lengths are counted in code points, as the chat platform counts. */
export const lengthOf = (text: string): number => Array.from(text).length;

/** A text that fits: cut after its last whole line, else its last whole word, with an ellipsis. */
export function clipped(text: string, most: number): string {
  if (lengthOf(text) <= most) return text;
  const start = Array.from(text)
    .slice(0, most - 1)
    .join('');
  const at = [start.lastIndexOf('\n'), start.lastIndexOf(' ')].find((place) => place > start.length / 2);
  return `${start.slice(0, at).trimEnd()}…`;
}

/** The text with a first letter that is large. @example capital('black') //=> 'Black' */
export const capital = (text: string): string => text.replace(/^\p{Ll}/u, (letter) => letter.toLocaleUpperCase());

/** Parts of a message as paragraphs; what is empty is left out. */
export const paragraphs = (...parts: readonly (string | null | undefined)[]): string => joined(parts, '\n\n');

/** Lines one under the other; what is empty is left out. */
export const lines = (...parts: readonly (string | null | undefined)[]): string => joined(parts, '\n');

const joined = (parts: readonly (string | null | undefined)[], mark: string): string =>
  parts.filter((part) => part !== null && part !== undefined && part !== '').join(mark);
