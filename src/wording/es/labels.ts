import { headsOf } from '../../domain/order/spec.ts';
import { headsIn } from '../../domain/bench/session.ts';
import { capital } from '../clip.ts';
import { amountOf, itemName, putText } from '../names.ts';
import { lineName } from '../lineName.ts';
import { workName } from '../work.ts';
import type { Change } from '../../domain/desk/change.ts';
import type { ChangeWords } from '../eveningWords.ts';
import type { Voice } from '../voice.ts';
import type { LabelWords } from '../words.ts';
import { ES_BUSINESS } from './business.ts';
import { ES_TERMS } from './terms.ts';

export const ES_LABELS: LabelWords = {
  words: {
    apply: 'Sí, que sea así',
    wait: 'Puedo esperar',
    'fresh-mix': 'Mezcla nueva',
    accept: 'Pedir esto',
    'add-tracking': 'Añadir el número de seguimiento',
    'add-line': 'Añadir otra cabeza',
    'all-good': 'Hecho, todo bien',
    'ask-maker': 'Preguntar al artesano',
    'any-day': 'Sin día fijo',
    back: 'Atrás',
    bench: 'Banco',
    buy: 'Qué comprar',
    'cancel-order': 'Cancelar este pedido',
    cannot: 'No puedo',
    'cancel-yes': 'Sí, cancelarlo',
    'choose-each': 'Elegir cada pieza',
    done: 'Hecho',
    'done-change': 'Nada más que cambiar',
    export: 'Una copia de mis datos',
    'five-more': '5 minutos más',
    forget: 'Borrar mis datos',
    'forget-yes': 'Sí, bórrelos para siempre',
    'grant-cancel': 'Dejar que se cancele',
    help: 'Ayuda',
    'keep-data': 'Conservarlos',
    'keep-on': 'Seguir con él',
    'keep-order': 'Mantener el pedido',
    'my-orders': 'Mis pedidos',
    'new-order': 'Nuevo pedido',
    'no-tracking': 'Sin número de seguimiento',
    posted: 'Entregado en el correo',
    queue: 'Cola',
    readdress: 'Cambiar la dirección',
    'same-address': 'La misma dirección',
    'refuse-cancel': 'Seguir haciéndolo',
    reply: 'Responder',
    reword: 'Tomar las palabras nuevas',
    'start-over': 'Empezar de nuevo',
    stock: 'Existencias',
    timers: 'Tiempos',
    undo: 'Deshacer',
    usual: 'Lo usual',
    week: 'La semana',
    'change-something': 'Cambiar algo',
  },
  usual: (heads, voice) => `Lo usual, ${voice.count(heads, ES_TERMS.heads)}`,
  way: ({ put }, voice) => `Que sea ${putText(put, voice)}`,
  sooner: ({ sooner }, voice) =>
    `${{ rush: `Con prisa, ${voice.money(sooner.charge)} más`, bare: 'Sin pintar', unguarded: 'Sin antihierbas', fewer: voice.count(headsOf(sooner.lines), ES_TERMS.heads) }[sooner.way]}: sale el ${voice.shortDay(sooner.ships)}`,
  grant: ({ cents }, voice) => (cents === 0 ? 'Puedo' : `Puedo, +${voice.money(cents)} cada una`),
  line: ({ number }) => `Línea ${number}`,
  'drop-line': ({ number }) => `Quitar la línea ${number}`,
  change: ({ ask }) => capital(ES_TERMS.asks[ask]),
  start: ({ work }, voice) =>
    `${workName(voice, work)}: ${voice.number(headsIn(work))}${work.later ? ' (después)' : ''}`,
  finish: ({ session }, voice) => `Hecho: ${workName(voice, session)}`,
  session: ({ session }, voice) => `En marcha: ${workName(voice, session)}`,
  scrapped: ({ count }) => (count === 0 ? 'Ninguna mala' : count === 1 ? '1 mala' : `${count} malas`),
  'bad-of': ({ lot, count }) => `${lot}: ${count} malas`,
  lot: ({ lot }) => `Lote ${lot}`,
  propose: ({ change }, voice) => (PROPOSALS[change.do] as (facts: Change, voice: Voice) => string)(change, voice),
  delay: ({ day }, voice) => `Decir al comprador el ${voice.shortDay(day)}`,
  photos: ({ order, line, photos }) => `Fotos de ${order}, línea ${line} (${photos})`,
  'photo-of': ({ order, line }, voice) => `${order}: ${lineName(line, voice)}`,
  'pass-on': ({ order }) => `Al artesano: ${order}`,
  'bake-spares': ({ count }) => (count === 1 ? 'Hornear también la de más' : `Hornear también las ${count} de más`),
  'count-lot': ({ lot }) => `Contar ${lot}`,
  'stock-is': ({ item }, voice) => itemName(voice, item),
  bought: ({ item, count }, voice) => `Encargado: ${amountOf(item, count, voice)} ${itemName(voice, item)}`,
  pay: ({ order }) => `Dinero de ${order}`,
  'pay-here': ({ what, cents }, voice) =>
    `${{ whole: 'Pagar aquí', deposit: 'Pagar aquí el anticipo' }[what]}: ${voice.money(cents)}`,
  reship: ({ place, cents }, voice) => `Sí, a ${voice.place(place)}: ${voice.money(cents)}`,
  settle: ({ order, what, cents }, voice) =>
    `${{ whole: 'Pagado', back: 'Devuelto' }[what]}: ${order} ${voice.money(cents)}`,
  paid: ({ what, cents }, voice) =>
    `${{ whole: 'Pagado del todo', deposit: 'Anticipo pagado', back: 'Devuelto' }[what]}: ${voice.money(cents)}`,
  paper: ({ kind }) => capital(ES_BUSINESS.paper.names[kind]),
  arrived: ({ item, count }, voice) => `Llegó: ${amountOf(item, count, voice)} ${itemName(voice, item)}`,
  again: ({ order }) => `Repetir ${order}`,
  'handed-in': ({ order }) => `Entregado: ${order}`,
  order: ({ order }) => `Pedido ${order}`,
};

/** A change in a few words, to be looked at before it is made. */
const PROPOSALS: ChangeWords = {
  off: ({ day }, voice) => `Cerrar el ${voice.shortDay(day)}`,
  on: ({ day }, voice) => `Abrir el ${voice.shortDay(day)}`,
  extra: ({ day, from, to }, voice) => `${voice.shortDay(day)}, además ${from}-${to}`,
  hours: ({ day, from, to }, voice) => `${voice.shortDay(day)}, ${from}-${to}`,
  away: ({ day, from, to }, voice) => `${voice.shortDay(day)}, libre ${from}-${to}`,
  first: () => 'Ponerlo primero',
  hold: () => 'Dejarlo en espera',
  release: () => 'Que vuelva a su turno',
  remake: () => 'Todo malo: empezar de nuevo',
  shelve: () => 'Al estante',
  join: () => 'Juntar con los iguales',
  split: ({ heads }, voice) => `Apartar ${voice.count(heads, ES_TERMS.heads)}`,
};
