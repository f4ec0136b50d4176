import type { Phrases } from '../words.ts';
import { EN_BENCH, EN_DIGEST, EN_TIMER } from './bench.ts';
import { EN_BUSINESS } from './business.ts';
import { EN_BUYER } from './buyer.ts';
import { EN_DRAFT, EN_QUOTE } from './draft.ts';
import { EN_EVENING, EN_EVENING_PLAIN } from './evening.ts';
import { EN_FINDINGS } from './findings.ts';
import { EN_LABELS } from './labels.ts';
import { EN_MAKER } from './maker.ts';
import { EN_MONEY } from './money.ts';
import { EN_ORDER } from './order.ts';
import { EN_WEEK } from './week.ts';

/** Everything that is said in English. */
export const EN: Phrases = {
  plain: { ...EN_BUYER, ...EN_MAKER, ...EN_MONEY, ...EN_EVENING_PLAIN },
  findings: EN_FINDINGS,
  labels: EN_LABELS,
  toasts: {
    done: 'Done',
    stale: 'This has changed meanwhile. Here is how it stands now.',
    saved: 'Saved',
    'not-yours': 'There is no such order of yours.',
    unreadable: 'I cannot read that button. Please use the newest message.',
    already: 'That is done already.',
    'not-payable': 'What is due has changed, so nothing was paid. Open the order for what is due now.',
  },
  draft: EN_DRAFT,
  quote: EN_QUOTE,
  order: EN_ORDER,
  bench: EN_BENCH,
  timer: EN_TIMER,
  digest: EN_DIGEST,
  business: EN_BUSINESS,
  evening: EN_EVENING,
  week: EN_WEEK,
};
