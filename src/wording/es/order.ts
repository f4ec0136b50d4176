import { lines } from '../clip.ts';
import type { OrderWords } from '../words.ts';
import { fateSaid, partingSaid } from './parting.ts';

export const ES_ORDER: OrderWords = {
  placed: (order) => `Su pedido está hecho. Su número es ${order}.`,
  promised: (day) => `Se envía el ${day}.`,
  pay: (words, days, voice) =>
    days === 0 ? words : `${words} El pago vence en ${voice.count(days, { one: 'día', other: 'días' })}.`,
  askAddress: 'Una última cosa: escriba el nombre y la dirección para el paquete, todo en un mensaje.',
  yours: 'Sus pedidos:',
  heading: (order, state) => `Pedido ${order}: ${state}`,
  likely: (day) => `Tal como va, puede que salga ya el ${day}.`,
  late: (promised, now) => `Prometido para el ${promised}. Tal como está el banco ahora, saldría el ${now}.`,
  noDay: (promised) => `Prometido para el ${promised}. Tal como está el banco ahora, no hay día de envío.`,
  onHold: 'en espera',
  waitsForMoney: (money) => `espera el pago de ${money}`,
  held: (promised) => `Se prometió para el ${promised}. Mientras esté en espera no tiene día de envío.`,
  dayWithMoney: 'El trabajo empieza, y se fija el día de envío, al llegar el pago.',
  paidToday: (day) => `Pagado hoy, se envía el ${day}; el día de envío se fija al llegar el pago.`,
  slip: (promised, told) =>
    `Prometido para el ${promised}. Al comprador se le avisó del ${told}: falta que conteste si espera, cambia o cancela.`,
  slipYours: (promised, told) =>
    `Se prometió para el ${promised}, y se le avisó del ${told}. ¿Espera, cambia algo o cancela?`,
  step: (step, steps, doing) => `Paso ${step} de ${steps}: ${doing}`,
  next: (step, steps, next) => `Paso ${step} de ${steps}, lo siguiente: ${next}`,
  done: 'Todos los pasos hechos',
  gone: (time) => `Entregado en el correo: ${time}.`,
  tracking: (number) => `Número de seguimiento: ${number}`,
  noAddress: 'Todavía sin dirección.',
  address: 'Va a:',
  cancelAsked: 'Se pidió cancelarlo. El artesano aún no ha contestado.',
  fresh: (order, buyer) => `Nuevo pedido ${order} de ${buyer}`,
  offShelf: (heads) => `Ya en el estante, por empacar: ${heads}.`,
  addressOf: (order, buyer) => `Dirección para ${order}, ${buyer}:`,
  elsewhere: (place, priced) =>
    `CUIDADO: la dirección está en ${place}, el envío y el impuesto son para ${priced}. El comprador lo sabe y aún no ha dicho que sí.`,
  buyer: (buyer) => `Comprador: ${buyer}`,
  queue: (count, voice) =>
    `${voice.count(count, { one: 'pedido abierto', other: 'pedidos abiertos' })}, la promesa más próxima primero.`,
  emptyQueue: 'No hay pedidos abiertos.',
  wishes: (buyer, about) => `${buyer} desea algo que no está en el libro. ¿Puede hacerlo?\n${about}`,
  wishSent: (about) =>
    `He preguntado al artesano:\n${about}\nLe avisaré en cuanto haya respuesta. Su pedido queda guardado como está.`,
  granted: (said, extra) =>
    `El artesano dice que sí${said === '' ? '' : ` a ${said}`}${extra === null ? '.' : `, por ${extra} más por cabeza.`}`,
  denied: (said) => `El artesano no puede hacer ${said}. Su pedido queda guardado; elija otra cosa y siga.`,
  asks: (buyer, order) => (order === null ? `${buyer} pregunta:` : `${buyer} pregunta, pedido ${order}:`),
  drafting: 'Está preparando un pedido.',
  reply: (buyer) => `Escriba su respuesta. Su próximo mensaje le llega a ${buyer}.`,
  wantsOut: (buyer, order) => `${buyer} quiere cancelar el pedido ${order}, y ya se empezó a hacer.`,
  leaving: ({ parting, fate }, voice) =>
    lines(
      fateSaid(fate, voice),
      fate.scrapped === 0 ? null : 'Termínelas antes de dejarlo y van al estante; lo que se le dijo al comprador vale.',
      partingSaid(parting, voice),
    ),
  wantsOutHow: '¿Lo deja, o sigue haciéndolo? Su respuesta le llega en los dos casos.',
};
