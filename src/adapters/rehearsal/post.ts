import type { Message } from 'grammy/types';
import type { z } from 'zod';
import type { Instant } from '../../domain/craft/time.ts';
import { badRequest, forbidden, isRefusal, type Refusal } from './call.ts';
import {
  addMessage,
  chatOf,
  messageOf,
  senderOf,
  type ChatMessage,
  type Chats,
  type Content,
  type Step,
} from './chats.ts';
import { markupFlaw, parseModeFlaw, type Markup, type SEND } from './fields.ts';

export type Sending = z.infer<typeof SEND>;

/** Puts the bot's message into a chat, or says why it cannot go there. */
export function post(chats: Chats, to: Sending, content: Content, at: Instant): Step<ChatMessage> | Refusal {
  const chat = reachable(chats, to.chat_id);
  if (isRefusal(chat)) return chat;
  const flaw = parseModeFlaw(to.parse_mode) ?? markupFlaw(to.reply_markup);
  if (flaw) return flaw;
  const reply = answered(chats, chat.id, to.reply_parameters);
  if (isRefusal(reply)) return reply;
  const keyboard = to.reply_markup && 'inline_keyboard' in to.reply_markup ? { reply_markup: to.reply_markup } : {};
  return addMessage(
    withReplyKeyboard(chats, chat.id, to.reply_markup),
    chat,
    senderOf(chats.bot),
    { ...content, ...reply, ...keyboard },
    at,
  );
}

/** The chat, when the bot may write to it: the person has written first and has not blocked the bot. */
export function reachable(chats: Chats, chatId: number | string): NonNullable<ReturnType<typeof chatOf>> | Refusal {
  const chat = chatOf(chats, chatId);
  if (!chat) return badRequest('chat not found');
  if (chats.blocked.includes(chat.id)) return forbidden('bot was blocked by the user');
  if (chat.type === 'private' && !chats.started.includes(chat.id))
    return forbidden("bot can't initiate conversation with a user");
  return chat;
}

function answered(chats: Chats, chatId: number, reply: Sending['reply_parameters']): Content | Refusal {
  if (!reply) return {};
  const original = messageOf(chats, chatId, reply.message_id);
  if (original) return { reply_to_message: quoted(original) };
  return reply.allow_sending_without_reply === true ? {} : badRequest('message to be replied not found');
}

/** A message as it stands inside a reply to it: without the one that it answered itself. */
export function quoted(message: ChatMessage): NonNullable<Message['reply_to_message']> {
  const { reply_to_message: _, ...rest } = message;
  return rest as NonNullable<Message['reply_to_message']>; // grammY's type wants an undefined slot where the platform sends none
}

function withReplyKeyboard(chats: Chats, chatId: number, markup: Markup | undefined): Chats {
  if (!markup || 'inline_keyboard' in markup || 'force_reply' in markup) return chats;
  const { [chatId]: _, ...others } = chats.replyKeyboards;
  if (!('keyboard' in markup)) return { ...chats, replyKeyboards: others };
  const rows = markup.keyboard.map((row) => row.map((key) => (typeof key === 'string' ? key : key.text)));
  return { ...chats, replyKeyboards: { ...others, [chatId]: rows } };
}
