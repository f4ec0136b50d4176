import type { Fate, Parting } from '../../domain/desk/parting.ts';
import type { WorkDone } from '../../domain/shop/business.ts';
import { percent } from '../percent.ts';
import type { Voice } from '../voice.ts';

/** Lo que queda en dinero de un pedido cancelado, y por qué regla; lo mismo para el comprador y el artesano. */
export function partingSaid(parting: Parting, voice: Voice): string {
  const { keeps, paid, back, owed } = parting;
  const sums = [
    paid === 0 ? 'No se ha pagado nada' : `Se han pagado ${voice.money(paid)}`,
    ...(back > 0 ? [`se devuelven ${voice.money(back)}`] : []),
    ...(owed > 0 ? [`quedan por pagar ${voice.money(owed)} por el trabajo`] : []),
    ...(back + owed > 0 ? [] : [keeps > 0 ? 'no se devuelve nada' : 'no se debe nada']),
  ];
  return `${ruleSaid(parting, voice)} ${voice.list(sums)}.`;
}

function ruleSaid({ rule, why, keeps }: Parting, voice: Voice): string {
  if (why === 'late') return 'El retraso no es del comprador, así que no se cobra nada.';
  if (keeps === 0) return 'Según la regla del taller no se cobra nada.';
  if (why === 'told')
    return `Como se dijo al pedir la cancelación, se cobran ${voice.money(keeps)}. El envío y el impuesto de venta no se cobran.`;
  const parts = rule.map(({ stage, kept }) => `${percent(kept, voice)} del precio de las cabezas ${STAGES[stage]}`);
  return `Según la regla del taller se cobra ${voice.list(parts)}: ${voice.money(keeps)}. El envío y el impuesto de venta no se cobran.`;
}

const STAGES: Readonly<Record<WorkDone, string>> = {
  waiting: 'sin empezar',
  cast: 'fundidas',
  painted: 'en pintura o más allá',
  packed: 'empacadas',
};

/** Qué pasa con las cabezas; nada si no se hizo ninguna. */
export function fateSaid({ shelved, scrapped }: Fate, voice: Voice): string | null {
  const heads = (count: number): string => voice.count(count, voice.terms.heads);
  const parts = [
    ...(shelved === 0 ? [] : [`${heads(shelved)} terminadas: al estante.`]),
    ...(scrapped === 0 ? [] : [`${heads(scrapped)} sin terminar: cuentan como chatarra.`]),
  ];
  return parts.length === 0 ? null : parts.join(' ');
}
