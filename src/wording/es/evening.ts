import type { Obstacle } from '../../domain/desk/lotChanges.ts';
import type { EveningWords, Threat } from '../eveningWords.ts';
import { amountOf, itemName } from '../names.ts';
import { lines } from '../clip.ts';
import { hourOn } from '../hourOn.ts';
import { lineName } from '../lineName.ts';
import { partOfDay } from '../partOfDay.ts';
import type { PlainWords } from '../words.ts';
import { ES_TERMS } from './terms.ts';

export const ES_EVENING: EveningWords = {
  closing: 'Cierre de hoy.',
  ovenOn: 'EL HORNO SIGUE ENCENDIDO. Saque la rejilla y apáguelo:',
  stillRuns: 'Sigue apuntado en marcha; tóquelo si ya está hecho:',
  overnight: 'Si empieza esto ahora, cura durante la noche:',
  closingCare: 'Horno apagado, crisol apagado. Después:',
  lot: (lot, order) => `Lote ${lot} del pedido ${order}`,
  history: 'HISTORIAL',
  offShelf: (heads) => `Del estante, ya hechas: ${heads}.`,
  step: (step, from, to) =>
    from === null ? `${step}: hecho ${to ?? ''}` : to === null ? `${step}: desde ${from}` : `${step}: ${from} a ${to}`,
  counted: (good, scrap) => `Buenas: ${good}. Malas: ${scrap}.`,
  would: {
    off: ({ day }, voice) => `Sin horas de banco el ${voice.day(day)}.`,
    on: ({ day }, voice) => `Las horas de banco de siempre el ${voice.day(day)}.`,
    extra: ({ day, from, to }, voice) =>
      `Horas de banco de más el ${voice.day(day)}, de ${hourOn(day, from, voice)} a ${hourOn(day, to, voice)}.`,
    hours: ({ day, from, to }, voice) =>
      `Horas de banco el ${voice.day(day)} de ${hourOn(day, from, voice)} a ${hourOn(day, to, voice)}, y ninguna otra.`,
    away: (part, voice) => `Sin horas de banco el ${voice.day(part.day)} ${partOfDay(part, voice, PART)}.`,
    first: ({ order }) => `El pedido ${order} va antes que todos los demás.`,
    hold: ({ order }) => `El pedido ${order} queda en espera: nadie trabaja en él hasta que se suelte.`,
    release: ({ order }) => `El pedido ${order} vuelve a su turno.`,
    remake: ({ lot }) => `El lote ${lot} es chatarra. Otras tantas cabezas empiezan de nuevo en la colada.`,
    shelve: ({ lot }) => `Las cabezas del lote ${lot} van al estante. Otras tantas empiezan de nuevo para el pedido.`,
    join: ({ lot }) => `Lo que en su pedido es igual que el lote ${lot} pasa a ser un solo lote.`,
    split: ({ lot, heads }, voice) =>
      `Del lote ${lot} se apartan ${voice.count(heads, voice.terms.heads)} como lote propio.`,
  },
  noEffect: 'No se mueve ninguna promesa ni ningún día de envío.',
  effects: 'LO QUE SE MUEVE',
  effect: (order, before, after) => `${order}: ${before ?? 'sin día'} → ${after ?? 'sin día'}`,
  late: (promised) => `(prometido para el ${promised})`,
  nothingYet: 'Todavía no se ha hecho nada.',
  buyerSaid: (quoted) => `Con palabras del comprador: ${quoted}`,
  inDanger: (order, buyer, { promised, ships, late, at }) =>
    `El pedido ${order} de ${buyer} está ${late ? 'retrasado' : 'en peligro'}: prometido para el ${promised}, y ${heads(ships, at)}.`,
  waitsOn: 'LO QUE ESPERA',
  handsOn: (orders, until) => `las manos están con ${orders} hasta el ${until}`,
  missing: (item, amount, due) =>
    `${item}: faltan ${amount}, ${due === null ? 'y no hay nada pedido' : `debían llegar el ${due} y no están`}`,
  ifOrdered: (time) => `el material pedido hoy estaría el ${time}`,
  helps: {
    first: (ships) => `Puesto primero, saldría el ${ships}.`,
    extra: (hours, ships) => `Con horas también el ${hours}, saldría el ${ships}.`,
    release: (ships) => `Soltado ahora, saldría el ${ships}.`,
    buy: 'Pida ya lo que falta («comprar»), o dé un día al comprador.',
    post: (by) => `Solo falta entregarlo, antes del ${by}.`,
    nothing: 'Ni su turno ni tres horas más en un día lo cambiarían: avise ya al comprador.',
  },
  hours: 'HORAS DE BANCO',
  closed: 'cerrado',
  hoursHow:
    'Toque un día para ver qué pasaría al cerrarlo o abrirlo. O escriba «libre viernes», «libre viernes por la noche» (una parte), «abierto viernes», «extra viernes 14:00-16:00» (más horas) u «horas viernes 17:00-20:00» (otras en su lugar).',
  coming: 'LO QUE VENCE',
  comes: {
    post: ({ orders, by }, voice) => `Cierre del correo, ${voice.list(orders)}: ${voice.clock(by)}`,
    unpaid: ({ order, buyer, day }, voice) => `Pago de ${order}, ${buyer}: ${voice.shortDay(day)}`,
    quote: ({ buyer, until }, voice) => `Termina el presupuesto de ${buyer}: ${voice.clock(until)}`,
    restock: ({ item, count, named, overdue }, voice) =>
      `Llega material, ${amountOf(item, count, voice)} ${itemName(voice, item)}: ${overdue > 0 ? `ATRASADO desde el ${voice.shortDay(named)}` : voice.shortDay(named)}`,
  },
  comesDanger: (order, { promised, ships, late, at }) =>
    `${late ? 'Con retraso' : 'Promesa en peligro'}, ${order}: ${promised}, ${at === 'hold' ? 'en espera' : ships === null ? 'sin día a la vista' : `va para el ${ships}`}`,
  more: (count) => `y ${count} más`,
  minutes: 'Minutos como preparación + cada cabeza; la colada cuenta cada vez que se llena el molde.',
  minutesRow: (step, file, learned, times, voice) =>
    `${step}: ${file}${learned === null ? '' : `, ahora ${learned}`} (medido ${voice.count(times, { one: 'vez', other: 'veces' })})`,
  scrap: (file, learned, heads, bad) =>
    `Malas: ${file}${learned === null ? '' : `, ahora ${learned}`} (${bad} de ${heads} coladas)`,
  missed: (share, missed, all) => `Tardes que no se trabajan: ${share} (${missed} de ${all})`,
};

/** Hacia dónde va una promesa rota. */
function heads(ships: string | null, at: Threat['at']): string {
  if (at === 'hold') return 'está en espera';
  if (ships === null) return 'tal como está el banco no tiene día de envío';
  return at === 'post'
    ? `está empacado: el próximo correo sale el ${ships}`
    : `tal como está el banco saldría el ${ships}`;
}

const PART = {
  on: (from: string) => `desde las ${from}`,
  until: (to: string) => `hasta las ${to}`,
  between: (from: string, to: string) => `de ${from} a ${to}`,
} as const;

const WHICH = {
  day: '¿Qué día? Escríbalo así: «libre viernes», «libre viernes desde las 20», «libre 2026-12-05» o «abierto viernes».',
  hours:
    '¿Qué día, de qué hora a qué hora? Escríbalo así: «extra viernes 13:00-15:00» u «horas 2026-12-05 17:00-20:00».',
  order: '¿Qué pedido? Escríbalo así: «primero K-1001», «pausa K-1001» o «sigue K-1001».',
  lot: '¿Qué lote? Escríbalo así: «rehacer K-1001-1», «estante K-1001-1» o «juntar K-1001-1»; el pedido muestra sus lotes.',
  split: '¿Qué lote, y cuántas cabezas de él? Escríbalo así: «partir K-1001-1 10».',
} as const;

/** What stands against a change of a lot. */
const OBSTACLE: Readonly<Record<Obstacle, (lot: string, step: string, of: number) => string>> = {
  'no-lot': (lot) => `No hay ningún lote ${lot} en el banco.`,
  running: (lot, step) => `${lot} está en marcha (${step}). Tóquelo hecho primero.`,
  waiting: (lot, step) => `${lot} espera (${step}). Eso tiene que acabar primero.`,
  'not-poured': (lot) => `Aún no se ha colado nada de ${lot}: no hay nada que rehacer.`,
  'not-made': (lot, step) => `${lot} no está terminado: sigue ${step}. Al estante solo van cabezas terminadas.`,
  packed: (lot) => `${lot} ya está empacado.`,
  'off-shelf': (lot) => `Las cabezas de ${lot} salieron del estante ya hechas; solo falta empacarlas.`,
  'part-baked': (lot) => `Una parte de ${lot} ya pasó por el horno y el resto no. Hornee primero el resto.`,
  'too-many': (lot, _step, of) => `${lot} tiene ${of} cabezas para su pedido: aparte al menos una, y menos que esas.`,
  'moved-on': (lot) => `${lot} ya no tiene las mismas cabezas. Mírelo otra vez: «lote ${lot}».`,
  alone: (lot) => `Nada más de su pedido es igual que ${lot} y espera el mismo paso.`,
};

/** Short answers around an evening. */
export const ES_EVENING_PLAIN = {
  'which-work': () => 'Puede ser más de uno. ¿Cuál?',
  'nothing-runs': () => 'No hay nada en marcha en el banco.',
  'which-change': ({ about }) => WHICH[about],
  'no-change': ({ change, why, step }) =>
    'day' in change
      ? 'Eso no cambia nada: el día ya pasó, o sus horas ya son esas.'
      : 'order' in change
        ? `Eso no cambia nada: no hay ningún pedido abierto ${change.order}, o ya está así.`
        : OBSTACLE[why ?? 'moved-on'](
            change.lot,
            step === null ? '' : ES_TERMS.steps[step],
            'of' in change ? change.of : 0,
          ),
  'unpaid-due': ({ rows }, voice) =>
    lines(
      'Sin pagar en el día debido:',
      ...rows.map(
        ({ order, buyer, due, dueOn }) => `- ${order}, ${buyer}: ${voice.money(due)}, para el ${voice.shortDay(dueOn)}`,
      ),
    ),
  'hand-in': ({ orders, by }, voice) =>
    `${voice.list(orders)}: hay que entregarlo en el correo antes del ${voice.clock(by)}. Toque cuando esté hecho.`,
  'restock-day': ({ deliveries }, voice) =>
    lines(
      deliveries.every(({ overdue }) => overdue > 0)
        ? 'Con retraso. Toque lo que haya llegado:'
        : 'Hoy debe llegar. Toque lo que haya llegado:',
      ...deliveries.map(
        ({ item, count, named, overdue }) =>
          `- ${amountOf(item, count, voice)} ${itemName(voice, item)}${overdue > 0 ? `, con retraso desde el ${voice.shortDay(named)}` : ''}`,
      ),
    ),
  'fresh-mix': ({ guards, left, until }, voice) =>
    `Mezcla nueva: como mucho ${voice.count(guards, { one: 'antihierbas', other: 'antihierbas' })}, hasta el ${voice.clock(until)}. ${left === 0 ? 'Es la última: después no queda ninguno.' : `Después ${left === 1 ? 'queda' : 'quedan'} ${voice.number(left)} por poner.`}`,
  'quote-ends': ({ until }, voice) =>
    `Su presupuesto vale hasta el ${voice.time(until)}. Después hay que calcular de nuevo el precio y el día. Todavía no se ha pedido nada.`,
  'order-photo': ({ order, buyer, line, said }, voice) =>
    lines(
      `Foto de ${buyer} para ${order}: ${lineName(line, voice)}`,
      said === '' ? null : ES_EVENING.buyerSaid(voice.terms.quote(said)),
    ),
  'buyer-photo': ({ order, number, photos, line }, voice) =>
    `Foto ${number} de ${photos} para ${order}: ${lineName(line, voice)}`,
  begun: ({ order, ships }, voice) =>
    `El pedido ${order} tiene ya su turno en el banco. Se envía el ${voice.day(ships)}.`,
  'delay-told': ({ order, ships }, voice) =>
    `Al comprador de ${order} se le dice el ${voice.day(ships)}, y puede esperar, preguntarle a usted o cancelar.`,
  'waits-for-money': ({ order }) =>
    `${order} espera su dinero, así que ya está fuera del banco. Cuando llegue el dinero tomará su turno; póngalo en pausa entonces.`,
  'not-packed': ({ order }) =>
    `${order} todavía no está empaquetado, así que ningún paquete suyo puede haber salido. Escriba el número de seguimiento cuando lo entregue.`,
  'delay-over': ({ order }) => `${order} ya no está en peligro, así que a su comprador no se le dice nada.`,
  'delay-moved': ({ order, ships }, voice) =>
    ships === null
      ? `Ese día ya no vale, y todavía no se sabe otro para ${order}. A su comprador no se le dice nada.`
      : `Ese día ya no vale para ${order}: ahora es el ${voice.day(ships)}. A su comprador todavía no se le dice nada.`,
  delayed: ({ order, promised, ships }, voice) =>
    `El pedido ${order} va a retrasarse: estaba prometido para el ${voice.day(promised)} y saldrá el ${voice.day(ships)}. Puede esperar, pedir al artesano que cambie algo, o cancelarlo.`,
  waits: ({ order, ships }, voice) => `Gracias. El pedido ${order} queda prometido para el ${voice.day(ships)}.`,
  'buyer-waits': ({ order, ships, buyer }, voice) =>
    `${buyer} espera el pedido ${order}: ahora está prometido para el ${voice.day(ships)}.`,
} satisfies Partial<PlainWords>;
