import { z } from 'zod';
import { badRequest, done, isRefusal, method, type Outcome } from '../call.ts';
import { addMessage, messageOf, senderOf, type ChatMessage, type Content } from '../chats.ts';
import { captionFlaw, CHAT_ID, entitiesFlaw, ENTITIES, SEND, textFlaw } from '../fields.ts';
import { post, reachable } from '../post.ts';

const TEXT = SEND.extend({ text: z.string().default(''), entities: ENTITIES.optional() });

export const sendMessage = method(TEXT, (chats, fields, { at }) => {
  const flaw = textFlaw(fields.text) ?? entitiesFlaw(fields.text, fields.entities);
  return flaw ?? post(chats, fields, textContent(fields), at);
});

/** A text as the platform keeps it: without the blanks at its end. */
export const textContent = ({ text, entities }: Pick<z.infer<typeof TEXT>, 'text' | 'entities'>): Content => ({
  text: text.trimEnd(),
  ...(entities?.length ? { entities } : {}),
});

const COPY = SEND.extend({ from_chat_id: CHAT_ID, message_id: z.int(), caption: z.string().optional() });

export const copyMessage = method(COPY, (chats, fields, { at }) => {
  const original = messageOf(chats, Number(fields.from_chat_id), fields.message_id);
  if (!original) return badRequest('message to copy not found');
  const flaw = captionFlaw(fields.caption);
  if (flaw) return flaw;
  const caption = fields.caption === undefined ? {} : { caption: fields.caption };
  const posted = post(chats, fields, { ...contentOf(original), ...caption }, at);
  return isRefusal(posted) ? posted : { chats: posted.chats, result: { message_id: posted.result.message_id } };
});

const FORWARD = z.object({ chat_id: CHAT_ID, from_chat_id: CHAT_ID, message_id: z.int() });

export const forwardMessage = method(FORWARD, (chats, fields, { at }): Outcome => {
  const original = messageOf(chats, Number(fields.from_chat_id), fields.message_id);
  if (!original) return badRequest('message to forward not found');
  const chat = reachable(chats, fields.chat_id);
  if (isRefusal(chat)) return chat;
  const forward_origin = { type: 'user' as const, sender_user: original.from, date: original.date };
  return addMessage(chats, chat, senderOf(chats.bot), { ...contentOf(original), forward_origin }, at);
});

const ACTIONS = [
  'typing',
  'upload_photo',
  'record_video',
  'upload_video',
  'record_voice',
  'upload_voice',
  'upload_document',
].concat(['choose_sticker', 'find_location', 'record_video_note', 'upload_video_note']);

export const sendChatAction = method(z.object({ chat_id: CHAT_ID, action: z.string() }), (chats, fields) => {
  const chat = reachable(chats, fields.chat_id);
  if (isRefusal(chat)) return chat;
  return ACTIONS.includes(fields.action) ? done(chats) : badRequest('wrong parameter action in request');
});

/** What a message says and shows, without who sent it, its buttons or what it answered. */
export const contentOf = (message: ChatMessage): Content =>
  Object.fromEntries(CARRIED.flatMap((part) => (message[part] === undefined ? [] : [[part, message[part]]])));

const CARRIED = [
  'text',
  'entities',
  'caption',
  'caption_entities',
  'photo',
  'document',
  'sticker',
  'voice',
  'location',
  'contact',
] as const;
