import { isDeepStrictEqual } from 'node:util';
import { z } from 'zod';
import type { Instant } from '../../../domain/craft/time.ts';
import { attachment } from '../attachments.ts';
import { badRequest, done, isRefusal, method, type Outcome, type Refusal } from '../call.ts';
import {
  dateOf,
  messageOf,
  removeMessage,
  replaceMessage,
  type ChatMessage,
  type Chats,
  type Content,
} from '../chats.ts';
import {
  CAPTION,
  captionFlaw,
  CHAT_ID,
  entitiesFlaw,
  ENTITIES,
  INLINE,
  markupFlaw,
  parseModeFlaw,
  textFlaw,
} from '../fields.ts';
import { reachable } from '../post.ts';
import { captionContent } from './showing.ts';
import { contentOf, textContent } from './talking.ts';

const EDIT = z.object({
  chat_id: CHAT_ID,
  message_id: z.int(),
  parse_mode: z.string().optional(),
  reply_markup: INLINE.optional(),
});
type Edit = z.infer<typeof EDIT>;

const EDIT_TEXT = EDIT.extend({ text: z.string().default(''), entities: ENTITIES.optional() });

export const editMessageText = method(EDIT_TEXT, (chats, fields, { at }) => {
  const message = editable(chats, fields);
  if (isRefusal(message)) return message;
  if (message.text === undefined) return badRequest('there is no text in the message to edit');
  const flaw = textFlaw(fields.text) ?? entitiesFlaw(fields.text, fields.entities);
  return flaw ?? edited(chats, message, { content: textContent(fields), fields, at });
});

export const editMessageCaption = method(EDIT.extend(CAPTION.shape), (chats, fields, { at }) => {
  const message = editable(chats, fields);
  if (isRefusal(message)) return message;
  if (!message.photo && !message.document) return badRequest('there is no caption in the message to edit');
  const { caption: _, caption_entities: __, ...shown } = keptOf(message);
  const flaw = captionFlaw(fields.caption) ?? entitiesFlaw(fields.caption ?? '', fields.caption_entities);
  return flaw ?? edited(chats, message, { content: { ...shown, ...captionContent(fields) }, fields, at });
});

const MEDIA = CAPTION.extend({ type: z.enum(['photo', 'document']), media: z.string() });

export const editMessageMedia = method(EDIT.extend({ media: MEDIA }), (chats, fields, { uploads, at }) => {
  const message = editable(chats, fields);
  if (isRefusal(message)) return message;
  const { media } = fields;
  const flaw = captionFlaw(media.caption) ?? entitiesFlaw(media.caption ?? '', media.caption_entities);
  if (flaw) return flaw;
  const shown = attachment(chats, media.type, media.media, uploads);
  if (isRefusal(shown)) return shown;
  return edited(shown.chats, message, { content: { ...shown.result, ...captionContent(media) }, fields, at });
});

export const editMessageReplyMarkup = method(EDIT, (chats, fields, { at }) => {
  const message = editable(chats, fields);
  return isRefusal(message) ? message : edited(chats, message, { content: keptOf(message), fields, at });
});

function editable(chats: Chats, { chat_id, message_id }: Edit): ChatMessage | Refusal {
  const chat = reachable(chats, chat_id);
  if (isRefusal(chat)) return chat;
  const message = messageOf(chats, chat.id, message_id);
  if (!message) return badRequest('message to edit not found');
  return message.from.id === chats.bot.id ? message : badRequest("message can't be edited");
}

type Change = Readonly<{ content: Content; fields: Edit; at: Instant }>;

/** The message with its new content and buttons; buttons that are not sent again are gone. */
function edited(chats: Chats, message: ChatMessage, { content, fields, at }: Change): Outcome {
  const flaw = parseModeFlaw(fields.parse_mode) ?? markupFlaw(fields.reply_markup);
  if (flaw) return flaw;
  const buttons = fields.reply_markup?.inline_keyboard.flat().length ? { reply_markup: fields.reply_markup } : {};
  if (isDeepStrictEqual({ ...content, ...buttons }, shownNow(message))) return badRequest(NOT_MODIFIED);
  const { message_id, date, chat, from, reply_to_message } = message;
  const reply = reply_to_message ? { reply_to_message } : {};
  const result: ChatMessage = { message_id, date, chat, from, ...reply, ...content, ...buttons, edit_date: dateOf(at) };
  return { chats: replaceMessage(chats, result), result };
}

const shownNow = (message: ChatMessage): Content => ({
  ...keptOf(message),
  ...(message.reply_markup ? { reply_markup: message.reply_markup } : {}),
});

/** What an edit leaves alone unless it says otherwise. */
const keptOf = (message: ChatMessage): Content => ({
  ...contentOf(message),
  ...(message.invoice ? { invoice: message.invoice } : {}),
  ...(message.media_group_id === undefined ? {} : { media_group_id: message.media_group_id }),
});

const NOT_MODIFIED =
  'message is not modified: specified new message content and reply markup are exactly the same as a current content and reply markup of the message';

export const deleteMessage = method(z.object({ chat_id: CHAT_ID, message_id: z.int() }), (chats, fields, { at }) => {
  const chat = reachable(chats, fields.chat_id);
  if (isRefusal(chat)) return chat;
  const message = messageOf(chats, chat.id, fields.message_id);
  if (!message) return badRequest('message to delete not found');
  return isDeletable(message, at)
    ? done(removeMessage(chats, message))
    : badRequest("message can't be deleted for everyone");
});

export const deleteMessages = method(
  z.object({ chat_id: CHAT_ID, message_ids: z.array(z.int()).min(1).max(100) }),
  (chats, fields, { at }) => {
    const chat = reachable(chats, fields.chat_id);
    if (isRefusal(chat)) return chat;
    const found = fields.message_ids
      .map((id) => messageOf(chats, chat.id, id))
      .filter((message) => message !== undefined);
    if (!found.every((message) => isDeletable(message, at))) return badRequest("message can't be deleted for everyone");
    return done(found.reduce(removeMessage, chats));
  },
);

const TWO_DAYS_IN_SECONDS = 48 * 3600;
const isDeletable = (message: ChatMessage, at: Instant): boolean => dateOf(at) - message.date < TWO_DAYS_IN_SECONDS;
