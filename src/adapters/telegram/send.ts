import { type Api, InputFile } from 'grammy';
import type { InlineKeyboardMarkup } from 'grammy/types';
import type { Card } from '../../app/book.ts';
import type { Chat } from '../../app/chat.ts';
import type { DrawnPicture, Invoice, Letter, Paper } from '../../app/letter.ts';
import type { Log } from '../../app/log.ts';
import type { Outcome } from '../../app/outcome.ts';
import { outcomeOf } from './outcome.ts';

export type Draw = (picture: DrawnPicture) => Uint8Array | Promise<Uint8Array>;

/** Makes a file of a paper. */
export type Print = (paper: Paper) => Promise<Uint8Array>;

/** A drawing to upload, or the platform's id of a photo that it has. */
type Shown = InputFile | string;

/** A caption may be shorter than a text. */
const CAPTION_MOST = 1024;

/** Sends letters as plain text: no markup is ever read from them, so nobody's words can change how they look.
 *  With the token of a payment provider an invoice goes out as one. */
export const telegramChat = (
  api: Api,
  draw: Draw,
  log: Log,
  print?: Print,
  paymentToken: string | null = null,
): Chat => ({
  send: (letter) =>
    tried(async () =>
      letter.invoice !== undefined && paymentToken !== null
        ? billed(api, letter.to, letter.invoice, paymentToken)
        : sent(api, letter, await drawn(letter, draw, log), await filed(letter, log, print)),
    ),
  edit: (letter, card) => tried(async () => edited(api, letter, card, await drawn(letter, draw, log))),
  strip: (to, message) =>
    tried(async () => {
      await api.editMessageReplyMarkup(to, message, { reply_markup: { inline_keyboard: [] } });
      return { is: 'same' };
    }),
});

async function tried(call: () => Promise<Outcome>): Promise<Outcome> {
  try {
    return await call();
  } catch (error) {
    return outcomeOf(error);
  }
}

/** A letter whose picture cannot be drawn, or whose words are too long to stand under one, goes out without it. */
async function drawn({ picture, text }: Letter, draw: Draw, log: Log): Promise<Shown | null> {
  if (picture === null || Array.from(text).length > CAPTION_MOST) return null;
  if (picture.kind === 'photo') return picture.file;
  try {
    return new InputFile(await draw(picture), 'jig.png');
  } catch {
    log('picture-failed', { kind: picture.kind });
    return null;
  }
}

/** What goes along as a file; a paper that cannot be printed is left out, and its words go alone. */
async function filed({ document, paper }: Letter, log: Log, print?: Print): Promise<InputFile | null> {
  if (document !== undefined) return new InputFile(Buffer.from(document.text), document.name);
  if (paper === undefined || print === undefined) return null;
  try {
    return new InputFile(await print(paper), paper.name);
  } catch {
    log('paper-failed', { kind: paper.title });
    return null;
  }
}

async function sent(api: Api, letter: Letter, file: Shown | null, along: InputFile | null): Promise<Outcome> {
  const message =
    along !== null
      ? await api.sendDocument(letter.to, along, { caption: letter.text, ...buttons(letter) })
      : file === null
        ? await api.sendMessage(letter.to, letter.text, { ...QUIET_LINKS, ...buttons(letter) })
        : await api.sendPhoto(letter.to, file, { caption: letter.text, ...buttons(letter) });
  return { is: 'sent', message: message.message_id, picture: file !== null };
}

/** With a start parameter a forwarded copy leads to the bot and cannot be paid by somebody else. */
async function billed(
  api: Api,
  to: number,
  { title, description, reason, currency, prices }: Invoice,
  provider_token: string,
): Promise<Outcome> {
  const more = { provider_token, start_parameter: 'order' };
  const message = await api.sendInvoice(to, title, description, reason, currency, prices, more);
  return { is: 'sent', message: message.message_id, picture: false };
}

/** A text can become a picture, but not the other way round; then what is under the picture is changed. */
async function edited(api: Api, letter: Letter, card: Card, file: Shown | null): Promise<Outcome> {
  const { to, text } = letter;
  if (file !== null)
    await api.editMessageMedia(to, card.message, { type: 'photo', media: file, caption: text }, buttons(letter));
  else if (card.picture) await api.editMessageCaption(to, card.message, { caption: text, ...buttons(letter) });
  else await api.editMessageText(to, card.message, text, { ...QUIET_LINKS, ...buttons(letter) });
  return { is: 'sent', message: card.message, picture: file !== null || card.picture };
}

const QUIET_LINKS = { link_preview_options: { is_disabled: true } } as const;

const buttons = ({ rows }: Letter): { reply_markup?: InlineKeyboardMarkup } =>
  rows.length === 0
    ? {}
    : {
        reply_markup: {
          inline_keyboard: rows.map((row) => row.map(({ label, data }) => ({ text: label, callback_data: data }))),
        },
      };
