import type { Timer } from '../domain/bench/timer.ts';
import type { OrderState } from '../domain/desk/order.ts';
import type { Ask } from '../domain/order/draft.ts';
import type { PricePart } from '../domain/quote/price.ts';
import type { Keeper, SpecSlot, Step } from '../domain/shop/words.ts';
import type { Plural } from './plural.ts';

/** The words of the trade in one language; the shop file has the names of what a shop owns. */
export type Terms = Readonly<{
  /** What a slot, a whole set of fittings or a place is called. */
  asks: Readonly<Record<Ask, string>>;
  /** A step as the name of the work. */
  steps: Readonly<Record<Step, string>>;
  /** A step that runs: "being poured". */
  doing: Readonly<Record<Step, string>>;
  timers: Readonly<Record<Timer['kind'], string>>;
  states: Readonly<Record<OrderState, string>>;
  prices: Readonly<Record<PricePart, string>>;
  keepers: Readonly<Record<Keeper, string>>;
  /** A value where the slot's own name stands beside it: "NONE", "UNPAINTED". */
  none: string;
  bare: string;
  /** A value that stands alone: "4/0 hook", "no guard". */
  part: Readonly<Record<SpecSlot, (value: string) => string>>;
  without: Readonly<{ guard: string; keeper: string; dressing: string }>;
  /** A head by its style and weight, as far as they are known. */
  head: (style: string | undefined, weight: string | undefined) => string;
  /** Work with what it is shared by: "pour" and "1/4 oz ball head". */
  shared: (step: string, by: string) => string;
  /** Things on the shelf, many of them. */
  items: Readonly<{
    hook: (size: string, pattern: string) => string;
    paint: (name: string) => string;
    guard: (name: string) => string;
    keeper: (name: string) => string;
    epoxy: string;
    bag: string;
    label: string;
  }>;
  heads: Plural;
  /** A lot whose order was cancelled. */
  cancelled: (lot: string) => string;
  quote: (said: string) => string;
}>;
