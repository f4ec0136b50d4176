import type { DigestWords } from '../digestWords.ts';
import type { BenchWords, TimerWords } from '../words.ts';

export const ES_BENCH: BenchWords = {
  makerWelcome: 'Este chat es su libro de pedidos y su banco. Antes que nada:',
  makerHow:
    'Los compradores piden aquí por su cuenta; usted se entera de cada pedido y de cada pregunta que le hacen. Toque «Banco» para ver qué se puede empezar.',
  care: 'CUIDADO:',
  running: 'EN MARCHA',
  ready: 'SE PUEDE EMPEZAR',
  passed: {
    done: (step, lot) => `Eso ya está hecho: ${step}, ${lot}. No se ha empezado nada.`,
    running: (step, lot) => `Eso ya está en marcha: ${step}, ${lot}. No se ha empezado nada.`,
    gone: (step, lot) => `${lot} ya no está en el banco: ${step}, sin empezar.`,
    other: () => 'Ya no son las mismas cabezas. No se ha empezado nada.',
  },
  nothing: 'Nada que empezar y nada en marcha.',
  timers: 'TIEMPOS',
  noTimers: 'No corre ningún tiempo.',
  sinceTime: (time) => `desde el ${time}`,
  slots: {
    hook: 'Anzuelo',
    paint: 'Pintura',
    guard: 'Antihierbas',
    keeper: 'Retén',
    dressing: 'Falda o collarín',
    metal: 'Metal',
  },
  pin: {
    in: 'Pasador de la base: PUESTO',
    none: 'Pasador de la base: NO PONERLO',
    pullAfter: 'Pasador de la base: SACARLO EN CALIENTE, TRAS EL POLVO',
    pull: 'Pasador de la base: SI SIGUE DENTRO, SACARLO EN CALIENTE',
  },
  short: (item, heads, of) => `${item} para ${heads} de ${of}`,
  countAnew: 'Si hay más, cuéntelo antes de empezar.',
  left: (heads) => `${heads} de más se quedan fuera: lo que gastarían está apartado para otros pedidos`,
  later: (time) => `Empezado antes del ${time}, atrasaría lo prometido antes`,
  leftOut: (heads) => `Fuera, porque no quedaba nada libre para ellas: ${heads}. Cuentan como chatarra.`,
  beyond: (items) => `Gastado por encima de lo contado: ${items}. Parece que estaban; cuente lo que queda.`,
  melt: (grams) => `Funda ${grams}, con mazarotas y coladas de calentar incluidas.`,
  countTo: (lot, from, to) =>
    `Caliente la cabeza contando ${from === to ? `hasta ${from}` : `de ${from} a ${to}`} antes de mojarla en el polvo${lot === '' ? '' : ` (${lot})`}.`,
  lightest: (times) =>
    `Las cabezas más ligeras de esta bandeja reciben ${times} veces su horneado, más de lo que aguanta el polvo: hornéelas aparte.`,
  bake: (heat, comeUp, hold) =>
    `Horno a ${heat}. Unos ${comeUp} hasta que las cabezas estén en su calor; después, ${hold}.`,
  glue: (mixes, each, life, voice) =>
    `${voice.count(mixes, { one: 'mezcla de pegamento', other: 'mezclas de pegamento' })}, como mucho ${voice.number(each)} antihierbas en cada una. Una mezcla se trabaja unos ${life}.`,
  cure: (time) => `El curado completo tarda ${time} en este garaje.`,
  scrapped: (count, lots, voice) => `Malas: ${voice.number(count)}${lots === '' ? '' : ` (${lots})`}.`,
  localCodes: '- Compruebe las normas de su lugar y las fichas de seguridad.',
  ovenTaken: 'El horno ya tiene una rejilla dentro. Sáquela primero.',
  howMany: (lot, heads) => `De ${heads} de ${lot}, ¿cuántas son malas?`,
  stepDone: (step) => `Hecho: ${step}.`,
  good: (lot, good) => `${lot}: buenas, ${good}.`,
  next: (step) => `Sigue: ${step}.`,
  finished: 'Listo para el correo.',
  packs: (parcel, over) => `AL PAQUETE: ${parcel}. AL ESTANTE: ${over}.`,
  sparesOut: (count, voice) => `FUERA DE LA REJILLA: ${voice.number(count)} de más.`,
  letGo: (lot, count, voice) =>
    `${lot}: ${voice.number(count)} de más no ${count === 1 ? 'cabía' : 'cabían'} en la rejilla y se ${count === 1 ? 'deja' : 'dejan'}, para no hornear solo por ${count === 1 ? 'ella' : 'ellas'}.`,
  shelved: (heads) => `Al estante: ${heads}, coladas de más.`,
  topUp: (lot, heads) => `Quedan pocas: hay que volver a colar ${heads}, como lote ${lot}.`,
  garage: (temperature) => `Desde ahora el garaje cuenta como a ${temperature}.`,
  curesGoOn: 'Curados en marcha, a esa temperatura:',
  setNone: (least) =>
    `Por debajo de ${least} el epoxi puede no curar nunca del todo: no ponga antihierbas hasta que haga más calor.`,
  curesStill: (least) =>
    `Por debajo de ${least} el epoxi puede no curar nunca. Estos quedan parados hasta que haga más calor:`,
  reckoned: (quantity, cast) => `Para ${quantity}, cuele ${cast}: lo que suele salir mal ya va contado.`,
  weights: 'Una cabeza, con su anzuelo:',
  weighs: (metal, grams, ounces) => `${metal}: ${grams} (${ounces} oz)`,
  noBake: 'no va al horno',
  powder: (grams) => `Polvo: unos ${grams}.`,
  cured: (full, overnight, garage) => `Pegamento a ${garage}: se toca a las ${overnight}, curado completo ${full}.`,
  noCure: (garage) => `Pegamento a ${garage}: demasiado frío para curar.`,
};

const GUARDS = { one: 'antihierbas', other: 'antihierbas' } as const;

export const ES_TIMER: TimerWords = {
  due: {
    'up-to-heat': ({ duration, shop }) =>
      `EN SU CALOR. Los ${duration(shop.oven.holdMinutes)} de horno cuentan desde aquí.`,
    bake: () => 'HORNEADO LISTO. Saque la rejilla del horno.',
    cool: () => 'FRÍAS. Las cabezas ya se pueden tocar.',
    glue: () => 'MEZCLA PASADA. No ponga más antihierbas con ella; haga una nueva.',
    handling: () => 'PEGAMENTO FIRME. Las cabezas se pueden tocar con cuidado; el curado completo sigue.',
    cure: () => 'CURADO. El pegamento tiene toda su fuerza.',
  },
  late: (duration) => `Tocaba hace ${duration}.`,
  overbaked: (times) =>
    `Es ${times} veces el tiempo de horno: está pasado. Los colores claros pueden haber amarilleado y la pintura puede saltar. Pruebe una cabeza antes de seguir.`,
  stillGood: (over) => `El polvo aguanta ${over} de más. Sáquelas ya de todos modos.`,
  wasOff: (duration, count, voice) =>
    `Estuve sin funcionar ${duration}. Desde entonces ${count === 1 ? 'ha vencido' : 'han vencido'} ${voice.count(count, { one: 'cosa', other: 'cosas' })}:`,
  at: (name, time) => `${name}: ${time}`,
  still: (name) => `${name}: parado, demasiado frío`,
  over: (name, late) => `${name}: tocaba hace ${late}`,
  mix: (guards, after, voice) =>
    `como mucho ${voice.count(guards, GUARDS)} con esta mezcla, después ${after === 0 ? 'ninguno' : voice.number(after)}`,
  mixNext: (after, voice) =>
    after === 0 ? 'Ya deberían estar todos puestos.' : `Quedan unos ${voice.count(after, GUARDS)} por poner.`,
};

export const ES_DIGEST: DigestWords = {
  heading: (day) => `${day}.`,
  hours: (hours, planned) => `Horas de banco hoy: ${hours}; con trabajo, ${planned}.`,
  noHours: 'Hoy no hay horas de banco.',
  fits: 'Caben todas las promesas.',
  doesNotFit: 'No caben todas las promesas.',
  melt: (metals) => `Por fundir: ${metals}.`,
  meltOf: (metal, grams) => `${grams} de ${metal}`,
  done: (steps) => `Hecho ayer: ${steps}.`,
  leaving: (orders, by) => `TIENE QUE SALIR HOY, entregado antes del ${by}: ${orders}.`,
  unbegun: (orders) => `Se empiezan al pagarse: ${orders}.`,
  unbegunRow: (order, money) => `${order} (${money})`,
  quiet: 'No espera ningún trabajo.',
  work: 'TRABAJO DE HOY',
  ready: 'SE PUEDE EMPEZAR',
  due: (orders) => `Prometido para pronto: ${orders}.`,
  dueRow: (order, promised) => `${order} el ${promised}`,
  moreWork: (count, duration) => `y ${count} más, en total ${duration} (Semana)`,
  toPost: (orders) => `Empacados, esperan el correo: ${orders}.`,
  danger: 'EN PELIGRO',
  late: 'CON RETRASO',
  dangerRow: (order, buyer, { promised, ships, at }) =>
    `${order}, ${buyer}: prometido para el ${promised}, ${at === 'hold' ? 'EN ESPERA' : ships === null ? 'sin día a la vista' : `${at === 'post' ? 'empacado, próximo correo el' : 'va para el'} ${ships}`}`,
  timers: (running) => `En marcha: ${running}.`,
  short: (items) => `FALTA: ${items}.`,
  shortRow: (item, needed, there) => `${item} (hacen falta ${needed}, hay ${there})`,
  deliveries: (items) => `Está por llegar: ${items}.`,
  deliveryRow: (item, amount, day) => `${amount} ${item} el ${day}`,
  overdueRow: (item, amount, day) => `${amount} ${item}, CON RETRASO desde el ${day}`,
  questions: 'ESPERAN SU RESPUESTA',
  undelivered: (count, voice) =>
    `Sin entregar esta semana: ${voice.count(count, { one: 'mensaje', other: 'mensajes' })}. Escriba «health» para ver cómo va el programa.`,
  unpaid: 'DINERO PENDIENTE',
  cancels: (orders) => `Quieren cancelar: ${orders}.`,
  unaddressed: (orders) => `Todavía sin dirección: ${orders}.`,
};
