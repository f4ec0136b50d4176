import { capital, lines } from '../clip.ts';
import { lineName } from '../lineName.ts';
import { partName } from '../names.ts';
import { partingSaid } from './parting.ts';
import { ES_TERMS } from './terms.ts';
import type { PlainWords, ThingWords } from '../words.ts';

/** What a buyer is told. */
export const ES_BUYER = {
  welcome: (_say, { shop, own }) =>
    `Hola, este es el bot de pedidos de ${shop.name}. ${own(shop.texts.greeting)}\n\nSe tarda unos dos minutos. Diga lo que quiere con sus propias palabras, o conteste con los botones. No se pide nada hasta que toque «Pedir esto».\n\nSoy un programa. Para hablar con quien hace las cabezas, escriba «hablar con una persona» en cualquier momento; «ayuda» dice qué más sé hacer.`,
  'started-over': () => 'Todo borrado. No se pidió nada.',
  stale: () => 'Ese botón es de un pedido ya terminado o borrado. No ha cambiado nada.',
  'fitting-answer': ({ thing, kept }) => (kept ? 'Foto guardada con esta cabeza. El artesano la verá.' : THINGS[thing]),
  'photos-full': ({ most }, voice) =>
    `Con esta cabeza ya se ${most === 1 ? 'guarda' : 'guardan'} ${voice.count(most, { one: 'foto', other: 'fotos' })}, y no caben más. Describa con palabras lo que el artesano deba saber.`,
  'photo-of-which': () => '¿Para qué cabezas es la foto? Tóquelas y el artesano la verá.',
  'photo-kept': ({ order, line, photos }, voice) =>
    photos === 1
      ? `Foto guardada con ${order}: ${lineName(line, voice)}. El artesano la ve.`
      : `${voice.number(photos)} fotos guardadas con ${order}: ${lineName(line, voice)}. El artesano las ve.`,
  'pass-on': ({ said, orders }, { terms }) =>
    lines(
      `Eso no sé contestarlo yo, pero el artesano sí: ${terms.quote(said)}`,
      orders === 1
        ? 'Toque para pasárselo. Si quiere otras cabezas, escríbalas sin más.'
        : 'Toque el pedido del que se trata para pasárselo. Si quiere otras cabezas, escríbalas sin más.',
    ),
  help: (_say, { shop }) =>
    `Escriba lo que quiere en un mensaje, por ejemplo estilo, peso, color y número de cabezas, o toque «Nuevo pedido».\n\nEstas palabras sirven siempre: atrás, cancelar, empezar de nuevo, mis pedidos, hablar con una persona, privacidad, idioma.\n\nEscriba el número de un pedido para ver cómo va. ${shop.name} es una sola persona, así que una respuesta puede tardar hasta la noche.`,
  privacy: (_say, { shop }) =>
    `Qué guarda ${shop.name}: el número de este chat y su nombre en él, sus pedidos con sus palabras y fotos, sus preguntas, y su dirección hasta un tiempo después de enviar el paquete.\n\nPara qué: hacer sus cabezas, enviarlas, contestarle y llevar los libros que pide la ley. No se usa para nada más y no se da a nadie.\n\nEstá cifrado en la máquina del propio artesano. Puede recibir una copia o hacer que se borre: toque abajo, o escriba «mis datos» o «borrar mis datos». Para lo demás, escriba «hablar con una persona».`,
  'yes-to-which': () =>
    '¿Sí al pedido o al artesano? Aún no se ha pedido nada: toque “Pedir esto” para pedirlo tal como está, o “Preguntar al artesano” para escribirle.',
  export: () =>
    'Esto es todo lo que se guarda de usted aquí, en un archivo que leen los programas (JSON). Los pedidos terminados están en él mientras se conservan.',
  'export-lately': () =>
    'Ya recibió una copia en la última hora; está más arriba en este chat. Pídala otra vez más tarde.',
  'forget-sure': ({ orders }, voice) =>
    lines(
      'Borrar lo que se guarda de usted: su nombre, su dirección, sus preguntas, lo que había empezado y lo que le gusta. No se puede deshacer.',
      orders.length === 0
        ? null
        : `${voice.list(orders)} se hará y se enviará de todos modos; lo que hace falta para ello se borra cuando se haya enviado. Para parar un pedido, cancélelo antes.`,
      'El artesano tiene que conservar qué se vendió, a qué estado y por cuánto, sin su nombre.',
    ),
  'forget-later': ({ orders }, voice) =>
    `Borrado, salvo lo que hace falta para hacer y enviar ${voice.list(orders)}; eso se borra cuando se haya enviado. Las copias de seguridad desaparecen en dos semanas.`,
  forgotten: () =>
    'Borrado. Las copias de seguridad desaparecen en dos semanas. Lo que hay en este chat puede borrarlo usted. Si vuelve a escribir, empezamos como si no nos conociéramos.',
  'too-many-open': ({ most }, voice) =>
    `Usted tiene ${voice.count(most, { one: 'pedido abierto', other: 'pedidos abiertos' })}, y aquí una persona no puede tener más a la vez. Este queda guardado; pídalo cuando se haya enviado otro, o pregunte al artesano.`,
  'too-many-questions': ({ most }, voice) =>
    `Ya esperan respuesta del artesano ${voice.count(most, { one: 'pregunta suya', other: 'preguntas suyas' })}, así que esta no se ha enviado. Las respuestas llegan aquí; puede pasar una tarde. Puede seguir pidiendo y viendo sus pedidos.`,
  'too-many-lines': ({ over, most }, voice) =>
    `Un pedido puede tener hasta ${voice.count(most, { one: 'línea', other: 'líneas' })}. Se ${over === 1 ? 'quedó' : 'quedaron'} fuera ${voice.count(over, { one: 'línea', other: 'líneas' })}; haga con ellas un segundo pedido, o pregunte al artesano.`,
  edited: ({ text }, { terms }) =>
    `Editó un mensaje. Me guío por lo que se dijo primero, así que no ha cambiado nada. Si ${terms.quote(text)} debe contar, envíelo como mensaje nuevo.`,
  'already-accepted': ({ order }) => `Eso ya está pedido, como ${order}. No se pidió nada dos veces.`,
  'quote-over': () =>
    'Ese precio y ese día ya no valen: el plazo pasó, o el banco se llenó mientras tanto. Aquí va de nuevo. Todavía no se ha pedido nada.',
  'address-kept': ({ order }) =>
    `El paquete de ${order.id} va a:\n${order.address ?? ''}\n\nSi está bien, ya no hay que hacer nada más.`,
  'address-elsewhere': ({ order, place, moved }, voice) => {
    const { shipTo, money } = order;
    const differs = `La dirección de ${order.id} está en ${voice.place(place)}, y el precio es para ${voice.place(shipTo)}.`;
    const kept = `La dirección queda guardada:\n${order.address ?? ''}`;
    if (moved === null)
      return `${differs} Lo que cuesta a ${voice.place(place)}, y si puede enviarse, lo dice el artesano: pregúntele, o cambie la dirección.\n\n${kept}`;
    const part = (name: string, was: number, will: number): string =>
      `${name} ${voice.money(was)} → ${voice.money(will)}`;
    return `${differs} A ${voice.place(place)}: ${voice.list([
      part('envío', money.postage.cents, moved.money.postage.cents),
      part('impuesto de venta', money.tax, moved.money.tax),
      part('total', money.total, moved.money.total),
    ])}. Toque sí si está bien, o cambie la dirección.\n\n${kept}`;
  },
  reshipped: ({ order, balance: { asked, kept, due, over } }, voice) => {
    const moved = `El pedido ${order.id} va ahora a ${voice.place(order.shipTo)}, por ${voice.money(asked)} en total.`;
    if (over > 0) return `${moved} Usted pagó ${voice.money(kept)}, así que se le devuelven ${voice.money(over)}.`;
    return kept > 0 && due > 0
      ? `${moved} Usted pagó ${voice.money(kept)}, así que faltan ${voice.money(due)}.`
      : `${moved} Ya no hay que hacer nada más.`;
  },
  'ask-address': ({ order, before }) =>
    `Escriba el nombre y la dirección para ${order}, todo en un mensaje: nombre, calle, ciudad, estado y código postal.${before === null ? '' : ' Ocupa el lugar de la anterior.'}`,
  'no-orders': () => 'No tiene pedidos abiertos.',
  'no-such-order': ({ said }) => `No tiene ningún pedido abierto ${said}. Los ya enviados no aparecen aquí.`,
  'cancel-sure': ({ parting, asks }, voice) =>
    lines(
      `¿Cancelar el pedido ${parting.order}? ${partingSaid(parting, voice)}`,
      asks ? 'Ya se está haciendo, así que el artesano decide si puede pararse.' : null,
    ),
  cancelled: ({ parting }, voice) =>
    lines(
      `El pedido ${parting.order} está cancelado y no se hace nada más de él. ${partingSaid(parting, voice)}`,
      parting.owed === 0 ? null : voice.own(voice.shop.payment.words),
    ),
  'cancel-asked': ({ parting }, voice) =>
    `Las cabezas de ${parting.order} ya se están haciendo, así que decide el artesano. Se lo he preguntado, y la respuesta llega aquí. Si se deja: ${partingSaid(parting, voice)}`,
  'cancel-refused': ({ order }) =>
    `El artesano sigue haciendo el pedido ${order}: ya está demasiado avanzado para parar. Escriba «hablar con una persona» para tratarlo.`,
  making: ({ order }) => `Su pedido ${order} ya está en el banco.`,
  packed: ({ order }) => `Su pedido ${order} está empacado y espera el próximo correo.`,
  tracking: ({ order, tracking }) => `El número de seguimiento de su pedido ${order}: ${tracking}`,
  shipped: ({ order, tracking }, { shop, own }) =>
    [
      `Su pedido ${order} va en el correo.`,
      ...(tracking === null ? [] : [`Número de seguimiento: ${tracking}`]),
      own(shop.texts.shipped),
    ].join('\n'),
  'ask-question': () => 'Escriba su pregunta. Su próximo mensaje le llega al artesano tal cual.',
  'question-sent': () =>
    'Se la he pasado. La respuesta llega aquí; puede pasar una tarde. Lo que había empezado queda guardado.',
  'posts-to': ({ to, from, places }, voice) =>
    [
      ...(to === null
        ? []
        : [
            from === null
              ? `A ${voice.place(to)} por ahora no; pregunte al artesano.`
              : `Sí, a ${voice.place(to)}: envío desde ${voice.money(from)}.`,
          ]),
      `Los paquetes van a ${voice.list(places.map(voice.place))}. Diga el estado o la provincia al pedir.`,
    ].join(' '),
  gladly: () => 'Con gusto. Dígalo todo en un mensaje, o responda una pregunta a la vez.',
  'quote-later': ({ each, count, total }, voice) =>
    `Por lo que sé de la cabeza, ${count === null ? `unos ${voice.money(each)} cada una` : `${voice.count(count, { one: 'cabeza', other: 'cabezas' })} serían unos ${voice.money(total)}`}, sin envío ni impuesto; menos si son muchas. El precio entero y el día de envío vienen con el resumen, antes de pedir nada.`,
  'day-later': () =>
    'Depende de lo que haya en el banco: el día de envío viene con el resumen, cuando sepa las cabezas. Antes no se pide nada.',
  range: ({ about, all, fitting, lacks }, voice) =>
    lines(
      lacks === null
        ? null
        : `No hay ${voice.terms.quote(lacks)} en el libro. Quizá el artesano pueda hacerlo; pregúntele.`,
      `${capital(ES_TERMS.asks[about])}: ${voice.list(all.map((value) => partName(voice, about, value)))}.`,
      fitting === null
        ? null
        : `Con la cabeza de la que hablamos: ${voice.list(fitting.map((value) => partName(voice, about, value)))}.`,
    ),
  'you-are-welcome': () => 'No hay de qué.',
  'maker-says': ({ text, about }, { terms }) => `El artesano contesta a ${terms.quote(about)}:\n\n${text}`.trim(),
} satisfies Partial<PlainWords>;

const THINGS: ThingWords = {
  photo:
    'Solo puedo guardar una foto con una cabeza que se está pidiendo, hasta diez por cabeza. Empiece con «Nuevo pedido» y envíela otra vez.',
  file: 'No puedo leer archivos. Envíe la imagen como foto, o escriba lo que quiere.',
  sticker: 'Bonito sticker, pero solo sé leer palabras. Escriba lo que quiere o toque un botón.',
  voice: 'No puedo escuchar mensajes de voz. Escríbalo, por favor, o toque un botón.',
  video: 'No puedo ver vídeos. Envíe una foto, o escriba lo que quiere.',
  location: 'No sé leer un punto del mapa. Escriba el estado o el país de destino.',
  contact: 'No guardo contactos. Escriba el nombre y la dirección cuando se los pida.',
  other: 'Eso no lo sé leer. Escriba lo que quiere o toque un botón.',
};
