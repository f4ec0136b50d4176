import { headsOf } from '../../domain/order/spec.ts';
import { headsIn } from '../../domain/bench/session.ts';
import { capital } from '../clip.ts';
import { amountOf, itemName, putText } from '../names.ts';
import { workName } from '../work.ts';
import type { LabelWords } from '../words.ts';
import { ES_TERMS } from './terms.ts';

export const ES_LABELS: LabelWords = {
  words: {
    accept: 'Pedir esto',
    'add-line': 'Añadir otra cabeza',
    'all-good': 'Hecho, todo bien',
    'ask-maker': 'Preguntar al artesano',
    back: 'Atrás',
    bench: 'Banco',
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
    'refuse-cancel': 'Seguir haciéndolo',
    reply: 'Responder',
    reword: 'Tomar las palabras nuevas',
    'start-over': 'Empezar de nuevo',
    stock: 'Existencias',
    timers: 'Tiempos',
    undo: 'Deshacer',
    usual: 'Lo usual',
    'change-something': 'Cambiar algo',
  },
  usual: (heads, voice) => `Lo usual, ${voice.count(heads, ES_TERMS.heads)}`,
  way: ({ put }, voice) => `Que sea ${putText(put, voice)}`,
  sooner: ({ sooner }, voice) =>
    `${{ bare: 'Sin pintar', unguarded: 'Sin protectores', fewer: voice.count(headsOf(sooner.lines), ES_TERMS.heads) }[sooner.way]}: sale el ${voice.shortDay(sooner.ships)}`,
  grant: ({ cents }, voice) => (cents === 0 ? 'Puedo' : `Puedo, +${voice.money(cents)} cada una`),
  line: ({ number }) => `Línea ${number}`,
  'drop-line': ({ number }) => `Quitar la línea ${number}`,
  change: ({ ask }) => capital(ES_TERMS.asks[ask]),
  start: ({ work }, voice) => `${workName(voice, work)}: ${voice.number(headsIn(work))}`,
  session: ({ session }, voice) => `En marcha: ${workName(voice, session)}`,
  scrapped: ({ count }) => (count === 0 ? 'Ninguna mala' : count === 1 ? '1 mala' : `${count} malas`),
  'count-lot': ({ lot }) => `Contar ${lot}`,
  arrived: ({ item, count }, voice) => `Llegó: ${amountOf(item, count, voice)} ${itemName(voice, item)}`,
  again: ({ order }) => `Repetir ${order}`,
  order: ({ order }) => `Pedido ${order}`,
};
