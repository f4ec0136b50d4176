import type {
  ForceReply,
  InlineKeyboardMarkup,
  MessageEntity,
  ReplyKeyboardMarkup,
  ReplyKeyboardRemove,
} from 'grammy/types';
import { z } from 'zod';
import { badRequest, type Refusal } from './call.ts';

export type Markup = InlineKeyboardMarkup | ReplyKeyboardMarkup | ReplyKeyboardRemove | ForceReply;

const shaped = <T>(shape: z.ZodType) =>
  z.custom<T>((value) => shape.safeParse(value).success, 'has not the right shape');
const rows = z.array(z.array(z.looseObject({ text: z.string() })));

export const CHAT_ID = z.union([z.int(), z.string()]);
export const INLINE = shaped<InlineKeyboardMarkup>(z.looseObject({ inline_keyboard: rows }));
export const MARKUP = z.union([
  INLINE,
  shaped<ReplyKeyboardMarkup>(
    z.looseObject({ keyboard: z.array(z.array(z.union([z.string(), z.looseObject({ text: z.string() })]))) }),
  ),
  shaped<ReplyKeyboardRemove>(z.looseObject({ remove_keyboard: z.literal(true) })),
  shaped<ForceReply>(z.looseObject({ force_reply: z.literal(true) })),
]);
export const ENTITIES = z.array(
  shaped<MessageEntity>(z.looseObject({ type: z.string(), offset: z.int(), length: z.int() })),
);

/** What every method that writes into a chat takes. */
export const SEND = z.object({
  chat_id: CHAT_ID,
  parse_mode: z.string().optional(),
  reply_markup: MARKUP.optional(),
  reply_parameters: z.object({ message_id: z.int(), allow_sending_without_reply: z.boolean().optional() }).optional(),
});
export const CAPTION = z.object({ caption: z.string().optional(), caption_entities: ENTITIES.optional() });

/** The platform's own limits, in Unicode code points unless the name says bytes. */
export const LIMITS = {
  text: 4096,
  caption: 1024,
  notice: 200,
  buttonDataBytes: 64,
  buttons: 100,
  copyText: 256,
} as const;

export const lengthOf = (text: string): number => [...text].length;

export function textFlaw(text: string): Refusal | undefined {
  if (text.trim() === '') return badRequest('message text is empty');
  return lengthOf(text) > LIMITS.text ? badRequest('message is too long') : undefined;
}

export const captionFlaw = (caption = ''): Refusal | undefined =>
  lengthOf(caption) > LIMITS.caption ? badRequest('message caption is too long') : undefined;

/** The stand-in reads `entities` only: texts that people typed must not be able to change the formatting. */
export const parseModeFlaw = (mode = ''): Refusal | undefined =>
  mode === '' ? undefined : badRequest('unsupported parse_mode: the rehearsal reads entities instead');

const entityReaches = ({ offset, length }: MessageEntity, text: string): boolean =>
  offset >= 0 && length > 0 && offset + length <= text.length;

export const entitiesFlaw = (text: string, entities: readonly MessageEntity[] = []): Refusal | undefined =>
  entities.every((entity) => entityReaches(entity, text)) ? undefined : badRequest('entity beyond the end of the text');

const ACTIONS = [
  'callback_data',
  'url',
  'copy_text',
  'pay',
  'web_app',
  'login_url',
  'callback_game',
  'switch_inline_query',
].concat(['switch_inline_query_current_chat', 'switch_inline_query_chosen_chat']);

export function markupFlaw(markup?: Markup): Refusal | undefined {
  if (!markup || !('inline_keyboard' in markup)) return undefined;
  const buttons = markup.inline_keyboard.flat();
  if (buttons.length > LIMITS.buttons) return badRequest('reply markup is too long');
  return buttons.map(buttonFlaw).find((flaw) => flaw !== undefined);
}

function buttonFlaw(button: InlineKeyboardMarkup['inline_keyboard'][number][number]): Refusal | undefined {
  if (button.text.trim() === '') return badRequest('inline keyboard button text must be non-empty');
  if (ACTIONS.filter((action) => action in button).length !== 1)
    return badRequest('inline keyboard button must do exactly one thing');
  if ('callback_data' in button && !fitsButton(button.callback_data)) return badRequest('BUTTON_DATA_INVALID');
  if ('copy_text' in button && !within(lengthOf(button.copy_text.text), LIMITS.copyText))
    return badRequest('BUTTON_COPY_TEXT_INVALID');
  if ('url' in button && !/^(https?|tg|mailto):/.test(button.url)) return badRequest('BUTTON_URL_INVALID');
  return undefined;
}

const fitsButton = (data: string): boolean => within(Buffer.byteLength(data), LIMITS.buttonDataBytes);
const within = (length: number, most: number): boolean => length >= 1 && length <= most;
