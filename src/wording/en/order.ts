import { lines } from '../clip.ts';
import type { OrderWords } from '../words.ts';
import { fateSaid, partingSaid } from './parting.ts';

export const EN_ORDER: OrderWords = {
  placed: (order) => `Your order is placed. Its number is ${order}.`,
  promised: (day) => `Ships ${day}.`,
  pay: (words, days, voice) =>
    days === 0 ? words : `${words} Payment is due within ${voice.count(days, { one: 'day', other: 'days' })}.`,
  askAddress: 'One last thing: type the name and address for the parcel, all in one message.',
  yours: 'Your orders:',
  heading: (order, state) => `Order ${order}: ${state}`,
  likely: (day) => `As things stand it may go out ${day} already.`,
  late: (promised, now) => `Promised for ${promised}. As the bench stands now it would ship ${now}.`,
  noDay: (promised) => `Promised for ${promised}. As the bench stands now there is no ship day for it.`,
  onHold: 'on hold',
  waitsForMoney: (money) => `waiting for ${money} to be paid`,
  held: (promised) => `It was promised for ${promised}. While it is on hold it has no ship day.`,
  dayWithMoney: 'Work begins, and its ship day is set, when the payment is here.',
  paidToday: (day) => `Paid today, it ships ${day}; its ship day is set when the payment is here.`,
  slip: (promised, told) =>
    `Promised for ${promised}. The buyer was told ${told} instead: wait, change or cancel is still to be answered.`,
  slipYours: (promised, told) =>
    `It was promised for ${promised}, and you were told ${told} instead. Will you wait, have something changed, or cancel?`,
  step: (step, steps, doing) => `Step ${step} of ${steps}: ${doing}`,
  next: (step, steps, next) => `Step ${step} of ${steps}, up next: ${next}`,
  done: 'All steps done',
  gone: (time) => `Handed in at the post: ${time}.`,
  tracking: (number) => `Tracking number: ${number}`,
  noAddress: 'No address yet.',
  address: 'Goes to:',
  cancelAsked: 'Cancelling was asked for. The maker has not answered yet.',
  fresh: (order, buyer) => `New order ${order} from ${buyer}`,
  offShelf: (heads) => `On the shelf already, to be packed: ${heads}.`,
  addressOf: (order, buyer) => `Address for ${order}, ${buyer}:`,
  elsewhere: (place, priced) =>
    `CAREFUL: the address is in ${place}, postage and sales tax are for ${priced}. The buyer has been told and has not said yes yet.`,
  buyer: (buyer) => `Buyer: ${buyer}`,
  queue: (count, voice) => `${voice.count(count, { one: 'open order', other: 'open orders' })}, soonest promise first.`,
  emptyQueue: 'No open orders.',
  wishes: (buyer, about) => `${buyer} wishes for something that is not in the book. Can you do it?\n${about}`,
  wishSent: (about) =>
    `I have asked the maker:\n${about}\nYou hear from me as soon as there is an answer. Your order so far is kept.`,
  granted: (said, extra) =>
    `The maker says yes${said === '' ? '' : ` to ${said}`}${extra === null ? '.' : `, for ${extra} a head more.`}`,
  denied: (said) => `The maker cannot do ${said}. Your order so far is kept; choose something else and go on.`,
  asks: (buyer, order) => (order === null ? `${buyer} asks:` : `${buyer} asks, order ${order}:`),
  drafting: 'They are putting together an order.',
  reply: (buyer) => `Type your answer. Your next message goes to ${buyer}.`,
  wantsOut: (buyer, order) => `${buyer} wants to cancel order ${order}, and work on it has begun.`,
  leaving: ({ parting, fate }, voice) =>
    lines(
      fateSaid(fate, voice),
      fate.scrapped === 0
        ? null
        : 'Finish them before you let it go, and they go on the shelf; what the buyer was told stands.',
      partingSaid(parting, voice),
    ),
  wantsOutHow: 'Let it go, or keep making it? They hear your answer either way.',
};
