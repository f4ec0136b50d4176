import { capital, lines } from '../clip.ts';
import { amountOf, headName, itemName } from '../names.ts';
import { sampleLine } from '../sample.ts';
import { fateSaid, partingSaid } from './parting.ts';
import type { Voice } from '../voice.ts';
import type { Ailment, Around } from '../../domain/desk/around.ts';
import type { PlainWords } from '../words.ts';
import { ES_TERMS } from './terms.ts';

/** What the maker is told. */
export const ES_MAKER = {
  'maker-help': () =>
    'banco: qué se puede empezar y qué está en marcha\ncola: pedidos abiertos\ntiempos: horno, pegamento y curado, y lo demás que vence\nexistencias: qué hay y qué está por llegar\nresumen: otra vez la lista de la mañana\nsemana: el plan de los siete días, en un dibujo\ndeshacer: quita el último toque en el banco\nhealth: cómo va el programa mismo\ngarage 55 F: la temperatura del garaje\nreckon 24 football 3/8: qué hace falta para tantas cabezas\n\nEn el banco y para sus horas:\nhecho, 3 malas, empezar, 5 más: lo que hacen los botones del banco\nhoras: sus días, se cierran y abren con un toque; libre viernes, abierto viernes, extra viernes 13:00-15:00, horas viernes 17:00-20:00\nprimero K-1001, pausa K-1001, sigue K-1001: qué va antes\nlote K-1001-1: un lote y su historial; partir K-1001-1 10, juntar, rehacer o estante K-1001-1 lo cambian\nminutos: lo que enseñan su reloj y sus cuentas\ncierre: qué mirar antes de irse\n\nExistencias y dinero:\nrecibí 200 anzuelos 4/0 60 grados, conté 85 antihierbas negro, pedí 500 bolsas para 2026-12-09: cambian las existencias\ncomprar, diario: qué encargar, qué ha cambiado\npagado K-1001 20, reembolso K-1001 5 y el motivo, precio K-1001 -5 y el motivo, deudas: el dinero\ncosto K-1001, mes, impuesto, libros 2026-11: cómo va\nalbarán, hoja o recibo K-1001, precios: papeles\nseguimiento K-1001 LX 1234: el número de un paquete, también después\n\nEscriba el número de un pedido para verlo, también si ya salió. «nuevo pedido» pide para usted.',
  'for-maker-only': () => 'Esa palabra es para el artesano. Escriba «ayuda» para ver qué puedo hacer por usted.',
  health: ({ around }, voice) => (around === null ? 'El programa está en marcha.' : healthLines(around, voice)),
  'reply-sent': ({ buyer }) => `Enviado a ${buyer}.`,
  'buyer-cancelled': ({ buyer, parting, fate }, voice) =>
    lines(
      `El pedido ${parting.order} de ${buyer} está cancelado. Lo apartado para él y no usado vuelve a estar libre.`,
      fateSaid(fate, voice),
      partingSaid(parting, voice),
    ),
  'too-cold': ({ below }, voice) =>
    `Hace demasiado frío para pegar: por debajo de ${voice.temperature(below)} el epoxi puede no curar nunca. Caliente el garaje y empiece otra vez. No se ha empezado nada.`,
  'ready-to-post': ({ order }) => `El pedido ${order} está empacado. Toque abajo cuando lo entregue en el correo.`,
  undone: ({ what }) => `Deshecho: ${actName(what)}.`,
  'nothing-to-undo': () => 'No hay nada que deshacer, o ya hay trabajo posterior encima.',
  'undo-old': ({ what, at }, voice) =>
    `Lo último anotado fue: ${actName(what)}, ${voice.clock(at)}. Toque «Deshacer» para deshacer eso.`,
  'goes-on': ({ order }) => `${order} sigue en marcha, y su comprador ya lo sabe.`,
  'put-off': ({ timer, minutes }, voice) =>
    `${capital(ES_TERMS.timers[timer.kind])}: ${voice.duration(minutes)} más. Le aviso el ${voice.clock(timer.dueAt)}.`,
  arrived: ({ item, count, onHand }, voice) =>
    `Guardado: ${amountOf(item, count, voice)} ${itemName(voice, item)}. Ahora hay ${amountOf(item, onHand, voice)}.`,
  'oven-at': ({ celsius, hold, wanted, verdict }, voice) =>
    `A ${voice.temperature(celsius)} haría falta un horneado de unos ${voice.duration(wanted)} para valer lo que ${voice.duration(hold)} a ${voice.temperature(voice.shop.oven.celsius)}. ${
      {
        short: `Ahí ${voice.duration(hold)} se quedan cortos.`,
        enough: `Ahí bastan ${voice.duration(hold)}.`,
        long: `Ahí ${voice.duration(hold)} pasan la pintura de horno.`,
      }[verdict]
    } Es solo un aviso: no salga del margen de la ficha del polvo.`,
  'which-oven': (_say, voice) =>
    `¿A qué temperatura está de verdad el horno? Escríbalo así: «oven ${voice.temperature(voice.shop.oven.celsius)}».`,
  'maker-unclear': () => 'No lo entendí, y no ha cambiado nada. «ayuda» dice qué puede escribir.',
  'which-temperature': (_say, voice) =>
    `¿A qué temperatura está el garaje? Escríbalo así: «garage ${voice.temperature(voice.shop.garageCelsius)}».`,
  'which-head': (_say, voice) =>
    `¿Qué cabeza? Escriba «reckon» y la cabeza, por ejemplo «reckon ${sampleName(voice)}».`,
  'ask-tracking': ({ order }) => `Escriba el número de seguimiento de ${order}, o toque «Sin número de seguimiento».`,
  'ask-tracking-after': ({ order }) => `Escriba el número de seguimiento de ${order}; su comprador lo sabrá.`,
  'tracking-kept': ({ order }) => `El número de seguimiento de ${order} queda anotado, y su comprador ya lo sabe.`,
  posted: ({ order }) => `El pedido ${order} ya no está en el banco. El comprador lo sabe.`,
} satisfies Partial<PlainWords>;

const AILMENTS: Readonly<Record<Ailment, string>> = {
  'no-poll': 'La plataforma del chat no contesta. Mire si este equipo tiene conexión.',
  'letters-wait': 'Los mensajes no salen. Mire si este equipo tiene conexión.',
  undelivered: 'Algunos mensajes no se pudieron entregar; puede que sus lectores hayan bloqueado el bot.',
  'old-backup': 'La última copia de seguridad tiene más de dos días. El registro dice qué lo impide.',
};

function healthLines({ health, ailments }: Healthy, voice: Voice): string {
  const at = (instant: number | null): string => (instant === null ? 'todavía no' : voice.time(instant));
  return lines(
    ailments.length === 0 ? 'Todo va bien.' : ailments.map((ailment) => AILMENTS[ailment]).join('\n'),
    `Versión ${health.version}, en marcha desde el ${voice.time(health.startedAt)}`,
    `Última respuesta de la plataforma del chat: ${at(health.lastPoll)}`,
    `Mensajes que esperan: ${health.waiting}; sin entregar esta semana: ${health.undelivered}`,
    `Último cambio guardado en el libro: ${at(health.lastWrite)}`,
    `Última copia de seguridad enviada: ${at(health.lastBackup)}`,
  );
}

type Healthy = NonNullable<Around['health']>;

/** An act at the bench by the name it is remembered under: `start/pour`, `done/bake`. */
function actName(what: string): string {
  const [act, step = ''] = what.split('/');
  const name = (ES_TERMS.steps as Readonly<Record<string, string>>)[step] ?? step;
  return act === 'start' ? `el comienzo de «${name}»` : act === 'done' ? `«${name}» hecho` : what;
}

function sampleName(voice: Voice): string {
  const line = sampleLine(voice.shop);
  return line === undefined ? '' : `${line.quantity} ${headName(voice, line.spec)}`;
}
