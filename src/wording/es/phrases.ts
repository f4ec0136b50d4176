import type { Phrases } from '../words.ts';
import { ES_BENCH, ES_DIGEST, ES_TIMER } from './bench.ts';
import { ES_BUSINESS } from './business.ts';
import { ES_BUYER } from './buyer.ts';
import { ES_DRAFT, ES_QUOTE } from './draft.ts';
import { ES_EVENING, ES_EVENING_PLAIN } from './evening.ts';
import { ES_FINDINGS } from './findings.ts';
import { ES_LABELS } from './labels.ts';
import { ES_MAKER } from './maker.ts';
import { ES_MONEY } from './money.ts';
import { ES_ORDER } from './order.ts';
import { ES_WEEK } from './week.ts';

/** Everything that is said in Spanish. */
export const ES: Phrases = {
  plain: { ...ES_BUYER, ...ES_MAKER, ...ES_MONEY, ...ES_EVENING_PLAIN },
  findings: ES_FINDINGS,
  labels: ES_LABELS,
  toasts: {
    done: 'Hecho',
    stale: 'Esto ha cambiado mientras tanto. Aquí está como queda ahora.',
    saved: 'Guardado',
    'not-yours': 'No tiene ningún pedido así.',
    unreadable: 'No sé leer ese botón. Use el mensaje más reciente, por favor.',
    already: 'Eso ya está hecho.',
    'not-payable': 'Lo que se debe ha cambiado y no se ha pagado nada. Abra el pedido para ver lo que falta ahora.',
  },
  draft: ES_DRAFT,
  quote: ES_QUOTE,
  order: ES_ORDER,
  bench: ES_BENCH,
  timer: ES_TIMER,
  digest: ES_DIGEST,
  business: ES_BUSINESS,
  evening: ES_EVENING,
  week: ES_WEEK,
};
