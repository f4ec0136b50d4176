import { decimal } from '../../domain/craft/money.ts';
import type { Balance } from '../../domain/quote/payment.ts';
import { capital, lines } from '../clip.ts';
import { amountOf, itemName } from '../names.ts';
import { periodsFor } from '../periods.ts';
import type { Voice } from '../voice.ts';
import type { PlainWords } from '../words.ts';
import { ES_BUSINESS } from './business.ts';

const openSaid = (balance: Balance, voice: Voice): string =>
  balance.due > 0
    ? ` Falta: ${voice.money(balance.due)}.`
    : balance.over > 0
      ? ` Por devolver: ${voice.money(balance.over)}.`
      : ' No queda nada abierto.';

/** Lo que se dice en una o dos frases de existencias y dinero. */
export const ES_MONEY = {
  'stock-changed': ({ verb, item, count, onHand, day, short }, voice) => {
    const [amount, name] = [amountOf(item, count, voice), itemName(voice, item)];
    const done = {
      got: `Guardado: ${amount} ${name}.`,
      count: `Contado: ${name}.`,
      ordered: `Encargado: ${amount} ${name}, llega ${day === null ? 'pronto' : `el ${voice.day(day)}`}.`,
      lost: `Quitado: ${amount} ${name}.`,
      found: `Añadido: ${amount} ${name}.`,
    }[verb];
    const missing = short === 0 ? null : `Los pedidos aceptados necesitan ${amountOf(item, short, voice)} más.`;
    return lines(`${done} Ahora hay ${amountOf(item, onHand, voice)}.`, missing);
  },
  'which-stock': ({ named, items }, voice) =>
    `«${named}» vale para ${voice.count(items.length, { one: 'artículo', other: 'artículos' })}. Toque el que quiere decir; todavía no ha cambiado nada.`,
  'stock-unknown': ({ named }) =>
    `No conozco ningún artículo llamado «${named}», así que no ha cambiado nada. Dígalo como la lista de «existencias», por ejemplo «recibí 200 anzuelos 4/0 de 60 grados» o «conté 85 antihierbas negro».`,
  'whole-pieces': ({ item }, voice) =>
    `De ${itemName(voice, item)} se cuentan piezas enteras, así que no ha cambiado nada. Escríbalo otra vez con un número entero.`,
  'not-so-many': ({ item, count, onHand }, voice) =>
    `No pueden faltar ${amountOf(item, count, voice)} ${itemName(voice, item)}: según el libro hay ${amountOf(item, onHand, voice)}. No ha cambiado nada. ¿Quería decir otro número? Si el libro tiene de menos, cuente lo que queda: «conté ${itemName(voice, item)}» y el número.`,
  'how-much-stock': ({ verb, item, count }, voice) =>
    `${{ got: '¿Qué llegó y cuánto?', count: '¿Qué contó y cuánto hay?', ordered: '¿Qué encargó y cuánto?', lost: '¿Qué falta y cuánto?', found: '¿Qué apareció y cuánto?' }[verb]} Escríbalo con el número, por ejemplo «${{ got: 'recibí', count: 'conté', ordered: 'encargué', lost: 'perdí', found: 'encontré' }[verb]} ${amountOf(item, count, voice)} ${itemName(voice, item)}». Todavía no ha cambiado nada.`,
  'no-excise': () =>
    'El archivo del taller no nombra el impuesto especial. Si fabrica y vende aparejos en Estados Unidos, pregunte a un asesor fiscal si le toca 26 U.S.C. §4161(a); luego ponga excise.share en 100, 75 o 60 y aquí estará la hoja de cálculo.',
  paid: ({ order, kind, cents, tax, balance, begins }, voice) => {
    const done = {
      paid: `Anotado: ${order} pagó ${voice.money(cents)}.`,
      refund: `Anotado: devueltos ${voice.money(cents)} de ${order}.`,
      adjust: `El precio de ${order} es ahora ${voice.money(balance.asked)}: ${voice.money(cents - tax)} en las cabezas${tax === 0 ? '' : ` y con ello ${voice.money(tax)} en el impuesto de venta`}.`,
    }[kind];
    return `${done}${openSaid(balance, voice)}${begins ? ' El banco puede empezarlo.' : ''}`;
  },
  'order-moved': ({ order, buyer, balance }, voice) =>
    `${order.id} de ${buyer} va ahora a ${voice.place(order.shipTo)}, por ${voice.money(balance.asked)} en total.${openSaid(balance, voice)}`,
  'why-then': ({ order, kind }) =>
    `¿Cuál es el motivo? Se le dice al comprador. Escriba «${{ refund: 'reembolso', adjust: 'precio' }[kind]} ${order}», la cantidad y el motivo. No ha cambiado nada.`,
  'not-paid': ({ order, why, balance, mostOff }, voice) =>
    ({
      'no-amount': `Eso no es una cantidad. Escríbala como «paid ${order} 20» o «price ${order} -5 pintura fina». No ha cambiado nada.`,
      'paid-already': `De ${order} no falta nada, así que no ha cambiado nada. Si el precio subió, escriba antes «price ${order} 5 y el motivo».`,
      'more-than-due': `De ${order} solo faltan ${voice.money(balance.due)}, así que no ha cambiado nada. Si el precio subió, escriba antes «price ${order} 5 y el motivo».`,
      'more-than-kept': `De ${order} usted tiene ${voice.money(balance.kept)}, y no puede devolverse más. No ha cambiado nada.`,
      'below-nothing': `Del precio de ${order} pueden quitarse ${voice.money(mostOff)} como mucho: sus cabezas no pueden costar menos que nada. No ha cambiado nada.`,
    })[why],
  'payment-in': ({ order, cents, due }, voice) =>
    due === 0
      ? `Llegaron sus ${voice.money(cents)} del pedido ${order}. Está pagado del todo, gracias.`
      : `Llegaron sus ${voice.money(cents)} del pedido ${order}, gracias. Falta: ${voice.money(due)}.`,
  invoice: ({ order, cents }, voice) =>
    `Por pagar del pedido ${order.id}: ${voice.money(cents)}. Ahora mismo no puedo cobrar en el chat; pregunte al artesano cómo pagar.`,
  'paid-here': ({ order, buyer, cents, balance, begins }, voice) => {
    const { due, over } = balance;
    const open =
      over > 0
        ? `Por devolver: ${voice.money(over)}.`
        : due > 0
          ? `Falta: ${voice.money(due)}.`
          : 'No queda nada pendiente.';
    return `${buyer} ha pagado ${voice.money(cents)} de ${order} aquí en el chat. ${open}${begins ? ' El banco ya puede empezarlo.' : ''}`;
  },
  'payment-astray': ({ order, buyer, cents, currency, charge }) =>
    `${buyer} ha pagado ${decimal(cents, currency)} ${currency} en el chat por el pedido ${order}, que está cerrado o no está aquí. No pude anotarlo en ningún pedido: busque el pago ${charge} en su proveedor de pagos y devuélvalo allí si no se debe.`,
  refunded: ({ order, cents, why }, voice) =>
    `El artesano ha devuelto ${voice.money(cents)} del pedido ${order}${why === '' ? '' : `: «${why}»`}.`,
  'price-changed': ({ order, cents, tax, why, asked }, voice) =>
    `El artesano ha ${cents < 0 ? 'quitado' : 'sumado'} ${voice.money(Math.abs(cents))} ${cents < 0 ? 'del' : 'al'} precio del pedido ${order}${tax === 0 ? '' : `, con ${voice.money(Math.abs(tax))} de impuesto de venta`}${why === '' ? '' : `: «${why}»`}. Ahora es ${voice.money(asked)}.`,
  paper: ({ kind, order }) =>
    `${capital(ES_BUSINESS.paper.names[kind])}${order === null ? '' : ` del pedido ${order.id}`}`,
  books: ({ kind, from, to, rows }, voice) =>
    `${capital(ES_BUSINESS.books[kind])}, del ${voice.date(from)} al ${voice.date(to)}: ${voice.count(rows, { one: 'fila', other: 'filas' })}`,
  'no-receipt': ({ order }) =>
    `Todavía no hay recibo${order === null ? '' : ` de ${order}`}: se escribe cuando se ha pagado algo. Hasta entonces el pedido mismo dice lo que cuesta.`,
  'no-slip': ({ order }) => `${order} está cancelado: no se envía nada de él, así que no hay albarán.`,
  'which-order': ({ word }) => `¿Qué pedido? Escriba «${word} K-1001» con su número.`,
  'no-such-period': ({ word, said, today }) =>
    `No conozco el periodo «${said}», así que no se ha calculado nada. Escriba ${periodsFor(
      { month: 'mes', tax: 'impuesto', books: 'libros' }[word],
      today,
    )
      .map((period) => `«${period}»`)
      .join(' o ')}.`,
} satisfies Partial<PlainWords>;
