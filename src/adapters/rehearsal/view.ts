import type { InlineKeyboardButton } from 'grammy/types';
import { localClock, localDay, type Instant, type Zone } from '../../domain/craft/time.ts';
import { messagesIn, personOf, type ChatMessage, type Chats, type CommandList, type Person } from './chats.ts';
import { runsOf, type Run } from './runs.ts';

export type ButtonView = Readonly<{ label: string; kind: 'tap' | 'link' | 'copy' | 'pay' | 'other'; value: string }>;
export type Bubble = Readonly<{
  id: number;
  from: 'person' | 'bot';
  day: string;
  clock: string;
  runs: readonly Run[];
  buttons: readonly (readonly ButtonView[])[];
  edited: boolean;
  answers?: string;
  forwardedFrom?: string;
  photo?: Readonly<{ address: string; width: number; height: number }>;
  document?: Readonly<{ name: string; address: string }>;
  thing?: string;
}>;
export type ChatView = Readonly<{
  id: number;
  name: string;
  role: 'buyer' | 'maker';
  blocked: boolean;
  bubbles: readonly Bubble[];
  keys: readonly (readonly string[])[];
  commands: readonly Readonly<{ command: string; description: string }>[];
  notice?: Readonly<{ id: number; text: string }>;
}>;
export type View = Readonly<{
  clock: Readonly<{ day: string; clock: string; zone: Zone; nextReminder?: string }>;
  chats: readonly ChatView[];
}>;
export type Times = Readonly<{ now: Instant; zone: Zone; nextDue: Instant | undefined }>;

/** As many messages of a chat as the page shows; older ones stay in the chat. */
const SHOWN = 200;

/** Everything the page shows, at this moment. */
export const viewOf = (chats: Chats, maker: number, { now, zone, nextDue }: Times): View => ({
  clock: {
    day: localDay(now, zone),
    clock: localClock(now, zone),
    zone,
    ...(nextDue === undefined ? {} : { nextReminder: momentSeen(nextDue, now, zone) }),
  },
  chats: chats.people.map((person) => chatView(chats, person, person.id === maker ? 'maker' : 'buyer', zone)),
});

/** A clock time, with its day when that is not today. */
function momentSeen(at: Instant, now: Instant, zone: Zone): string {
  const day = localDay(at, zone);
  return day === localDay(now, zone) ? localClock(at, zone) : `${day} ${localClock(at, zone)}`;
}

function chatView(chats: Chats, person: Person, role: ChatView['role'], zone: Zone): ChatView {
  const notice = chats.notices.findLast(({ personId }) => personId === person.id);
  return {
    id: person.id,
    name: person.firstName,
    role,
    blocked: chats.blocked.includes(person.id),
    bubbles: messagesIn(chats, person.id)
      .slice(-SHOWN)
      .map((message) => bubble(chats, message, zone)),
    keys: chats.replyKeyboards[person.id] ?? [],
    commands: commandsFor(chats.commands, person),
    ...(notice ? { notice: { id: notice.id, text: notice.text } } : {}),
  };
}

/** The commands that a person's app offers: those of their own chat before those of all, their language before any. */
export function commandsFor(lists: readonly CommandList[], { id, languageCode }: Person): CommandList['commands'] {
  const wanted = [`chat ${id}`, 'all_private_chats', 'default'].flatMap((scope) => [
    { scope, language: languageCode },
    { scope, language: '' },
  ]);
  const found = wanted.map((wish) =>
    lists.find(({ scope, language }) => scope === wish.scope && language === wish.language),
  );
  return found.find((list) => list !== undefined)?.commands ?? [];
}

function bubble(chats: Chats, message: ChatMessage, zone: Zone): Bubble {
  const at = message.date * 1000;
  const text = message.text ?? message.caption ?? '';
  const thing = thingIn(message);
  return {
    id: message.message_id,
    from: message.from.id === chats.bot.id ? 'bot' : 'person',
    day: localDay(at, zone),
    clock: localClock(at, zone),
    runs: text === '' ? [] : runsOf(text, message.entities ?? message.caption_entities),
    buttons: (message.reply_markup?.inline_keyboard ?? []).map((row) => row.map(buttonView)),
    edited: message.edit_date !== undefined,
    ...surroundings(chats, message),
    ...pictures(message),
    ...(thing === undefined ? {} : { thing }),
  };
}

function surroundings(chats: Chats, { reply_to_message, forward_origin }: ChatMessage): Partial<Bubble> {
  const answers = reply_to_message && (reply_to_message.text ?? reply_to_message.caption ?? 'a picture');
  const writer = forward_origin?.type === 'user' ? forward_origin.sender_user : undefined;
  const name = writer && (personOf(chats, writer.id)?.firstName ?? writer.first_name);
  return { ...(answers === undefined ? {} : { answers }), ...(name === undefined ? {} : { forwardedFrom: name }) };
}

function pictures({ photo, document }: ChatMessage): Partial<Bubble> {
  const largest = photo?.at(-1);
  if (largest)
    return { photo: { address: fileAddress(largest.file_id), width: largest.width, height: largest.height } };
  return document ? { document: { name: document.file_name ?? 'file', address: fileAddress(document.file_id) } } : {};
}

const fileAddress = (id: string): string => `/chat/file/${encodeURIComponent(id)}`;

/** What came instead of words, said in words. */
function thingIn({ sticker, voice, location, contact, invoice, successful_payment }: ChatMessage): string | undefined {
  if (sticker) return `Sticker ${sticker.emoji ?? ''}`;
  if (voice) return `Voice message, ${voice.duration} s`;
  if (location) return `Place ${location.latitude}, ${location.longitude}`;
  if (contact) return `Contact ${contact.first_name}, ${contact.phone_number}`;
  if (invoice) return `${invoice.title}: ${money(invoice.total_amount, invoice.currency)}`;
  return (
    successful_payment &&
    `Paid ${money(successful_payment.total_amount, successful_payment.currency)} (rehearsed, no money moved)`
  );
}

const money = (minor: number, currency: string): string =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency }).format(minor / 100);

function buttonView(button: InlineKeyboardButton): ButtonView {
  const label = button.text;
  if ('callback_data' in button) return { label, kind: 'tap', value: button.callback_data };
  if ('url' in button) return { label, kind: 'link', value: button.url };
  if ('copy_text' in button) return { label, kind: 'copy', value: button.copy_text.text };
  return 'pay' in button ? { label, kind: 'pay', value: '' } : { label, kind: 'other', value: '' };
}
