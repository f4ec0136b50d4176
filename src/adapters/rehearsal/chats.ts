import type { BotCommand, Chat, Message, Update, User, UserFromGetMe } from 'grammy/types';
import type { Instant } from '../../domain/craft/time.ts';

export type Person = Readonly<{ id: number; firstName: string; languageCode: string }>;
/** A group chat; its id is negative, as on the platform. */
export type Group = Readonly<{ id: number; title: string; members: readonly number[] }>;
export type KeptFile = Readonly<{ id: string; name: string; mediaType: string; base64: string }>;
/** Something the bot has been asked and should answer: a tapped button or a payment about to be made. */
export type Query = Readonly<{
  id: string;
  kind: 'tap' | 'checkout';
  personId: number;
  messageId: number;
  at: Instant;
}>;
/** What a tap was answered with: a short note that is shown once and is no message. */
export type Notice = Readonly<{ id: number; personId: number; text: string; at: Instant }>;
export type CommandList = Readonly<{ scope: string; language: string; commands: readonly BotCommand[] }>;
export type KeptInvoice = Readonly<{ messageId: number; payload: string }>;
export type ChatMessage = Message & Update.NonChannel;
type AnyChat = Exclude<Chat, Chat.ChannelChat>;
export type Content = Omit<Partial<Message>, 'message_id' | 'date' | 'chat' | 'from'>;
export type UpdateBody = Omit<Update, 'update_id'>;

/** All that the stand-in knows: plain JSON, so that a restart can take it up again. */
export type Chats = Readonly<{
  bot: UserFromGetMe;
  people: readonly Person[];
  groups: readonly Group[];
  started: readonly number[];
  blocked: readonly number[];
  messages: readonly ChatMessage[];
  files: readonly KeptFile[];
  invoices: readonly KeptInvoice[];
  queries: readonly Query[];
  notices: readonly Notice[];
  commands: readonly CommandList[];
  replyKeyboards: Readonly<Record<string, readonly (readonly string[])[]>>;
  updates: readonly Update[];
  wanted: readonly string[];
  nextId: number;
  nextUpdateId: number;
}>;

/** The chats after something happened, and what came of it. */
export type Step<R> = Readonly<{ chats: Chats; result: R }>;

/** Chats in which nothing was said yet; ids count up from `firstId`, so that a later, empty start cannot reuse one. */
export const openChats = (bot: UserFromGetMe, people: readonly Person[], firstId = 1): Chats => ({
  bot,
  people,
  groups: [],
  started: [],
  blocked: [],
  messages: [],
  files: [],
  invoices: [],
  queries: [],
  notices: [],
  commands: [],
  replyKeyboards: {},
  updates: [],
  wanted: [],
  nextId: firstId,
  nextUpdateId: firstId,
});

/** The bot that a token names: the number before its colon is the bot's id. */
export const botOf = (token: string): UserFromGetMe => ({
  id: Number.parseInt(token, 10) || 1,
  is_bot: true,
  first_name: 'Rehearsal',
  username: 'rehearsal_bot',
  can_join_groups: true,
  can_read_all_group_messages: false,
  supports_guest_queries: false,
  supports_inline_queries: false,
  can_connect_to_business: false,
  has_main_web_app: false,
  has_topics_enabled: false,
  allows_users_to_create_topics: false,
  can_manage_bots: false,
  supports_join_request_queries: false,
});

/** The bot as the sender of a message: without what only `getMe` tells. */
export const senderOf = ({ id, is_bot, first_name, username }: UserFromGetMe): User => ({
  id,
  is_bot,
  first_name,
  username,
});

export const personOf = (chats: Chats, id: number): Person | undefined => chats.people.find((who) => who.id === id);

export const userOf = ({ id, firstName, languageCode }: Person): User => ({
  id,
  is_bot: false,
  first_name: firstName,
  language_code: languageCode,
});

/** The chat with this id: a person's own, or a group. */
export function chatOf(chats: Chats, id: number | string): AnyChat | undefined {
  const person = personOf(chats, Number(id));
  if (person) return { id: person.id, type: 'private', first_name: person.firstName };
  const group = chats.groups.find((one) => one.id === Number(id));
  return group && { id: group.id, type: 'group', title: group.title };
}

export const messageOf = (chats: Chats, chatId: number, messageId: number): ChatMessage | undefined =>
  chats.messages.findLast(({ chat, message_id }) => message_id === messageId && chat.id === chatId);

export const messagesIn = (chats: Chats, chatId: number): readonly ChatMessage[] =>
  chats.messages.filter(({ chat }) => chat.id === chatId);

/** Whole seconds since 1970, as the platform writes its dates. */
export const dateOf = (at: Instant): number => Math.floor(at / 1000);

export function addMessage(chats: Chats, chat: AnyChat, from: User, content: Content, at: Instant): Step<ChatMessage> {
  const result: ChatMessage = { message_id: chats.nextId, date: dateOf(at), chat, from, ...content };
  return { chats: { ...chats, nextId: chats.nextId + 1, messages: [...chats.messages, result] }, result };
}

export const replaceMessage = (chats: Chats, message: ChatMessage): Chats => ({
  ...chats,
  messages: chats.messages.map((old) => (isSame(old, message) ? message : old)),
});

export const removeMessage = (chats: Chats, message: ChatMessage): Chats => ({
  ...chats,
  messages: chats.messages.filter((old) => !isSame(old, message)),
});

const isSame = (a: ChatMessage, b: ChatMessage): boolean => a.message_id === b.message_id && a.chat.id === b.chat.id;

/** Queues an update for the bot, unless the bot has asked for other kinds only. */
export function addUpdate(chats: Chats, body: UpdateBody): Chats {
  const [kind = ''] = Object.keys(body);
  if (chats.wanted.length > 0 && !chats.wanted.includes(kind)) return chats;
  const update = { update_id: chats.nextUpdateId, ...body };
  return { ...chats, nextUpdateId: chats.nextUpdateId + 1, updates: [...chats.updates, update] };
}

export function keepFile(chats: Chats, file: Omit<KeptFile, 'id'>): Step<KeptFile> {
  const result = { id: `file-${chats.nextId}`, ...file };
  return { chats: { ...chats, nextId: chats.nextId + 1, files: [...chats.files, result] }, result };
}

export const fileOf = (chats: Chats, id: string): KeptFile | undefined => chats.files.find((file) => file.id === id);

/** The length in bytes of a kept file. */
export const sizeOf = ({ base64 }: KeptFile): number => Buffer.byteLength(base64, 'base64');
