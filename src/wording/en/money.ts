import { decimal } from '../../domain/craft/money.ts';
import type { Balance } from '../../domain/quote/payment.ts';
import { capital, lines } from '../clip.ts';
import { amountOf, itemName } from '../names.ts';
import { periodsFor } from '../periods.ts';
import type { Voice } from '../voice.ts';
import type { PlainWords } from '../words.ts';
import { EN_BUSINESS } from './business.ts';

const openSaid = (balance: Balance, voice: Voice): string =>
  balance.due > 0
    ? ` Still due: ${voice.money(balance.due)}.`
    : balance.over > 0
      ? ` To give back: ${voice.money(balance.over)}.`
      : ' Nothing is open.';

/** What is said in a sentence or two on stock and money. */
export const EN_MONEY = {
  'stock-changed': ({ verb, item, count, onHand, day, short }, voice) => {
    const [amount, name] = [amountOf(item, count, voice), itemName(voice, item)];
    const done = {
      got: `Put away: ${amount} ${name}.`,
      count: `Counted: ${name}.`,
      ordered: `Ordered: ${amount} ${name}, expected ${day === null ? 'soon' : voice.day(day)}.`,
      lost: `Taken off: ${amount} ${name}.`,
      found: `Added: ${amount} ${name}.`,
    }[verb];
    const missing = short === 0 ? null : `Accepted orders need ${amountOf(item, short, voice)} more.`;
    return lines(`${done} On hand now: ${amountOf(item, onHand, voice)}.`, missing);
  },
  'which-stock': ({ named, items }, voice) =>
    `“${named}” fits ${voice.count(items.length, { one: 'item', other: 'items' })}. Tap the one you mean; nothing has changed yet.`,
  'stock-unknown': ({ named }) =>
    `I know no item called “${named}”, so nothing has changed. Say it as the list of “stock” has it, such as “got 200 4/0 60 degree hooks” or “count black guards 85”.`,
  'whole-pieces': ({ item }, voice) =>
    `${capital(itemName(voice, item))} are counted in whole pieces, so nothing has changed. Type it again with a whole number.`,
  'not-so-many': ({ item, count, onHand }, voice) =>
    `${amountOf(item, count, voice)} ${itemName(voice, item)} cannot be gone: by the book there are ${amountOf(item, onHand, voice)}. Nothing has changed. Did you mean another number? If the book has too few, count what is left: “count ${itemName(voice, item)}” and the number.`,
  'how-much-stock': ({ verb, item, count }, voice) =>
    `${{ got: 'What came', count: 'What did you count', ordered: 'What did you order', lost: 'What is gone', found: 'What turned up' }[verb]}, and how many? Type it with the number, such as “${verb} ${amountOf(item, count, voice)} ${itemName(voice, item)}”. Nothing has changed yet.`,
  'no-excise': () =>
    'The shop file names no excise tax. If you make and sell tackle in the United States, ask a tax adviser whether 26 U.S.C. §4161(a) applies to you; then set excise.share to 100, 75 or 60 and the worksheet is here.',
  paid: ({ order, kind, cents, tax, balance, begins }, voice) => {
    const done = {
      paid: `Noted: ${order} paid ${voice.money(cents)}.`,
      refund: `Noted: ${voice.money(cents)} of ${order} given back.`,
      adjust: `The price of ${order} is ${voice.money(balance.asked)} now: ${voice.money(cents - tax)} on the heads${tax === 0 ? '' : `, ${voice.money(tax)} on the sales tax with it`}.`,
    }[kind];
    return `${done}${openSaid(balance, voice)}${begins ? ' The bench may begin it.' : ''}`;
  },
  'order-moved': ({ order, buyer, balance }, voice) =>
    `${order.id} of ${buyer} goes to ${voice.place(order.shipTo)} now, for ${voice.money(balance.asked)} in all.${openSaid(balance, voice)}`,
  'why-then': ({ order, kind }) =>
    `What is the reason? The buyer is told it. Type “${{ refund: 'refund', adjust: 'price' }[kind]} ${order}”, the amount and why. Nothing has changed.`,
  'not-paid': ({ order, why, balance, mostOff }, voice) =>
    ({
      'no-amount': `That is no amount. Type it as “paid ${order} 20” or “price ${order} -5 thin paint”. Nothing has changed.`,
      'paid-already': `Nothing is due on ${order}, so nothing has changed. If the price went up, type “price ${order} 5 and why” first.`,
      'more-than-due': `Only ${voice.money(balance.due)} of ${order} is due, so nothing has changed. If the price went up, type “price ${order} 5 and why” first.`,
      'more-than-kept': `Of ${order} you hold ${voice.money(balance.kept)}, and no more than that can go back. Nothing has changed.`,
      'below-nothing': `At most ${voice.money(mostOff)} can be taken off the price of ${order}: its heads cannot cost less than nothing. Nothing has changed.`,
    })[why],
  'payment-in': ({ order, cents, due }, voice) =>
    due === 0
      ? `Your ${voice.money(cents)} for order ${order} is here. It is paid in full, thank you.`
      : `Your ${voice.money(cents)} for order ${order} is here, thank you. Still due: ${voice.money(due)}.`,
  invoice: ({ order, cents }, voice) =>
    `To pay for order ${order.id}: ${voice.money(cents)}. I cannot take payments in the chat just now; please ask the maker how to pay.`,
  'paid-here': ({ order, buyer, cents, balance, begins }, voice) => {
    const { due, over } = balance;
    const open =
      over > 0
        ? `To give back: ${voice.money(over)}.`
        : due > 0
          ? `Still due: ${voice.money(due)}.`
          : 'Nothing is open.';
    return `${buyer} has paid ${voice.money(cents)} of ${order} here in the chat. ${open}${begins ? ' The bench may begin it.' : ''}`;
  },
  'payment-astray': ({ order, buyer, cents, currency, charge }) =>
    `${buyer} has paid ${decimal(cents, currency)} ${currency} in the chat for order ${order}, which is closed or not here. I could not note it on an order: look for payment ${charge} at your payment provider, and give it back there if it is not owed.`,
  refunded: ({ order, cents, why }, voice) =>
    `The maker has given back ${voice.money(cents)} of order ${order}${why === '' ? '' : `: “${why}”`}.`,
  'price-changed': ({ order, cents, tax, why, asked }, voice) =>
    `The maker has ${cents < 0 ? 'taken' : 'put'} ${voice.money(Math.abs(cents))} ${cents < 0 ? 'off' : 'on'} the price of order ${order}${tax === 0 ? '' : `, sales tax of ${voice.money(Math.abs(tax))} in it`}${why === '' ? '' : `: “${why}”`}. It is ${voice.money(asked)} now.`,
  paper: ({ kind, order }) =>
    `${capital(EN_BUSINESS.paper.names[kind])}${order === null ? '' : ` of order ${order.id}`}`,
  books: ({ kind, from, to, rows }, voice) =>
    `${capital(EN_BUSINESS.books[kind])}, ${voice.date(from)} to ${voice.date(to)}: ${voice.count(rows, { one: 'row', other: 'rows' })}`,
  'no-receipt': ({ order }) =>
    `There is no receipt${order === null ? '' : ` of ${order}`} yet: it is written when something has been paid. Until then the order itself says what it costs.`,
  'no-slip': ({ order }) => `${order} is cancelled: nothing of it is posted, so there is no packing slip.`,
  'which-order': ({ word }) => `Which order? Type “${word} K-1001” with its number.`,
  'no-such-period': ({ word, said, today }) =>
    `I know no such period as “${said}”, so nothing was worked out. Type ${periodsFor(word, today)
      .map((period) => `“${period}”`)
      .join(' or ')}.`,
} satisfies Partial<PlainWords>;
