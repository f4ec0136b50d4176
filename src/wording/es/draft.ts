import type { Line } from '../../domain/order/spec.ts';
import { headName, partName } from '../names.ts';
import { sampleLine } from '../sample.ts';
import type { Voice } from '../voice.ts';
import type { DraftWords } from '../draftWords.ts';
import type { QuoteWords } from '../words.ts';
import { ES_BECAUSE } from './findings.ts';
import { ES_TERMS } from './terms.ts';

const { heads, quote } = ES_TERMS;

export const ES_DRAFT: DraftWords = {
  soFar: 'Hasta ahora:',
  lineOf: (line, lines) => `Línea ${line} de ${lines}.`,
  line: (lines, voice) => `${lines.length === 1 ? 'Línea' : 'Líneas'} ${voice.list(lines)}`,
  localRules: 'Estas normas son datos con fecha, no consejo legal. Compruebe las normas de su lugar.',
  now: (value) => `Ahora: ${value}.`,
  wantsGuard: 'con antihierbas',
  photos: (count, voice) => voice.count(count, { one: 'foto guardada', other: 'fotos guardadas' }),
  by: (day) => `para el ${day}`,
  to: (place) => `a ${place}`,
  nothingYet: 'nada dicho todavía',
  asks: {
    style: () => '¿Qué estilo de cabeza?',
    weight: () => '¿Qué peso?',
    hook: () => '¿Qué tamaño de anzuelo?',
    paint: () => '¿Qué color?',
    guard: () => '¿Qué antihierbas?',
    keeper: () => '¿Qué debe sujetar el cebo blando?',
    dressing: () => '¿Con falda o collarín?',
    metal: () => '¿Qué metal?',
    quantity: ({ shop: { orders } }) => `¿Cuántas cabezas? Cualquier número de ${orders.least} a ${orders.most}.`,
    usual: () => '¿Tomamos lo demás como es usual, o elige usted cada pieza?',
    shipTo: () =>
      '¿A qué estado o país se envía? De eso dependen el envío y el impuesto. La dirección se pide más tarde.',
    needBy: () => '¿Para qué día las quiere?',
  },
  whichPart: (country) =>
    `¿A qué estado o provincia de ${country}? De eso dependen el envío, el impuesto y las reglas sobre el plomo. La dirección se pide más tarde.`,
  soonest: 'Cuanto antes: el primer día que puedo prometer viene con el precio.',
  makes: (head) => `Sí, se puede hacer: ${head}. Diga cuántas para pedirla.`,
  usualIs: (list) => `Lo usual aquí: ${list}.`,
  tip: (voice) => `Toque uno, o escríbalo todo en un mensaje, por ejemplo ${quote(wholeExample(voice))}.`,
  tapOrType: 'Toque uno o escríbalo.',
  last: 'Es la última pregunta.',
  more: (count, voice) =>
    count === 1 ? 'Después de esta, una pregunta más.' : `Después de esta, unas ${voice.number(count)} preguntas más.`,
  unclear: (said) => `No entendí ${said}. Dígalo con otras palabras o pregunte al artesano.`,
  stuck: 'Así como está no se puede hacer:',
  askFirst: 'El artesano tiene que mirar esto antes de que se pueda pedir:',
  noDay: 'No encuentro día para esto por mí mismo. El artesano puede.',
  hindrances: {
    'no-hours': () => 'No hay horas de taller en el calendario.',
    'hours-end': () => 'Las horas de taller del calendario se acaban antes de que esté hecho.',
    'no-post': () => 'El correo no sale ningún día de los que vienen.',
    'no-rack': ({ heads }, voice) => `En el horno no caben ${voice.count(heads, ES_TERMS.heads)}.`,
    'setup-too-long': ({ minutes, longest }, voice) =>
      `Preparar el trabajo lleva ${voice.duration(minutes)}, más que cualquier rato de taller (${voice.duration(longest)}).`,
    'bake-too-long': ({ minutes, longest }, voice) =>
      `Una hornada lleva ${voice.duration(minutes)}, más que cualquier rato de taller (${voice.duration(longest)}).`,
  },
  waysBelow: 'Los botones son las salidas más cercanas. También puede escribir un cambio.',
  noWays: 'Escriba un cambio o pregunte al artesano. Lo que dijo queda guardado.',
  hints: {
    style: (voice) => said(voice, ({ spec }) => headName(voice, { style: spec.style })),
    weight: (voice) => said(voice, ({ spec }) => `${spec.weight} oz`),
    hook: (voice) => said(voice, ({ spec }) => spec.hook),
    paint: (voice) => said(voice, ({ spec }) => partName(voice, 'paint', spec.paint)),
    guard: (voice) => said(voice, ({ spec }) => partName(voice, 'guard', spec.guard)),
    keeper: (voice) => said(voice, ({ spec }) => partName(voice, 'keeper', spec.keeper)),
    dressing: () => quote('sin falda'),
    metal: (voice) => said(voice, ({ spec }) => partName(voice, 'metal', spec.metal)),
    quantity: (voice) => said(voice, ({ quantity }) => voice.count(quantity, heads)),
    usual: () => quote('lo usual'),
    shipTo: (voice) => quote(voice.place(voice.shop.place)),
    needBy: () => quote('para el 12 de junio'),
    stuck: () => quote('que sean 30'),
    whole: () => quote('pedir esto'),
  },
  missed: {
    hint: (hint) => `No lo entendí. Toque un botón de abajo o escriba algo como ${hint}.`,
    example: (hint) =>
      `Sigo sin ver qué quiere decir, y no se ha perdido nada. Lo mejor es una respuesta corta cada vez: para esta pregunta, ${hint}. O toque uno de los botones.`,
    person:
      'Que lo lea una persona: toque «Preguntar al artesano» y su próximo mensaje le llegará. Su pedido queda como está.',
    again: (misses, hint) =>
      `Con este son ${misses} mensajes que no supe leer. Todo lo que dijo antes está guardado. Toque «Preguntar al artesano», un botón de abajo, o escriba ${hint}.`,
  },
  changeWhat: '¿Qué quiere cambiar? Todo lo demás queda como está.',
  dropSure: '¿Lo tiramos? No se ha pedido nada.',
  dropFor: (order) => `¿Tiramos esto y repetimos el pedido ${order}? De esto no se ha pedido nada.`,
  welcomeBack: (since) => `Qué bueno verle de nuevo. Empezó un pedido el ${since} y sigue aquí.`,
  goOn: '¿Seguimos con él o empezamos de nuevo?',
};

export const ES_QUOTE: QuoteWords = {
  notYet: 'Revíselo, por favor. Todavía no se ha pedido nada.',
  missed: (wanted, ships) => `Lo quería para el ${wanted}. Lo antes que puedo prometer es el ${ships}.`,
  made: (metal, ounces) => `De ${metal} pesan unas ${ounces} oz cada una; las onzas del molde son para plomo.`,
  usual: (list) => `Como es usual, ya que no lo dijo: ${list}.`,
  each: (parts, each) => `Cada una: ${parts} = ${each}`,
  off: (money) => `menos ${money} por cantidad`,
  same: (count, free, voice) => `${voice.number(count)} costarían lo mismo: ${voice.number(free)} más sin pagar más.`,
  rush: (money) => `Por la prisa: ${money}`,
  topUp: (money, least) => `Hasta el pedido mínimo de ${least}: ${money}`,
  postage: (place, money, parcels) =>
    parcels === 1 ? `Envío a ${place}: ${money}` : `Envío a ${place}, ${parcels} paquetes: ${money}`,
  tax: (money) => `Impuesto sobre la venta: ${money}`,
  total: (money) => `TOTAL: ${money}`,
  ships: (day) => `Se envía el ${day}.`,
  shipsOncePaid: (day) => `Se envía el ${day} si se paga hoy; el día de envío se fija al llegar el pago.`,
  why: (reasons) => `Por qué entonces: ${reasons}.`,
  because: ES_BECAUSE,
  neededBy: (day) => `Lo quiere para el ${day}.`,
  goodUntil: (time) => `Precio y día valen hasta el ${time}.`,
  unclear: (said) =>
    `No va en este pedido, porque no lo entendí: ${said}. Dígalo con otras palabras o pregunte al artesano.`,
  howToAccept: 'Toque «Pedir esto» para pedirlo.',
};

const said = (voice: Voice, part: (line: Line) => string): string => {
  const line = sampleLine(voice.shop);
  return quote(line === undefined ? 'lo usual' : part(line));
};

function wholeExample(voice: Voice): string {
  const line = sampleLine(voice.shop);
  if (line === undefined) return voice.count(voice.shop.orders.least, heads);
  const { spec, quantity } = line;
  const parts = [partName(voice, 'paint', spec.paint), partName(voice, 'guard', spec.guard)];
  return `${voice.count(quantity, heads)}, ${headName(voice, spec)}, ${parts.join(', ')}, a ${voice.place(voice.shop.place)}`;
}
