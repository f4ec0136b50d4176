import type { LawRemark } from '../../domain/order/finding.ts';
import type { LineSlot } from '../../domain/shop/words.ts';
import { headName, itemName, partName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { BecauseWords, FindingWords } from '../words.ts';
import { ES_TERMS } from './terms.ts';

const { steps, asks, heads } = ES_TERMS;

export const ES_FINDINGS: FindingWords = {
  'no-such-weight': ({ style, weight, weights }, voice) =>
    `No hay molde para ${headName(voice, { style, weight })}. Se cuela en ${voice.list(weights)} oz.`,
  'weight-unknown': ({ weight, weights }, voice) =>
    `Ningún molde de aquí cuela ${weight} oz. Los pesos son ${voice.list(weights)} oz.`,
  'hook-does-not-fit': ({ hook, fits }, voice) =>
    `El ${partName(voice, 'hook', hook)} no cabe en este molde. ${fits.length === 1 ? 'El tamaño que cabe es' : 'Los tamaños que caben son'} ${voice.list(fits)}.`,
  'no-guard-hole': ({ style }, voice) =>
    `El molde de ${headName(voice, { style })} no tiene hueco para antihierbas, así que no se le puede poner.`,
  'guard-too-thick': ({ guard, pin }, voice) =>
    `El ${partName(voice, 'guard', guard)} no entra en el hueco, que mide ${pin} in.`,
  'keeper-not-in-mold': ({ style, keeper, keepers }, voice) =>
    `El molde de ${headName(voice, { style })} no se cuela ${withPart(partName(voice, 'keeper', keeper))}. Puede ir ${keepers.map((one) => withPart(partName(voice, 'keeper', one))).join(' o ')}.`,
  'takes-no-dressing': ({ style }, voice) =>
    `El molde de ${headName(voice, { style })} no deja cuello detrás, así que una falda o un collarín no se sujetaría.`,
  'melts-in-oven': ({ metal, solidus, oven }, voice) =>
    `La pintura se hornea a ${voice.temperature(oven)} y el metal ${partName(voice, 'metal', metal)} empieza a fundirse a ${voice.temperature(solidus)}. Puede quedar sin pintar o colarse en otro metal.`,
  'not-together': ({ slots }, voice) =>
    `Ningún molde cuela todo esto junto: ${voice.list(slots.map((slot) => asks[slot]))}. Cambie cualquiera de ellos.`,
  'too-few': ({ quantity, least }, voice) =>
    `Una línea empieza en ${voice.count(least, heads)}; esta tiene ${voice.number(quantity)}.`,
  'too-many': ({ quantity, most }, voice) =>
    `Una línea llega hasta ${voice.count(most, heads)}; esta tiene ${voice.number(quantity)}. El resto puede ir en otra línea.`,
  'waits-for-stock': ({ slots, item, day, due, instead }, voice) =>
    due === null
      ? `Espera material (${itemName(voice, item)}): llega más el ${voice.day(day)}. El día de envío ya lo cuenta.${fitsToo(slots, instead, voice)}`
      : `Espera material (${itemName(voice, item)}): iba a llegar el ${voice.day(due)} y no ha llegado. El día de envío solo cuenta con él para el ${voice.day(day)}.${fitsToo(slots, instead, voice)}`,
  'out-of-stock': ({ slots, item, instead }, voice) =>
    `No hay bastante material para esto (${itemName(voice, item)}) y no hay nada pedido. El artesano puede decir cuándo lo habrá.${fitsToo(slots, instead, voice)}`,
  'law-refuses': (facts, voice) => `No se puede vender en plomo a ${voice.place(facts.place)}. ${rule(facts, voice)}`,
  'law-holds': (facts, voice) =>
    `Antes de venderlo en plomo a ${voice.place(facts.place)}, el artesano tiene que mirar una norma. ${rule(facts, voice)}`,
  'law-notice': (facts, voice) => `Una norma sobre el plomo en ${voice.place(facts.place)}: ${rule(facts, voice)}`,
  'no-postage': ({ place }, voice) =>
    `No tengo precio de envío a ${voice.place(place)}, así que esto lo tiene que calcular el artesano.`,
};

export const ES_BECAUSE: BecauseWords = {
  material: ({ until }, voice) => `el material llega el ${voice.clock(until)}`,
  hands: ({ until }, voice) => `las manos están ocupadas hasta el ${voice.clock(until)}`,
  hours: ({ until }, voice) => `el banco abre el ${voice.clock(until)}`,
  oven: ({ until }, voice) => `el horno está ocupado hasta el ${voice.clock(until)}`,
  lag: ({ do: step, until }, voice) => `${stepName(step)} hasta el ${voice.clock(until)}`,
  work: ({ do: step, until }, voice) => `${stepName(step)} listo el ${voice.clock(until)}`,
  spare: ({ day }, voice) => `queda margen para una mala tarde, así que puedo prometer el ${voice.shortDay(day)}`,
  post: ({ by }, voice) => `el correo sale el ${voice.clock(by)}`,
};

/** The fact, how surely it holds for this head, and where it stands written. */
const rule = ({ fact, why, since, citation, asOf, tag }: LawRemark, voice: Voice): string =>
  [
    fact.es,
    ...DOUBTS[why](since && voice.date(since)),
    `(${[citation, `visto en ${voice.date(asOf)}`, ...(KNOWN[tag] ?? [])].join('; ')})`,
  ].join(' ');

const DOUBTS: Readonly<Record<LawRemark['why'], (since: string | null) => readonly string[]>> = {
  'in-force': () => [],
  'from-later': (since) => [since === null ? 'Todavía no está en vigor.' : `Entra en vigor: ${since}.`],
  'not-yet-law': () => ['Cuando se miró por última vez aún no era ley.'],
  'unclear-cover': () => ['No es seguro que abarque las cabezas de jig.'],
  'length-unknown': () => ['Depende del largo de la cabeza, que no se ha medido.'],
  'only-hook-clears-it': () => ['Solo el peso del anzuelo la lleva más allá del límite.'],
};

/** How the source is known, where its own text was not seen. */
const KNOWN: Readonly<Record<string, readonly string[]>> = { V2: ['según otra fuente'], M: ['de memoria'] };

const stepName = (step: string): string => (steps as Readonly<Record<string, string>>)[step] ?? step;

/** "con retén de alambre", but "sin retén" as it is. */
const withPart = (part: string): string => (part.startsWith('sin ') ? part : `con ${part}`);

/** Lo que el molde también admite y está aquí ahora. */
const fitsToo = ([slot]: readonly LineSlot[], instead: readonly string[], voice: Voice): string =>
  instead.length === 0 || slot === undefined || slot === 'quantity'
    ? ''
    : ` Hay ya, y cabe en el molde: ${instead.map((one) => partName(voice, slot, one)).join(' o ')}.`;
