import { z } from 'zod';
import type { Command, Thing } from '../../domain/desk/command.ts';
import { type Sender, personId } from '../../domain/desk/person.ts';
import { parseTap } from '../../wording/buttons.ts';
import { cleanText } from './text.ts';

/** What an update means here. `query` is the button press that has to be answered whatever it means. */
export type Decoded = Readonly<{
  id: number;
  query: string | null;
  /** A payment about to be made, which has to be let through or refused within ten seconds. */
  checkout?: string;
  command: Exclude<Command, { type: 'tick' }> | null;
}>;

const from = z.object({
  id: personId,
  is_bot: z.boolean(),
  first_name: z.string(),
  last_name: z.string().optional(),
  language_code: z.string().max(35).optional(),
});
const chat = z.object({ id: z.number(), type: z.string() });
const size = z.object({ file_id: z.string().min(1).max(300), width: z.number(), height: z.number() });

const payment = {
  currency: z.string().max(8),
  total_amount: z.number().int().positive(),
  invoice_payload: z.string().max(128),
};

const message = z.looseObject({
  message_id: z.number(),
  from: from.optional(),
  sender_chat: z.unknown().optional(),
  chat,
  text: z.string().optional(),
  caption: z.string().optional(),
  media_group_id: z.string().max(64).optional(),
  photo: z.array(size).optional(),
  successful_payment: z.object({ ...payment, telegram_payment_charge_id: z.string().min(1).max(256) }).optional(),
});
type Message = z.infer<typeof message>;

const updateSchema = z.object({
  update_id: z.number().int().min(0),
  message: message.optional(),
  edited_message: message.optional(),
  callback_query: z
    .object({
      id: z.string().min(1),
      from,
      data: z.string().optional(),
      message: z.object({ message_id: z.number(), chat }).optional(),
    })
    .optional(),
  pre_checkout_query: z.object({ id: z.string().min(1), from, ...payment }).optional(),
  my_chat_member: z.object({ chat, from, new_chat_member: z.object({ status: z.string() }) }).optional(),
});
type Update = z.infer<typeof updateSchema>;

/** The command in an update, if it is one that a person sent in a chat with the program alone; null for what is not even an update.
 *  Groups, channels, other bots and what is not understood carry no command. */
export function decode(raw: unknown): Decoded | null {
  const read = updateSchema.safeParse(raw);
  if (!read.success) return unread(raw);
  const update = read.data;
  const checkout = update.pre_checkout_query;
  return {
    id: update.update_id,
    query: update.callback_query?.id ?? null,
    ...(checkout === undefined ? {} : { checkout: checkout.id }),
    command: commandOf(update),
  };
}

/** Of an update in an unknown shape, what is needed to be done with it. */
const unread = (raw: unknown): Decoded | null => {
  const bare = bareSchema.safeParse(raw).data;
  return bare === undefined ? null : { id: bare.update_id, query: bare.callback_query?.id ?? null, command: null };
};
const bareSchema = z.object({
  update_id: z.number().int(),
  callback_query: z.object({ id: z.string() }).optional().catch(undefined),
});

const commandOf = (update: Update): Decoded['command'] =>
  (update.message && fromMessage(update.message)) ??
  (update.edited_message && fromEdit(update.edited_message)) ??
  (update.callback_query && fromTap(update.callback_query)) ??
  (update.pre_checkout_query && fromCheckout(update.pre_checkout_query)) ??
  (update.my_chat_member && fromReach(update.my_chat_member)) ??
  null;

function fromMessage(message: Message): Decoded['command'] {
  const by = senderOf(message);
  if (by === null) return null;
  if (message.text !== undefined) return { type: 'said', by, text: cleanText(withoutBotName(message.text)) };
  if (message.successful_payment !== undefined) {
    const { telegram_payment_charge_id: charge } = message.successful_payment;
    return { type: 'paid', by, ...paymentOf(message.successful_payment), charge };
  }
  const thing = thingIn(message);
  if (thing === null) return null;
  const caption = cleanText(message.caption ?? '', CAPTION_MOST);
  return { type: 'sent', by, thing, file: largest(message.photo), album: message.media_group_id ?? null, caption };
}

const fromEdit = (message: Message): Decoded['command'] => {
  const by = senderOf(message);
  return by === null || message.text === undefined ? null : { type: 'edited', by, text: cleanText(message.text) };
};

const fromTap = (query: NonNullable<Update['callback_query']>): Decoded['command'] =>
  query.from.is_bot || (query.message !== undefined && !isAlone(query.message.chat, query.from.id))
    ? null
    : {
        type: 'tapped',
        by: person(query.from),
        tap: query.data === undefined ? null : parseTap(query.data),
        message: query.message?.message_id ?? null,
      };

const fromCheckout = (query: NonNullable<Update['pre_checkout_query']>): Decoded['command'] =>
  query.from.is_bot ? null : { type: 'checkout', by: person(query.from), ...paymentOf(query) };

const paymentOf = ({
  invoice_payload,
  total_amount,
  currency,
}: NonNullable<Update['pre_checkout_query']> | NonNullable<Message['successful_payment']>) => ({
  reason: cleanText(invoice_payload),
  cents: total_amount,
  currency,
});

const fromReach = (change: NonNullable<Update['my_chat_member']>): Decoded['command'] =>
  isAlone(change.chat, change.from.id)
    ? { type: 'reach', by: person(change.from), reachable: change.new_chat_member.status !== 'kicked' }
    : null;

const senderOf = ({ from, chat, sender_chat }: Message): Sender | null =>
  from === undefined || from.is_bot || sender_chat !== undefined || !isAlone(chat, from.id) ? null : person(from);

const isAlone = (chat: Readonly<{ id: number; type: string }>, id: number): boolean =>
  chat.type === 'private' && chat.id === id;

const person = ({ id, first_name, last_name, language_code }: z.infer<typeof from>): Sender => ({
  id,
  name: cleanText([first_name, last_name ?? ''].join(' '), NAME_MOST)
    .replaceAll(/\s+/g, ' ')
    .trim(),
  language: language_code ?? null,
});

const NAME_MOST = 130;
const CAPTION_MOST = 1024;

/** `/start@thisbot payload` is `/start payload`. */
const withoutBotName = (text: string): string => text.replace(/^(\/\w{1,32})@\w{3,64}(?=\s|$)/, '$1');

/** The platform's names for what can be sent. Anything else that a person sends is `other`; what the chat says by itself is nothing. */
const THINGS_BY_FIELD: readonly (readonly [string, Thing])[] = [
  ['photo', 'photo'],
  ['animation', 'video'],
  ['document', 'file'],
  ['sticker', 'sticker'],
  ['voice', 'voice'],
  ['audio', 'voice'],
  ['video', 'video'],
  ['video_note', 'video'],
  ['venue', 'location'],
  ['location', 'location'],
  ['contact', 'contact'],
];
const SERVICE = ['pinned_message', 'message_auto_delete_timer_changed', 'write_access_allowed', 'chat_background_set'];

const thingIn = (message: Message): Thing | null =>
  SERVICE.some((field) => field in message)
    ? null
    : (THINGS_BY_FIELD.find(([field]) => field in message)?.[1] ?? 'other');

/** The platform offers a photo in several sizes. */
const largest = (sizes: readonly z.infer<typeof size>[] | undefined): string | null =>
  [...(sizes ?? [])].sort((a, b) => b.width * b.height - a.width * a.height)[0]?.file_id ?? null;
