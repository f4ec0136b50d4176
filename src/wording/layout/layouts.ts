import type { Voice } from '../voice.ts';
import { BUSINESS_LAYOUTS } from './business.ts';
import { buyerWishes, wishAnswered, wishSent } from './wish.ts';
import type { LaidOut, Phrases, SayingOf } from '../words.ts';
import { bench, count, makerWelcome, ovenTaken, session, startPassed, stepDone } from './bench.ts';
import { digest } from './digest.ts';
import { stock } from './stock.ts';
import { makes } from './enquiry.ts';
import { changeWhat, dropSure, goOn, notUnderstood, question, stuck } from './draft.ts';
import { inDanger } from './danger.ts';
import { changed, changeEffect, closeDown, hours, lotCard, minutes } from './evening.ts';
import {
  accepted,
  askReply,
  buyerAsks,
  buyerCancels,
  newOrder,
  order,
  orderAddress,
  orders,
  orderSheet,
  queue,
} from './order.ts';
import { garageSet, reckoner } from './reckoner.ts';
import { summary } from './summary.ts';
import { timerDue, timers, timersDue } from './timers.ts';
import { week } from './week.ts';

/** The layout of each saying that has one: the same in every language, filled from its phrases. */
export const LAYOUTS: { readonly [Code in LaidOut]: (say: SayingOf<Code>, voice: Voice, phrases: Phrases) => string } =
  {
    question,
    summary,
    stuck,
    'not-understood': notUnderstood,
    'change-what': changeWhat,
    makes,
    'drop-sure': dropSure,
    continue: goOn,
    accepted,
    orders,
    order,
    'maker-welcome': makerWelcome,
    'new-order': newOrder,
    'order-address': orderAddress,
    'order-sheet': orderSheet,
    reckoner,
    'garage-set': garageSet,
    queue,
    'buyer-asks': buyerAsks,
    'buyer-wishes': buyerWishes,
    'wish-sent': wishSent,
    'wish-answered': wishAnswered,
    'ask-reply': askReply,
    'buyer-cancels': buyerCancels,
    bench,
    session,
    'start-passed': startPassed,
    'oven-taken': ovenTaken,
    count,
    'step-done': stepDone,
    'timer-due': timerDue,
    'timers-due': timersDue,
    timers,
    digest,
    stock,
    ...BUSINESS_LAYOUTS,
    'close-down': closeDown,
    hours,
    'in-danger': inDanger,
    'lot-card': lotCard,
    'change-effect': changeEffect,
    changed,
    minutes,
    week,
  };
