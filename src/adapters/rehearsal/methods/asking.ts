import { z } from 'zod';
import { badRequest, done, isRefusal, method, type Outcome } from '../call.ts';
import {
  addMessage,
  addUpdate,
  chatOf,
  messageOf,
  personOf,
  userOf,
  type Chats,
  type Content,
  type Query,
} from '../chats.ts';
import { INLINE, lengthOf, LIMITS, SEND } from '../fields.ts';
import { post } from '../post.ts';

const ANSWER_WITHIN = 60_000;
const TOO_OLD = badRequest('query is too old and response timeout expired or query ID is invalid');
const ANSWER = z.object({ callback_query_id: z.string(), text: z.string().optional() });

/** A tap may be answered for a minute; the platform promises no number, only that late answers fail. */
export const answerCallbackQuery = method(ANSWER, (chats, { callback_query_id, text = '' }, { at }) => {
  const query = queryOf(chats, callback_query_id, 'tap');
  if (!query || at - query.at > ANSWER_WITHIN) return TOO_OLD;
  if (lengthOf(text) > LIMITS.notice) return badRequest('MESSAGE_TOO_LONG');
  const answered = withoutQuery(chats, query);
  if (text === '') return done(answered);
  const notice = { id: chats.nextId, personId: query.personId, text, at };
  return done({ ...answered, nextId: chats.nextId + 1, notices: [...chats.notices.slice(-19), notice] });
});

const INVOICE = SEND.extend({
  title: z.string(),
  description: z.string(),
  payload: z.string(),
  provider_token: z.string().default(''),
  currency: z.string().regex(/^[A-Z]{3}$/),
  prices: z.array(z.object({ label: z.string().min(1), amount: z.int() })).min(1),
  reply_markup: INLINE.optional(),
});
type Invoice = z.infer<typeof INVOICE>;

export const sendInvoice = method(INVOICE, (chats, fields, { at }): Outcome => {
  const flaw = invoiceFlaw(fields);
  if (flaw !== undefined) return badRequest(flaw);
  const total_amount = fields.prices.reduce((sum, { amount }) => sum + amount, 0);
  const { title, description, currency, payload } = fields;
  const invoice = { title, description, currency, total_amount, start_parameter: '' };
  const buttons = fields.reply_markup ?? { inline_keyboard: [[{ text: 'Pay', pay: true }]] };
  const posted = post(chats, { ...fields, reply_markup: buttons }, { invoice }, at);
  if (isRefusal(posted)) return posted;
  const kept = { messageId: posted.result.message_id, payload };
  return { ...posted, chats: { ...posted.chats, invoices: [...chats.invoices, kept] } };
});

function invoiceFlaw({ title, description, payload, provider_token, currency }: Invoice): string | undefined {
  if (!between(lengthOf(title), 1, 32)) return 'invoice title must be 1 to 32 characters';
  if (!between(lengthOf(description), 1, 255)) return 'invoice description must be 1 to 255 characters';
  if (!between(Buffer.byteLength(payload), 1, 128)) return 'INVOICE_PAYLOAD_INVALID';
  return (currency === 'XTR') === (provider_token === '') ? undefined : 'PAYMENT_PROVIDER_INVALID';
}

const CHECKOUT = z.object({ pre_checkout_query_id: z.string(), ok: z.boolean(), error_message: z.string().optional() });

/** Ten seconds is what the platform gives a bot to agree to a payment; agreeing makes the payment. */
export const answerPreCheckoutQuery = method(
  CHECKOUT,
  (chats, { pre_checkout_query_id, ok, error_message }, { at }) => {
    const query = queryOf(chats, pre_checkout_query_id, 'checkout');
    if (!query || at - query.at > 10_000) return TOO_OLD;
    const answered = withoutQuery(chats, query);
    if (ok) return done(paid(answered, query));
    if (!error_message) return badRequest('ERROR_TEXT_EMPTY');
    const notice = { id: chats.nextId, personId: query.personId, text: error_message, at };
    return done({ ...answered, nextId: chats.nextId + 1, notices: [...chats.notices, notice] });
  },
);

function paid(chats: Chats, { personId, messageId, id, at }: Query): Chats {
  const [person, chat, bill] = [
    personOf(chats, personId),
    chatOf(chats, personId),
    messageOf(chats, personId, messageId)?.invoice,
  ];
  if (!person || !chat || !bill) return chats;
  const { currency, total_amount } = bill;
  const invoice_payload = payloadOf(chats, messageId);
  const charges = { telegram_payment_charge_id: `rehearsed-${id}`, provider_payment_charge_id: `rehearsed-${id}` };
  const content: Content = { successful_payment: { currency, total_amount, invoice_payload, ...charges } };
  const added = addMessage(chats, chat, userOf(person), content, at);
  return addUpdate(added.chats, { message: added.result });
}

/** The words that the bot gave an invoice for its own use. */
export const payloadOf = (chats: Chats, messageId: number): string =>
  chats.invoices.find((invoice) => invoice.messageId === messageId)?.payload ?? '';

const queryOf = (chats: Chats, id: string, kind: Query['kind']): Query | undefined =>
  chats.queries.find((query) => query.id === id && query.kind === kind);

const withoutQuery = (chats: Chats, query: Query): Chats => ({
  ...chats,
  queries: chats.queries.filter((open) => open !== query),
});

const between = (value: number, least: number, most: number): boolean => value >= least && value <= most;
