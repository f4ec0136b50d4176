import type { BookKind } from '../domain/desk/books.ts';
import type { PaperKind } from '../domain/desk/business.ts';
import type { JournalWhy } from '../domain/stock/journal.ts';
import type { Voice } from './voice.ts';

/** Sayings on stock and money that look the same in each language. */
export const BUSINESS_LAID_OUT = ['to-buy', 'journal', 'cost', 'excise', 'pay', 'unpaid', 'month'] as const;

/** What is said on stock and money, and what stands on papers. */
export type BusinessWords = Readonly<{
  stock: Readonly<{
    heading: string;
    /** What is on hand of an item that something is going on with. */
    putAside: (amount: string) => string;
    inWork: (amount: string) => string;
    coming: (amount: string, day: string) => string;
    overdue: (amount: string, day: string, days: number, voice: Voice) => string;
    still: string;
    hooks: (pattern: string) => string;
    kinds: Readonly<Record<'metal' | 'paint' | 'guard' | 'keeper' | 'dressing' | 'other', string>>;
    shelf: string;
    toBuy: string;
    nothingToBuy: string;
    /** Only what orders wait for is on the list yet, and why. */
    tooNew: (weeks: number, voice: Voice) => string;
    supplier: (name: string | null) => string;
    needed: (amount: string) => string;
    low: (there: string, reorderAt: string) => string;
    /** Of a delivery that is overdue. */
    askAfter: (amount: string, due: string) => string;
    sum: (money: string) => string;
    journal: string;
    noJournal: string;
    whys: Readonly<Record<JournalWhy, (ref: string) => string>>;
    left: (amount: string) => string;
    clock: string;
  }>;
  cost: Readonly<{
    heading: (order: string) => string;
    material: (money: string) => string;
    packaging: (money: string) => string;
    hands: (duration: string, money: string) => string;
    overhead: (money: string) => string;
    excise: (money: string) => string;
    sum: (cost: string, price: string) => string;
    margin: (money: string, percent: string) => string;
    thin: (percent: string) => string;
    uncosted: (items: string) => string;
    anHour: (money: string) => string;
    bySteps: (steps: string) => string;
  }>;
  excise: Readonly<{
    heading: (quarter: string) => string;
    sales: (orders: string, money: string) => string;
    base: (share: number, money: string) => string;
    tax: (money: string) => string;
    onTop: (money: string) => string;
    due: (day: string) => string;
    notAdvice: string;
    ask: readonly string[];
  }>;
  pay: Readonly<{
    heading: (order: string) => string;
    asked: (money: string) => string;
    /** One change of the price, the sales tax in it and its reason. */
    change: (money: string, tax: string | null, why: string) => string;
    now: (money: string) => string;
    paid: (money: string) => string;
    refunded: (money: string) => string;
    due: (money: string) => string;
    settled: string;
    over: (money: string) => string;
    deposit: (money: string) => string;
    charges: (ids: string) => string;
    byWord: (order: string, voice: Voice) => string;
    unpaid: string;
    nothingOwed: string;
    row: (order: string, buyer: string, money: string, day: string) => string;
    lateRow: (order: string, buyer: string, money: string, days: string) => string;
    backRow: (order: string, buyer: string, money: string) => string;
    days: (count: number, voice: Voice) => string;
    invoice: Readonly<Record<'whole' | 'deposit', (order: string) => string>>;
    begins: (money: string, rule: 'deposit' | 'paid') => string;
  }>;
  month: Readonly<{
    heading: (month: string) => string;
    orders: (accepted: string, shipped: string, cancelled: number, voice: Voice) => string;
    revenue: (money: string, heads: string) => string;
    material: (money: string) => string;
    margin: (money: string, hours: string) => string;
    received: (money: string) => string;
    onTime: (percent: string, onTime: number, shipped: number) => string;
    noneShipped: string;
    styles: string;
    styleRow: (style: string, heads: string, money: string) => string;
    scrap: string;
    figures: Readonly<Record<'shipped' | 'heads' | 'sold' | 'hours' | 'onTime', string>>;
    soldBy: string;
    scrapRow: (mold: string, percent: string, scrap: number, cast: number) => string;
  }>;
  orderCount: (count: number, voice: Voice) => string;
  books: Readonly<Record<BookKind, string>>;
  paper: Readonly<{
    names: Readonly<Record<PaperKind, string>>;
    order: string;
    date: string;
    ships: string;
    shipped: string;
    cancelled: string;
    to: string;
    buyer: string;
    needBy: string;
    head: string;
    each: string;
    count: string;
    amount: string;
    checked: string;
    /** Heads to pour. */
    pour: string;
    off: string;
    topUp: string;
    rush: string;
    postage: (place: string) => string;
    tax: string;
    adjusted: string;
    total: string;
    /** In the place of the total, of an order that was given up. */
    kept: string;
    paid: string;
    refunded: string;
    due: string;
    over: string;
    weight: (grams: string) => string;
    care: string;
    carePaint: string;
    careLead: string;
    careNotChildren: string;
    careRules: string;
    steps: string;
    materials: string;
    quantity: string;
    extras: string;
    breaks: (from: number, percent: string) => string;
    least: (money: string) => string;
    asOf: (day: string) => string;
    byLot: (count: string) => string;
    page: (page: string, of: string) => string;
  }>;
}>;
