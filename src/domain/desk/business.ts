import type { Cents } from '../craft/money.ts';
import type { Day } from '../craft/time.ts';
import type { OrderCost } from '../quote/cost.ts';
import type { Worksheet } from '../quote/excise.ts';
import type { Balance, Refused } from '../quote/payment.ts';
import type { Basket } from '../stock/buy.ts';
import type { JournalRow } from '../stock/journal.ts';
import type { StockVerb } from '../stock/said.ts';
import type { BookKind } from './books.ts';
import type { MonthFacts } from './month.ts';
import type { Order } from './order.ts';

/** What a paper is about. */
export const PAPERS = ['packing-slip', 'order-sheet', 'receipt', 'price-list'] as const;
export type PaperKind = (typeof PAPERS)[number];

/** An order that is not settled: what is due, since when, or what is to be given back. */
export type UnpaidRow = Readonly<{
  order: string;
  buyer: string;
  due: Cents;
  over: Cents;
  kept: Cents;
  dueOn: Day;
  late: number;
}>;

/** What is said about stock and money. */
export type BusinessSaying =
  | Readonly<{
      code: 'stock-changed';
      verb: StockVerb;
      item: string;
      count: number;
      onHand: number;
      /** When an ordered delivery is expected. */
      day: Day | null;
      /** What accepted orders need beyond what is there. */
      short: number;
    }>
  | Readonly<{ code: 'which-stock'; verb: StockVerb; count: number; named: string; items: readonly string[] }>
  | Readonly<{ code: 'stock-unknown'; named: string }>
  | Readonly<{ code: 'whole-pieces'; item: string }>
  | Readonly<{ code: 'not-so-many'; item: string; count: number; onHand: number }>
  /** `item` and `count` make an example of what to type. */
  | Readonly<{ code: 'how-much-stock'; verb: StockVerb; item: string; count: number }>
  /** `untilKnown`: weeks until the usual use can be told. */
  | Readonly<{ code: 'to-buy'; baskets: readonly Basket[]; untilKnown: number }>
  | Readonly<{ code: 'journal'; rows: readonly (JournalRow & Readonly<{ who: string | null }>)[] }>
  | Readonly<{ code: 'cost'; order: Order; cost: OrderCost }>
  | Readonly<{ code: 'excise'; sheet: Worksheet }>
  | Readonly<{ code: 'no-excise' }>
  /** `charges` are payments made in the chat, by the provider's ids. */
  | Readonly<{ code: 'pay'; order: string; balance: Balance; deposit: Cents; charges: readonly string[] }>
  | Readonly<{
      code: 'paid';
      order: string;
      kind: 'paid' | 'refund' | 'adjust';
      cents: Cents;
      /** Of a changed price, the part that is sales tax. */
      tax: Cents;
      balance: Balance;
      begins: boolean;
    }>
  /** To the maker: the buyer agreed to what an order costs to another place. */
  | Readonly<{ code: 'order-moved'; order: Order; buyer: string; balance: Balance }>
  /** A change that wants its reason first. */
  | Readonly<{ code: 'why-then'; order: string; kind: 'refund' | 'adjust' }>
  /** `mostOff`: how much can be taken off its price. */
  | Readonly<{ code: 'not-paid'; order: string; why: Refused; balance: Balance; mostOff: Cents }>
  | Readonly<{ code: 'unpaid'; rows: readonly UnpaidRow[] }>
  | Readonly<{ code: 'payment-in'; order: string; cents: Cents; due: Cents }>
  | Readonly<{ code: 'invoice'; order: Order; what: 'whole' | 'deposit'; cents: Cents }>
  | Readonly<{ code: 'paid-here'; order: string; buyer: string; cents: Cents; balance: Balance; begins: boolean }>
  | Readonly<{
      code: 'payment-astray';
      order: string;
      buyer: string;
      cents: Cents;
      currency: string;
      charge: string;
    }>
  | Readonly<{ code: 'refunded'; order: string; cents: Cents; why: string }>
  | Readonly<{ code: 'price-changed'; order: string; cents: Cents; tax: Cents; why: string; asked: Cents }>
  | Readonly<{ code: 'month'; facts: MonthFacts }>
  | Readonly<{ code: 'paper'; kind: PaperKind; order: Order | null; buyer: string | null; day: Day }>
  | Readonly<{ code: 'books'; kind: BookKind; from: Day; to: Day; rows: number }>
  | Readonly<{ code: 'no-receipt'; order: string | null }>
  /** Nothing is posted of a cancelled order. */
  | Readonly<{ code: 'no-slip'; order: string }>
  | Readonly<{ code: 'which-order'; word: string }>
  | Readonly<{ code: 'no-such-period'; word: 'month' | 'tax' | 'books'; said: string; today: Day }>;
