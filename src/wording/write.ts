import type { LetterDraft, Picture } from '../app/letter.ts';
import type { Card } from '../domain/desk/card.ts';
import type { Shop } from '../domain/shop/shop.ts';
import type { Language } from '../domain/shop/words.ts';
import { CAPTION_MOST, clipped, lengthOf, TEXT_MOST } from './clip.ts';
import { buttonRows } from './labels.ts';
import { invoiceOf } from './layout/invoice.ts';
import { paperOf } from './layout/paper.ts';
import { monthPicture } from './layout/monthPicture.ts';
import { captionOf, captionOfLots } from './layout/summary.ts';
import { weekPicture } from './layout/weekPicture.ts';
import { PHRASES } from './phrases.ts';
import { textOf } from './text.ts';
import { voiceOf, type Voice } from './voice.ts';
import type { Phrases } from './words.ts';

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
    picture: lengthOf(text) > CAPTION_MOST ? null : pictureOf(card, voice, phrases),
    slot,
    place,
    ...(card.document === undefined ? {} : { document: card.document }),
    ...(say.code === 'paper' && card.picture === null ? { paper: paperOf(say, voice, phrases.business) } : {}),
    ...(say.code === 'invoice' ? { invoice: invoiceOf(say, voice, phrases.business) } : {}),
    ...(key === null ? {} : { key }),
  };
}

function pictureOf({ picture: of, say }: Card, voice: Voice, { week, business }: Phrases): Picture | null {
  if (of === null) return null;
  if (of === 'paper') return say.code === 'paper' ? { kind: 'sheet', paper: paperOf(say, voice, business) } : null;
  if ('photo' in of) return { kind: 'photo', file: of.photo };
  if ('each' in of)
    return { kind: 'heads', heads: of.each.map((one) => ({ spec: one.spec, caption: captionOfLots(one, voice) })) };
  if ('styles' in of) return monthPicture(of, voice, business);
  return 'days' in of ? weekPicture(of, voice, week) : { kind: 'head', spec: of, caption: captionOf(of, voice) };
}
