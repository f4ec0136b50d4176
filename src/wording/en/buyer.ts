import { capital, lines } from '../clip.ts';
import { lineName } from '../lineName.ts';
import { partName } from '../names.ts';
import { partingSaid } from './parting.ts';
import { EN_TERMS } from './terms.ts';
import type { PlainWords, ThingWords } from '../words.ts';

/** What a buyer is told. */
export const EN_BUYER = {
  welcome: (_say, { shop, own }) =>
    `Hello, this is the order bot of ${shop.name}. ${own(shop.texts.greeting)}\n\nIt takes about two minutes. Say what you want in your own words, or answer by button. Nothing is ordered until you tap “Order this”.\n\nI am a program. To reach the person who makes the heads, type “ask the maker” at any time; “help” says what else I can do.`,
  'started-over': () => 'All cleared. Nothing was ordered.',
  stale: () => 'That button belongs to an order that is finished or cleared. Nothing has changed.',
  'fitting-answer': ({ thing, kept }) => (kept ? 'Photo kept with this head. The maker will see it.' : THINGS[thing]),
  'photos-full': ({ most }, voice) =>
    `${capital(voice.count(most, { one: 'photo is', other: 'photos are' }))} kept with this head already, and more do not fit. Describe in words what else the maker should know.`,
  'photo-of-which': () => 'Which heads is the photo for? Tap them, and the maker sees it.',
  'photo-kept': ({ order, line, photos }, voice) =>
    `${photos === 1 ? 'Photo' : `${voice.number(photos)} photos`} kept with ${order}: ${lineName(line, voice)}. The maker sees ${photos === 1 ? 'it' : 'them'}.`,
  'pass-on': ({ said, orders }, { terms }) =>
    lines(
      `I cannot answer that myself, but the maker can: ${terms.quote(said)}`,
      orders === 1
        ? 'Tap to pass it on. For new heads, just type what you want.'
        : 'Tap the order it is about to pass it on. For new heads, just type what you want.',
    ),
  help: (_say, { shop }) =>
    `Type what you want in one message, such as the style, weight, color and number of heads, or tap “New order”.\n\nThese words work at any time: back, cancel, start over, my orders, ask the maker, privacy, language.\n\nType an order number to see how far it is. ${shop.name} is one person, so an answer from the maker may take until the evening.`,
  privacy: (_say, { shop }) =>
    `What ${shop.name} keeps: the number of this chat and your name in it, your orders with your words and photos of them, your questions, and your address until some time after the parcel is posted.\n\nWhy: to make your heads, post them, answer you, and keep the books the law asks for. Nothing else is done with it, and nobody else gets it.\n\nIt lies encrypted on the maker's own machine. You can have a copy or have it deleted: tap below, or type “export” or “delete my data”. For anything else, type “ask the maker”.`,
  'yes-to-which': () =>
    'Yes to the order, or to the maker? Nothing is ordered yet: tap “Order this” to order it as it stands, or “Ask the maker” to write to the maker.',
  export: () =>
    'This is everything that is kept about you here, as a file that programs can read (JSON). Finished orders are in it as far as they are still kept.',
  'export-lately': () => 'You got a copy within the last hour; it is further up in this chat. Ask again later.',
  'forget-sure': ({ orders }, voice) =>
    lines(
      'Delete what is kept about you: your name, address, questions, what you had begun, and what you like. This cannot be taken back.',
      orders.length === 0
        ? null
        : `${voice.list(orders)} will still be made and posted; what is needed for that is deleted once it has shipped. To stop an order, cancel it first.`,
      'The maker has to keep what was sold, to which state and for how much, without your name.',
    ),
  'forget-later': ({ orders }, voice) =>
    `Deleted, but for what it takes to make and post ${voice.list(orders)}; that goes when it has shipped. Copies made for safety are gone within two weeks.`,
  forgotten: () =>
    'Deleted. Copies made for safety are gone within two weeks. What is in this chat you can clear yourself. If you write again, we begin as if we had never met.',
  'too-many-open': ({ most }, voice) =>
    `You have ${voice.count(most, { one: 'open order', other: 'open orders' })}, which is as many as one person can have here at a time. This one is kept; order it when one of the others has shipped, or ask the maker.`,
  'too-many-questions': ({ most }, voice) =>
    `${capital(voice.count(most, { one: 'question of yours waits', other: 'questions of yours wait' }))} for the maker already, so this one was not passed on. The answers come here; an evening may go by. You can still order, and look at your orders.`,
  'too-many-lines': ({ over, most }, voice) =>
    `One order can have up to ${voice.count(most, { one: 'line', other: 'lines' })}. ${voice.count(over, { one: 'line is', other: 'lines are' })} left out; put what is left out into a second order, or ask the maker.`,
  edited: ({ text }, { terms }) =>
    `You edited a message. I go by what was said at first, so nothing has changed. If ${terms.quote(text)} should count, send it as a new message.`,
  'already-accepted': ({ order }) => `That is ordered already, as ${order}. Nothing was ordered twice.`,
  'quote-over': () =>
    'That price and day no longer stand: the quote ran out, or the bench filled up meanwhile. Here it is anew. Nothing is ordered yet.',
  'address-kept': ({ order }) =>
    `The parcel of ${order.id} goes to:\n${order.address ?? ''}\n\nIf that is right, you are done.`,
  'address-elsewhere': ({ order, place, moved }, voice) => {
    const { shipTo, money } = order;
    const differs = `The address for ${order.id} is in ${voice.place(place)}, and the price is for ${voice.place(shipTo)}.`;
    const kept = `The address is kept:\n${order.address ?? ''}`;
    if (moved === null)
      return `${differs} What it costs to ${voice.place(place)}, and whether it can go there, the maker has to say: ask, or change the address.\n\n${kept}`;
    const part = (name: string, was: number, will: number): string =>
      `${name} ${voice.money(was)} → ${voice.money(will)}`;
    return `${differs} To ${voice.place(place)}: ${voice.list([
      part('postage', money.postage.cents, moved.money.postage.cents),
      part('sales tax', money.tax, moved.money.tax),
      part('total', money.total, moved.money.total),
    ])}. Tap yes if that is right, or change the address.\n\n${kept}`;
  },
  reshipped: ({ order, balance: { asked, kept, due, over } }, voice) => {
    const moved = `Order ${order.id} goes to ${voice.place(order.shipTo)} now, for ${voice.money(asked)} in all.`;
    if (over > 0) return `${moved} You have paid ${voice.money(kept)}, so ${voice.money(over)} goes back to you.`;
    return kept > 0 && due > 0
      ? `${moved} You have paid ${voice.money(kept)}, so ${voice.money(due)} is still due.`
      : `${moved} You are done.`;
  },
  'ask-address': ({ order, before }) =>
    `Type the name and address for ${order}, all in one message: name, street, town, state and ZIP code.${before === null ? '' : ' It takes the place of the old one.'}`,
  'no-orders': () => 'You have no open orders.',
  'no-such-order': ({ said }) => `You have no open order ${said}. Orders that have shipped are no longer listed here.`,
  'cancel-sure': ({ parting, asks }, voice) =>
    lines(
      `Cancel order ${parting.order}? ${partingSaid(parting, voice)}`,
      asks ? 'It is being made already, so the maker decides whether it can be stopped.' : null,
    ),
  cancelled: ({ parting }, voice) =>
    lines(
      `Order ${parting.order} is cancelled, and no more of it is made. ${partingSaid(parting, voice)}`,
      parting.owed === 0 ? null : voice.own(voice.shop.payment.words),
    ),
  'cancel-asked': ({ parting }, voice) =>
    `Your heads of ${parting.order} are being made already, so the maker has to decide. I have asked, and you will hear here. If it is let go: ${partingSaid(parting, voice)}`,
  'cancel-refused': ({ order }) =>
    `The maker keeps making order ${order}: too much of it is done to stop. Type “ask the maker” to talk about it.`,
  making: ({ order }) => `Your order ${order} is on the bench now.`,
  packed: ({ order }) => `Your order ${order} is packed and waits for the next post.`,
  tracking: ({ order, tracking }) => `The tracking number of your order ${order}: ${tracking}`,
  shipped: ({ order, tracking }, { shop, own }) =>
    [
      `Your order ${order} is in the post.`,
      ...(tracking === null ? [] : [`Tracking number: ${tracking}`]),
      own(shop.texts.shipped),
    ].join('\n'),
  'ask-question': () => 'Type your question. Your next message goes to the maker as it is.',
  'question-sent': () =>
    'I have passed it on. The answer comes here; an evening may go by. Whatever you had begun is kept.',
  'posts-to': ({ to, from, places }, voice) =>
    [
      ...(to === null
        ? []
        : [
            from === null
              ? `Not to ${voice.place(to)} so far; ask the maker.`
              : `Yes, to ${voice.place(to)}: postage from ${voice.money(from)}.`,
          ]),
      `Parcels go to ${voice.list(places.map(voice.place))}. Name the state or province when you order.`,
    ].join(' '),
  gladly: () => 'Gladly. Say it all in one message, or answer one question at a time.',
  'quote-later': ({ each, count, total }, voice) =>
    `As far as I know the head, ${count === null ? `about ${voice.money(each)} each` : `${voice.count(count, { one: 'head', other: 'heads' })} would be about ${voice.money(total)}`}, before postage and tax; less for many. The whole price and the day it ships come with the summary, before anything is ordered.`,
  'day-later': () =>
    'It depends on what is on the bench, so the day it ships comes with the summary, once I know the heads. Nothing is ordered before that.',
  range: ({ about, all, fitting, lacks }, voice) =>
    lines(
      lacks === null ? null : `No ${voice.terms.quote(lacks)} in the book. The maker may still do it; just ask.`,
      `${capital(EN_TERMS.asks[about])}: ${voice.list(all.map((value) => partName(voice, about, value)))}.`,
      fitting === null
        ? null
        : `With the head we are talking about: ${voice.list(fitting.map((value) => partName(voice, about, value)))}.`,
    ),
  'you-are-welcome': () => 'You are welcome.',
  'maker-says': ({ text, about }, { terms }) => `The maker answers your ${terms.quote(about)}:\n\n${text}`.trim(),
} satisfies Partial<PlainWords>;

const THINGS: ThingWords = {
  photo:
    'I can keep a photo only with a head that is being ordered, up to ten a head. Begin with “New order”, then send it again.',
  file: 'I cannot read files. Send a picture as a photo, or type what you want.',
  sticker: 'A fine sticker, but I can only read words. Type what you want, or tap a button.',
  voice: 'I cannot listen to voice messages. Please type it, or tap a button.',
  video: 'I cannot watch videos. Send a photo, or type what you want.',
  location: 'I cannot read a map point. Type the state or country it ships to.',
  contact: 'I do not keep contacts. Type the name and address when I ask for them.',
  other: 'I cannot read that. Type what you want, or tap a button.',
};
