import type { LetterDraft, Picture } from '../app/letter.ts';
import type { Card } from '../domain/desk/card.ts';
import type { Shop } from '../domain/shop/shop.ts';
import type { Language } from '../domain/shop/words.ts';
import { CAPTION_MOST, clipped, lengthOf, TEXT_MOST } from './clip.ts';
import { buttonRows } from './labels.ts';
import { captionOf } from './layout/summary.ts';
import { PHRASES } from './phrases.ts';
import { textOf } from './text.ts';
import { voiceOf, type Voice } from './voice.ts';

/** A card in words: plain text that fits one message, its buttons, and its picture unless the text is too long to stand under one. */
export function write(shop: Shop, language: Language, card: Card): LetterDraft {
  const { to, say, kind, slot, place, key } = card;
  const voice = voiceOf(shop, language);
  const phrases = PHRASES[language];
  const text = clipped(textOf(say, voice, phrases), TEXT_MOST);
  return {
    to,
    kind,
    text,
    rows: buttonRows(card.rows, say, voice, phrases),
    picture: lengthOf(text) > CAPTION_MOST ? null : pictureOf(card.picture, voice),
    slot,
    place,
    ...(card.document === undefined ? {} : { document: card.document }),
    ...(key === null ? {} : { key }),
  };
}

const pictureOf = (spec: Card['picture'], voice: Voice): Picture | null =>
  spec && { kind: 'head', spec, caption: captionOf(spec, voice) };
