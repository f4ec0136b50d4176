/** What a button does. A tap names its act, what it acts on, and the version that the button was drawn for; facts are looked up. */
export const ACTS = [
  // anyone, on the draft
  'answer',
  'offered',
  'change',
  'take',
  'sooner',
  'line',
  'add-line',
  'drop-line',
  'usual',
  'each',
  'back',
  'start-over',
  'keep-on',
  'show',
  'accept',
  'ask-maker',
  'help',
  'new',
  // anyone, on their own orders
  'orders',
  'order',
  'cancel',
  'cancel-yes',
  'readdress',
  'same-address',
  'reship',
  'wait',
  'invoice',
  'receipt',
  'again',
  'to-order',
  'reworded',
  // anyone, on what is kept about them
  'export',
  'forget',
  'forget-yes',
  // the maker only
  'bench',
  'start',
  'done',
  'count',
  'more',
  'mix',
  'undo',
  'queue',
  'look',
  'lot',
  'photos',
  'propose',
  'apply',
  'delay',
  'timers',
  'stock',
  'arrived',
  'stock-is',
  'buy',
  'bought',
  'pay',
  'unpaid',
  'paper',
  'digest',
  'week',
  'posted',
  'untracked',
  'tracking',
  'refuse-cancel',
  'grant-cancel',
  'reply',
  'grant',
  'deny',
] as const;
export type ActName = (typeof ACTS)[number];

export type Tap = Readonly<{
  act: ActName;
  /** A draft, order, lot, session or question; `-` where the act needs none. */
  on: string;
  version: number;
  /** A choice's id or a count, if the act needs one. */
  arg: string;
}>;
