/** Words that work in any state, in the buyer's language or English. */
export const UNIVERSAL = [
  'start',
  'help',
  'back',
  'cancel',
  'start-over',
  'ask-maker',
  'orders',
  'privacy',
  'export',
  'forget',
  'health',
  'accept',
  'change',
  'bench',
  'queue',
  'timers',
  'stock',
  'digest',
  'week',
  'undo',
  'new',
  'usual',
  'yes',
  'thanks',
  'language',
] as const;
export type Universal = (typeof UNIVERSAL)[number];

/** What people say for each, in lower case; a slash command of the same name works too. */
const SAID: Readonly<Record<Universal, readonly string[]>> = {
  start: [
    'start',
    'hello',
    'hi',
    'hey',
    'good morning',
    'good evening',
    'hello bot',
    'empezar',
    'hola',
    'buenos días',
    'buenas tardes',
  ],
  help: ['help', 'help me', 'what can you do', 'ayuda', '?'],
  back: ['back', 'go back', 'atrás', 'atras', 'volver'],
  cancel: ['cancel', 'stop', 'never mind', 'nevermind', 'forget it', 'cancelar', 'olvídalo', 'olvidalo'],
  'start-over': ['start over', 'restart', 'begin again', 'empezar de nuevo', 'de nuevo'],
  'ask-maker': [
    'ask the maker',
    'ask maker',
    'talk to a person',
    'talk to the maker',
    'human',
    'person',
    'preguntar al artesano',
    'preguntar al maestro',
    'hablar con una persona',
    'persona',
  ],
  orders: [
    'orders',
    'my orders',
    'my order',
    'status',
    'order status',
    'where is my order',
    "where's my order",
    'pedidos',
    'mis pedidos',
    'mi pedido',
    'estado',
  ],
  privacy: ['privacy', 'privacidad'],
  export: ['export', 'export my data', 'my data', 'copy of my data', 'mis datos', 'exportar mis datos'],
  forget: [
    'delete my data',
    'delete my account',
    'erase my data',
    'forget me',
    'borrar mis datos',
    'elimine mis datos',
  ],
  health: ['health', 'salud del programa'],
  accept: ['accept', 'order it', 'place the order', 'place order', 'i accept', 'acepto', 'aceptar', 'pedir'],
  change: ['change', 'change something', 'change it', 'edit', 'cambiar', 'cambiar algo'],
  bench: ['bench', 'bench list', 'banco'],
  queue: ['queue', 'cola'],
  timers: ['timers', 'timer', 'tiempos'],
  stock: ['stock', 'existencias'],
  digest: ['digest', 'today', 'resumen'],
  week: ['week', 'the week', 'my week', 'semana', 'la semana'],
  undo: ['undo', 'deshacer'],
  new: ['new', 'new order', 'order', 'nuevo', 'nuevo pedido', 'pedido'],
  usual: ['usual', 'the usual', 'as usual', 'the usual is fine', 'lo usual', 'lo de siempre'],
  thanks: [
    'thanks',
    'thank you',
    'thx',
    'ty',
    'thanks a lot',
    'thank you so much',
    'great thanks',
    'ok thanks',
    'ok thank you',
    'okay thanks',
    'perfect thanks',
    'perfect',
    'great',
    'awesome',
    '👍',
    '🙏',
    'gracias',
    'muchas gracias',
    'vale gracias',
    'ok gracias',
    'perfecto',
    'perfecto gracias',
    'genial',
  ],
  yes: ['yes', 'y', 'yep', 'yes please', 'ok', 'okay', 'sounds good', 'looks good', 'sí', 'si', 'vale', 'de acuerdo'],
  language: ['language', 'idioma', 'english', 'español', 'espanol'],
};

const BY_WORDS: ReadonlyMap<string, Universal> = new Map(
  UNIVERSAL.flatMap((word) => SAID[word].map((said) => [said, word] as const)),
);

/** The universal word that a message is, if it is just that; undefined otherwise.
 *  @example universalIn('/help') //=> 'help'
 *  @example universalIn('Start over, please!') //=> 'start-over' */
export function universalIn(text: string): Universal | undefined {
  const bare = text.trim().toLowerCase();
  const command = /^\/([a-z_]+)(?:@\w+)?(?:\s|$)/.exec(bare)?.[1]?.replaceAll('_', '-');
  if (command !== undefined) return UNIVERSAL.find((word) => word === command);
  const plain = bare.replace(/[\s,]*(?:please|por favor)[.!]*$/, '').replace(/[.!,\s]+$/, '');
  return BY_WORDS.get(bare) ?? BY_WORDS.get(plain.replaceAll(/[,.!]+(?= )/g, ''));
}
