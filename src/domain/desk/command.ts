import type { Sender } from './person.ts';
import type { Tap } from './tap.ts';

/** What someone can send that is neither words nor a tap. */
export const THINGS = ['photo', 'file', 'sticker', 'voice', 'video', 'location', 'contact', 'other'] as const;
export type Thing = (typeof THINGS)[number];

/** Somebody is about to pay an invoice: `reason` is what the invoice was sent with. */
export type CheckoutAsked = Readonly<{ by: Sender; reason: string; cents: number; currency: string }>;
/** Somebody has paid one; `charge` is the provider's id of it. */
export type PaidHere = CheckoutAsked & Readonly<{ charge: string }>;

/** Everything that can happen, in one list: something said, tapped, sent or changed, and the clock. */
export type Command =
  | Readonly<{ type: 'said'; by: Sender; text: string }>
  | Readonly<{ type: 'edited'; by: Sender; text: string }>
  /** `tap` is null for button data that no button of ours carries; `message` is the message the button hangs on. */
  | Readonly<{ type: 'tapped'; by: Sender; tap: Tap | null; message: number | null }>
  /** `file` is the platform's id of a photo; `album` joins photos that were sent together. */
  | Readonly<{ type: 'sent'; by: Sender; thing: Thing; file: string | null; album: string | null; caption: string }>
  | (Readonly<{ type: 'checkout' }> & CheckoutAsked)
  | (Readonly<{ type: 'paid' }> & PaidHere)
  /** The person blocked the program, or let it in again. */
  | Readonly<{ type: 'reach'; by: Sender; reachable: boolean }>
  | Readonly<{ type: 'tick' }>;
