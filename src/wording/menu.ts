import type { Language } from '../domain/shop/words.ts';

type Line = Readonly<{ command: string; description: string }>;
type ByLanguage<T> = Readonly<Record<Language, T>>;

/** Commands that a client lists, in each language; what one may do is decided when it comes. */
const BUYER: ByLanguage<readonly Line[]> = {
  en: [
    { command: 'new', description: 'Start an order' },
    { command: 'orders', description: 'Where my orders stand' },
    { command: 'back', description: 'Go back one question' },
    { command: 'cancel', description: 'Stop this order' },
    { command: 'ask_maker', description: 'Ask the maker' },
    { command: 'help', description: 'What I can do' },
    { command: 'privacy', description: 'What is kept about you' },
    { command: 'export', description: 'A copy of my data' },
    { command: 'forget', description: 'Delete my data' },
    { command: 'language', description: 'Cambiar a español' },
  ],
  es: [
    { command: 'new', description: 'Empezar un pedido' },
    { command: 'orders', description: 'Cómo van mis pedidos' },
    { command: 'back', description: 'Volver una pregunta atrás' },
    { command: 'cancel', description: 'Dejar este pedido' },
    { command: 'ask_maker', description: 'Preguntar al artesano' },
    { command: 'help', description: 'Qué puedo hacer' },
    { command: 'privacy', description: 'Qué se guarda de usted' },
    { command: 'export', description: 'Una copia de mis datos' },
    { command: 'forget', description: 'Borrar mis datos' },
    { command: 'language', description: 'Switch to English' },
  ],
};

const MAKER: ByLanguage<readonly Line[]> = {
  en: [
    { command: 'bench', description: 'What to do now' },
    { command: 'digest', description: 'The day at a glance' },
    { command: 'week', description: 'The plan of seven days' },
    { command: 'queue', description: 'All open orders' },
    { command: 'timers', description: 'What is running' },
    { command: 'stock', description: 'What is on hand' },
    { command: 'buy', description: 'What to buy' },
    { command: 'unpaid', description: 'Money that is open' },
    { command: 'month', description: 'How the month goes' },
    { command: 'undo', description: 'Take the last tap back' },
    { command: 'health', description: 'How the program does' },
    { command: 'help', description: 'What I can do' },
    { command: 'language', description: 'Cambiar a español' },
  ],
  es: [
    { command: 'bench', description: 'Qué hacer ahora' },
    { command: 'digest', description: 'El día de un vistazo' },
    { command: 'week', description: 'El plan de siete días' },
    { command: 'queue', description: 'Todos los pedidos abiertos' },
    { command: 'timers', description: 'Qué está en marcha' },
    { command: 'stock', description: 'Qué hay en existencias' },
    { command: 'buy', description: 'Qué comprar' },
    { command: 'unpaid', description: 'Dinero pendiente' },
    { command: 'month', description: 'Cómo va el mes' },
    { command: 'undo', description: 'Deshacer el último toque' },
    { command: 'health', description: 'Cómo va el programa' },
    { command: 'help', description: 'Qué puedo hacer' },
    { command: 'language', description: 'Switch to English' },
  ],
};

/** English for everyone whose client has no list of its own, then Spanish. */
export const menus = [
  { language: null, buyer: BUYER.en, maker: MAKER.en },
  { language: 'es', buyer: BUYER.es, maker: MAKER.es },
] as const;

const isSpanish = (tag: string | null): boolean => tag?.toLowerCase().startsWith('es') ?? false;

/** Sentences that are said at once, outside the book, in the language of the sender's client. */
export const spoken = {
  slowDown: (tag: string | null): string =>
    isSpanish(tag)
      ? 'Van llegando muchos mensajes a la vez. Espere unos segundos y siga; lo dicho antes está guardado.'
      : 'That is a lot of messages at once. Wait a few seconds and go on; what was said before is kept.',
  sorry: (tag: string | null): string =>
    isSpanish(tag)
      ? 'Eso no se pudo hacer por un fallo nuestro. No se ha perdido nada; inténtelo otra vez o escriba "ayuda".'
      : 'That could not be done through a fault of ours. Nothing is lost; try it again, or type "help".',
} as const;
