import type { Phrases } from '../words.ts';
import { ES_BENCH, ES_DIGEST, ES_TIMER } from './bench.ts';
import { ES_BUYER } from './buyer.ts';
import { ES_DRAFT, ES_QUOTE } from './draft.ts';
import { ES_FINDINGS } from './findings.ts';
import { ES_LABELS } from './labels.ts';
import { ES_MAKER } from './maker.ts';
import { ES_ORDER } from './order.ts';

/** Everything that is said in Spanish. */
export const ES: Phrases = {
  plain: { ...ES_BUYER, ...ES_MAKER },
  findings: ES_FINDINGS,
  labels: ES_LABELS,
  toasts: {
    done: 'Hecho',
    stale: 'Esto ha cambiado mientras tanto. Aquí está como queda ahora.',
    saved: 'Guardado',
    'not-yours': 'No tiene ningún pedido así.',
    unreadable: 'No sé leer ese botón. Use el mensaje más reciente, por favor.',
    already: 'Eso ya está hecho.',
  },
  draft: ES_DRAFT,
  quote: ES_QUOTE,
  order: ES_ORDER,
  bench: ES_BENCH,
  timer: ES_TIMER,
  digest: ES_DIGEST,
};
