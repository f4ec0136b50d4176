import type { ChatMember, MessageEntity } from 'grammy/types';
import type { Instant } from '../../domain/craft/time.ts';
import { documentContent, identity, photoContent } from './attachments.ts';
import { isRefusal } from './call.ts';
import {
  addMessage,
  addUpdate,
  chatOf,
  dateOf,
  keepFile,
  messageOf,
  personOf,
  replaceMessage,
  senderOf,
  userOf,
  type ChatMessage,
  type Chats,
  type Content,
  type KeptFile,
  type Step,
} from './chats.ts';
import { lengthOf, LIMITS } from './fields.ts';
import { payloadOf } from './methods/asking.ts';
import { quoted } from './post.ts';

/** Who acts, when, and where if not in their own chat with the bot. */
export type Actor = Readonly<{ personId: number; at: Instant; chatId?: number }>;
export type Picture = Readonly<{ bytes: Buffer; name: string; mediaType: string }>;

/** A message a person sends; the bot can write to them from now on.
 *  @throws when the person is unknown or has blocked the bot: neither can happen in a real chat */
export function sent(chats: Chats, actor: Actor, content: Content): Step<ChatMessage> {
  const { person, chat } = present(chats, actor);
  if (chats.blocked.includes(person.id))
    throw new Error(`${person.firstName} has blocked the bot and must unblock it before writing.`);
  const added = addMessage(chats, chat, userOf(person), content, actor.at);
  const known = chats.started.includes(person.id) ? chats.started : [...chats.started, person.id];
  return { ...added, chats: addUpdate({ ...added.chats, started: known }, { message: added.result }) };
}

function present(chats: Chats, { personId, chatId = personId }: Actor) {
  const person = personOf(chats, personId);
  const chat = chatOf(chats, chatId);
  if (!person || !chat) throw new Error(`There is no person ${personId} or no chat ${chatId} in this rehearsal.`);
  return { person, chat };
}

export function textSaid(chats: Chats, actor: Actor, text: string, replyTo?: number): Step<ChatMessage> {
  if (lengthOf(text) > LIMITS.text) throw new Error(`A message holds at most ${LIMITS.text} characters.`);
  const original = replyTo === undefined ? undefined : messageOf(chats, actor.chatId ?? actor.personId, replyTo);
  return sent(chats, actor, { ...typedContent(text), ...(original ? { reply_to_message: quoted(original) } : {}) });
}

const typedContent = (text: string): Content => {
  const entities = commandsIn(text);
  return { text, ...(entities.length > 0 ? { entities } : {}) };
};

/** Commands are marked by the sender's app, not by the bot. */
const commandsIn = (text: string): MessageEntity[] =>
  [...text.matchAll(/(?<=^|\s)\/[a-z0-9_]{1,32}(?:@\w+)?(?=\s|$)/gi)].map(({ index, 0: command }) => ({
    type: 'bot_command',
    offset: index,
    length: command.length,
  }));

/** A person changes what they wrote before. */
export function textEdited(chats: Chats, actor: Actor, messageId: number, text: string): Step<ChatMessage> {
  const message = messageOf(chats, actor.chatId ?? actor.personId, messageId);
  if (!message || message.from.id !== actor.personId)
    throw new Error(`Message ${messageId} is not one that this person wrote.`);
  const { entities: _, ...rest } = message;
  const result = { ...rest, ...typedContent(text), edit_date: dateOf(actor.at) };
  return { chats: addUpdate(replaceMessage(chats, result), { edited_message: result }), result };
}

/** A press on a button; `data` may be anything, as a forged press may. Answers with the query's id. */
export function tapped(chats: Chats, actor: Actor, messageId: number, data: string): Step<string> {
  const { person, chat } = present(chats, actor);
  const id = `query-${chats.nextId}`;
  const message = messageOf(chats, chat.id, messageId) ?? { chat, message_id: messageId, date: 0 as const };
  const recent = chats.queries.filter(({ at }) => actor.at - at < 600_000);
  const query = { id, kind: 'tap' as const, personId: person.id, messageId, at: actor.at };
  const asked = { ...chats, nextId: chats.nextId + 1, queries: [...recent, query] };
  return {
    chats: addUpdate(asked, {
      callback_query: { id, from: userOf(person), chat_instance: `chat${chat.id}`, message, data },
    }),
    result: id,
  };
}

/** A person agrees to pay an invoice; the bot is asked once more before any money would move. */
export function payingBegun(chats: Chats, actor: Actor, messageId: number): Step<string> {
  const { person, chat } = present(chats, actor);
  const invoice = messageOf(chats, chat.id, messageId)?.invoice;
  if (!invoice) throw new Error(`Message ${messageId} is not an invoice.`);
  const id = `query-${chats.nextId}`;
  const query = { id, kind: 'checkout' as const, personId: person.id, messageId, at: actor.at };
  const { currency, total_amount } = invoice;
  const body = { id, from: userOf(person), currency, total_amount, invoice_payload: payloadOf(chats, messageId) };
  const asked = { ...chats, nextId: chats.nextId + 1, queries: [...chats.queries, query] };
  return { chats: addUpdate(asked, { pre_checkout_query: body }), result: id };
}

/** One picture, or several that arrive as separate messages of one album; the caption stands under the first. */
export function picturesSent(
  chats: Chats,
  actor: Actor,
  pictures: readonly Picture[],
  caption = '',
): Step<readonly ChatMessage[]> {
  const album = pictures.length > 1 ? { media_group_id: `album-${chats.nextId}` } : {};
  return pictures.reduce<Step<readonly ChatMessage[]>>(
    (step, picture, index) => {
      const words = index === 0 && caption !== '' ? { caption } : {};
      const next = fileSent(step.chats, actor, picture, (file) => ({ ...album, ...shownPhoto(file), ...words }));
      return { chats: next.chats, result: [...step.result, next.result] };
    },
    { chats, result: [] },
  );
}

function shownPhoto(file: KeptFile): Content {
  const content = photoContent(file);
  if (isRefusal(content)) throw new Error(`${file.name} is not a PNG or JPEG picture.`);
  return content;
}

export const documentSent = (chats: Chats, actor: Actor, document: Picture): Step<ChatMessage> =>
  fileSent(chats, actor, document, documentContent);

export const voiceSent = (chats: Chats, actor: Actor, seconds: number): Step<ChatMessage> =>
  fileSent(chats, actor, RECORDING, (file) => ({
    voice: { ...identity(file), duration: seconds, mime_type: file.mediaType },
  }));

export const stickerSent = (chats: Chats, actor: Actor, emoji: string): Step<ChatMessage> =>
  fileSent(chats, actor, STICKER, (file) => ({
    sticker: {
      ...identity(file),
      type: 'regular',
      width: 512,
      height: 512,
      is_animated: false,
      is_video: false,
      emoji,
    },
  }));

/** The bytes of these two are never played or shown; the bot only learns that they came. */
const RECORDING: Picture = { bytes: Buffer.from('voice'), name: 'voice.oga', mediaType: 'audio/ogg' };
const STICKER: Picture = { bytes: Buffer.from('sticker'), name: 'sticker.webp', mediaType: 'image/webp' };

function fileSent(
  chats: Chats,
  actor: Actor,
  { bytes, name, mediaType }: Picture,
  content: (file: KeptFile) => Content,
): Step<ChatMessage> {
  const kept = keepFile(chats, { name, mediaType, base64: bytes.toString('base64') });
  return sent(kept.chats, actor, content(kept.result));
}

/** Shuts the bot out of a person's chat; it hears of that once. */
export const botBlocked = (chats: Chats, actor: Actor): Step<undefined> =>
  membership({ ...chats, blocked: [...chats.blocked, actor.personId] }, actor, ['member', 'kicked']);

/** Lets the bot into a person's chat again. */
export const botUnblocked = (chats: Chats, actor: Actor): Step<undefined> =>
  membership({ ...chats, blocked: chats.blocked.filter((id) => id !== actor.personId) }, actor, ['kicked', 'member']);

type Standing = 'member' | 'kicked';

function membership(chats: Chats, actor: Actor, [before, after]: readonly [Standing, Standing]): Step<undefined> {
  const { person, chat } = present(chats, actor);
  const member = (status: Standing): ChatMember =>
    status === 'member' ? { status, user: senderOf(chats.bot) } : { status, user: senderOf(chats.bot), until_date: 0 };
  const change = {
    chat,
    from: userOf(person),
    date: dateOf(actor.at),
    old_chat_member: member(before),
    new_chat_member: member(after),
  };
  return { chats: addUpdate(chats, { my_chat_member: change }), result: undefined };
}
