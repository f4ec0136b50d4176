import type { Instant } from '../../domain/craft/time.ts';
import * as acts from './acts.ts';
import { messagesIn, type ChatMessage, type Group, type Person } from './chats.ts';
import type { Room } from './room.ts';

/** Where a message goes when it is not said in the person's own chat, and which message it answers. */
export type Saying = Readonly<{ chatId?: number; replyTo?: number }>;
/** Everything a person can do in the chat, as functions; each throws, with a sentence, what no real app would let happen. */
export type HumanSide = ReturnType<typeof humanSide>;

export function humanSide(room: Room, now: () => Instant) {
  const by = (personId: number, chatId = personId): acts.Actor => ({ personId, chatId, at: now() });
  return {
    say: (personId: number, text: string, { chatId, replyTo }: Saying = {}): ChatMessage =>
      room.change((chats) => acts.textSaid(chats, by(personId, chatId), text, replyTo)),
    /** The first press a new person makes; only then can the bot write to them. */
    start: (personId: number): ChatMessage => room.change((chats) => acts.textSaid(chats, by(personId), '/start')),
    edit: (messageId: number, text: string): ChatMessage =>
      room.change((chats) => {
        const message = chats.messages.find(({ message_id }) => message_id === messageId);
        return acts.textEdited(chats, by(message?.from.id ?? 0, message?.chat.id), messageId, text);
      }),
    /** Sends any button data, present or forged; answers with the id of the query. */
    tap: (personId: number, messageId: number, data: string, chatId = personId): string =>
      room.change((chats) => acts.tapped(chats, by(personId, chatId), messageId, data)),
    /** Presses the newest button that is labelled so. */
    press: (personId: number, label: string): string => {
      const found = buttonLabelled(messagesIn(room.read(), personId), label);
      return room.change((chats) => acts.tapped(chats, by(personId), found.messageId, found.data));
    },
    pay: (personId: number, messageId: number): string =>
      room.change((chats) => acts.payingBegun(chats, by(personId), messageId)),
    ...sendings(room, by),
    block: (personId: number): void => room.change((chats) => acts.botBlocked(chats, by(personId))),
    unblock: (personId: number): void => room.change((chats) => acts.botUnblocked(chats, by(personId))),
    addPerson: (person: Person): void =>
      room.change((chats) => ({ chats: { ...chats, people: [...chats.people, person] }, result: undefined })),
    addGroup: (group: Group): void =>
      room.change((chats) => ({ chats: { ...chats, groups: [...chats.groups, group] }, result: undefined })),
    messagesOf: (chatId: number): readonly ChatMessage[] => messagesIn(room.read(), chatId),
  };
}

const sendings = (room: Room, by: (personId: number) => acts.Actor) => ({
  sendPhoto: (personId: number, picture: acts.Picture, caption = ''): readonly ChatMessage[] =>
    room.change((chats) => acts.picturesSent(chats, by(personId), [picture], caption)),
  sendAlbum: (personId: number, pictures: readonly acts.Picture[], caption = ''): readonly ChatMessage[] =>
    room.change((chats) => acts.picturesSent(chats, by(personId), pictures, caption)),
  sendDocument: (personId: number, document: acts.Picture): ChatMessage =>
    room.change((chats) => acts.documentSent(chats, by(personId), document)),
  sendVoice: (personId: number, seconds: number): ChatMessage =>
    room.change((chats) => acts.voiceSent(chats, by(personId), seconds)),
  sendSticker: (personId: number, emoji: string): ChatMessage =>
    room.change((chats) => acts.stickerSent(chats, by(personId), emoji)),
  sendLocation: (personId: number, latitude: number, longitude: number): ChatMessage =>
    room.change((chats) => acts.sent(chats, by(personId), { location: { latitude, longitude } })),
  sendContact: (personId: number, phone: string, firstName: string): ChatMessage =>
    room.change((chats) => acts.sent(chats, by(personId), { contact: { phone_number: phone, first_name: firstName } })),
});

function buttonLabelled(
  messages: readonly ChatMessage[],
  label: string,
): Readonly<{ messageId: number; data: string }> {
  const buttons = messages.flatMap(({ message_id, reply_markup }) =>
    (reply_markup?.inline_keyboard.flat() ?? []).map((button) => ({ button, messageId: message_id })),
  );
  const found = buttons.findLast(({ button }) => button.text === label);
  if (found && 'callback_data' in found.button) return { messageId: found.messageId, data: found.button.callback_data };
  throw new Error(
    `No button "${label}" here; there are: ${buttons.map(({ button }) => `"${button.text}"`).join(', ') || 'none'}.`,
  );
}
