import type { Caution } from '../domain/craft/care.ts';
import type { Language } from '../domain/shop/words.ts';

type Sentences = Readonly<Record<Language, string>>;

/** The sentence of a caution. @example cautionText('use-pliers', 'en') //=> 'Pull pins with pliers; pin and head are hot.' */
export const cautionText = (caution: Caution, language: Language): string => CAUTION_TEXTS[caution][language];

/** Sources beside the lines: authorities where one says it, else the usual practice of the trade. */
export const CAUTION_TEXTS: Readonly<Record<Caution, Sentences>> = {
  // EPA archive, "Humans and Lead Fishing Sinkers"
  'official-advice': {
    en: 'The US EPA strongly advises against casting lead jigs at home. If you do, use a detached building and change clothes and shoes before you go into the home.',
    es: 'La EPA de EE. UU. desaconseja firmemente fundir cabezas de plomo en casa. Si lo hace, use un edificio separado y cámbiese de ropa y zapatos antes de entrar en la vivienda.',
  },
  // CDC, "Keep Your Family Safe: Don't Bring Lead Home from Your Job", 2019
  'keep-away': {
    en: 'Keep children, pregnant people and pets away from lead and its dust.',
    es: 'Mantenga a los niños, las personas embarazadas y los animales lejos del plomo y de su polvo.',
  },
  // EPA archive, as above
  'blood-test': {
    en: 'Have your own and your family’s blood tested for lead.',
    es: 'Hágase análisis de plomo en sangre, usted y su familia.',
  },
  'codes-first': {
    en: 'Local codes, safety data sheets and licensed practice come before anything said here.',
    es: 'Las normas locales, las fichas de seguridad y la práctica autorizada van antes que cualquier cosa dicha aquí.',
  },
  // smelters' and mold sellers' safety pages
  'dry-metal': {
    en: 'Only dry, preheated metal goes into the pot: a drop of water makes molten metal burst out.',
    es: 'Al crisol solo entra metal seco y precalentado: una gota de agua hace saltar el metal fundido.',
  },
  'dry-tools': {
    en: 'Hooks, mold and ladle dry and warm; no rain, no sweat.',
    es: 'Anzuelos, molde y cazo secos y tibios; ni lluvia ni sudor.',
  },
  'cover-up': {
    en: 'Face shield, gloves, long sleeves, closed shoes.',
    es: 'Pantalla facial, guantes, manga larga y zapatos cerrados.',
  },
  'fan-on': {
    en: 'Fan or hood on, air moving away from you.',
    es: 'Ventilador o campana en marcha, con el aire alejándose de usted.',
  },
  // from the vapour pressure of lead: about 11 µg/m³ over the melt at 450 °C, 30 at 475 °C
  'pot-limit': { en: 'Pot no hotter than 450 °C (842 °F).', es: 'El crisol, a no más de 450 °C (842 °F).' },
  'no-food': { en: 'No food, drink or smoking here.', es: 'Aquí no se come, ni se bebe, ni se fuma.' },
  'same-bin': {
    en: 'Is it from the same alloy bin? Tin or bismuth in lead makes it melt in the oven.',
    es: '¿Es del mismo cajón de aleación? Con estaño o bismuto, el plomo se funde en el horno.',
  },
  // EPA archive, as above (wet-clean)
  'wet-wipe': { en: 'Lead dust: wipe it up wet.', es: 'Polvo de plomo: recójalo con un paño húmedo.' },
  'no-dry-sweep': {
    en: 'No dry sweeping and no compressed air.',
    es: 'Ni barrer en seco ni aire comprimido.',
  },
  'hot-head': {
    en: 'Head and hook are hot: hold them with pliers.',
    es: 'Cabeza y anzuelo queman: sujételos con alicates.',
  },
  // "How to prevent powder dust explosion"
  'no-flame': {
    en: 'No flame or spark near stirred-up powder: its dust can explode.',
    es: 'Ni llama ni chispa cerca del polvo en suspensión: puede explotar.',
  },
  'sieve-powder': { en: 'Sieve lumps out of the powder.', es: 'Tamice los grumos del polvo.' },
  'clear-eye': { en: 'Clear the eye while the powder is soft.', es: 'Despeje el ojo mientras el polvo está blando.' },
  'own-oven': {
    en: 'An oven used for powder is never used for food again.',
    es: 'Un horno usado para pintura en polvo no vuelve a usarse para comida.',
  },
  'vent-oven': { en: 'Oven where its fumes go outside.', es: 'El horno, donde sus humos salgan al exterior.' },
  'set-timer': {
    en: 'The hold counts from when the metal is hot, not from closing the door.',
    es: 'El tiempo cuenta desde que el metal está caliente, no desde que se cierra la puerta.',
  },
  'check-alloy': {
    en: 'Check the metal of every head on the rack: bismuth-tin and mixed scrap melt at baking heat.',
    es: 'Compruebe el metal de cada cabeza de la rejilla: el bismuto-estaño y la chatarra mezclada se funden al hornear.',
  },
  'stay-by-oven': { en: 'Never leave the oven alone while it is on.', es: 'No deje nunca solo el horno encendido.' },
  'use-pliers': {
    en: 'Pull pins with pliers; pin and head are hot.',
    es: 'Saque los pasadores con alicates; pasador y cabeza queman.',
  },
  // dermatology leaflet "Epoxy resin"; European epoxy association, "Epoxies in the workplace"
  'nitrile-gloves': {
    en: 'Nitrile gloves, changed often; latex does not protect from epoxy.',
    es: 'Guantes de nitrilo, cambiados a menudo; el látex no protege del epoxi.',
  },
  'small-mix': {
    en: 'Small mixes only: a cupful heats itself and can burn.',
    es: 'Solo mezclas pequeñas: un vaso lleno se calienta solo y puede quemar.',
  },
  'stay-by-cup': { en: 'Do not leave the cup.', es: 'No se aparte del vaso.' },
  'watch-pot-life': {
    en: 'Stop setting guards when the mix begins to string.',
    es: 'Deje de colocar antienganches cuando la mezcla empiece a hacer hilos.',
  },
  // Michigan DHHS, "Jobs and Hobbies"; NIOSH 2024-101, "Leave lead at work"
  wash: {
    en: 'Wash hands and face with soap and running water.',
    es: 'Lávese las manos y la cara con jabón y agua corriente.',
  },
  'change-clothes': {
    en: 'Change clothes and shoes before you go in; wash work clothes apart.',
    es: 'Cámbiese de ropa y zapatos antes de entrar; lave aparte la ropa de trabajo.',
  },
  'wipe-bench': { en: 'Wipe the bench wet.', es: 'Limpie el banco en húmedo.' },
  'bag-dross': { en: 'Bag and label the dross.', es: 'Embolse y etiquete la escoria.' },
  'lead-label': {
    en: 'Contains lead. Wash hands after handling. Never put in mouth.',
    es: 'Contiene plomo. Lávese las manos después de tocarlo. No se lo lleve nunca a la boca.',
  },
  'age-label': { en: 'Not for children.', es: 'No apto para niños.' },
  'local-rules': {
    en: 'Check your local lead-tackle rules.',
    es: 'Consulte las normas locales sobre aparejos de plomo.',
  },
};
