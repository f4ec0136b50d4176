import type { MessageEntity } from 'grammy/types';

/** A stretch of text with one look; `href` only ever holds an http or https address. */
export type Run = Readonly<{ text: string; looks: readonly string[]; href?: string }>;

/** Cuts a text at the edges of its entities (UTF-16 offsets), so that a page can show it without reading any markup.
 *  @example runsOf('25 heads', [{ type: 'bold', offset: 0, length: 2 }]) //=> [{ text: '25', looks: ['bold'] }, { text: ' heads', looks: [] }] */
export function runsOf(text: string, entities: readonly MessageEntity[] = []): readonly Run[] {
  const edges = entities.flatMap(({ offset, length }) => [offset, offset + length]);
  const cuts = [...new Set([0, ...edges, text.length])].sort((a, b) => a - b);
  return cuts.slice(1).map((end, index) => runOf(text, cuts[index] ?? 0, end, entities));
}

function runOf(text: string, start: number, end: number, entities: readonly MessageEntity[]): Run {
  const over = entities.filter(({ offset, length }) => offset <= start && end <= offset + length);
  const words = text.slice(start, end);
  const href = over.map((entity) => addressOf(entity, words)).find((address) => address !== undefined);
  return { text: words, looks: over.map(({ type }) => type), ...(href === undefined ? {} : { href }) };
}

function addressOf(entity: MessageEntity, words: string): string | undefined {
  const address = entity.type === 'text_link' ? entity.url : entity.type === 'url' ? words : '';
  return /^https?:\/\//.test(address) ? address : undefined;
}
