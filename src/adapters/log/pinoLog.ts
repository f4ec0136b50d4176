import pino from 'pino';
import type { Log } from '../../app/log.ts';

/** The only facts that are ever logged: numbers, and short codes that cannot be words someone typed. */
const FACTS = [
  'person',
  'to',
  'update',
  'kind',
  'outcome',
  'code',
  'tries',
  'picture',
  'count',
  'depth',
  'ms',
  'serial',
  'version',
  'port',
] as const;

/** One line of JSON an event, with what is on the list and nothing else; what is not a number or a short code is left out. */
export function pinoLog(out: pino.DestinationStream = pino.destination({ dest: 2, sync: true })): Log {
  const log = pino({ base: null }, out);
  return (event, facts = {}) => {
    log.info(Object.fromEntries(FACTS.flatMap((name) => (isCode(facts[name]) ? [[name, facts[name]]] : []))), event);
  };
}

const isCode = (fact: number | string | null | undefined): boolean =>
  typeof fact === 'number' || (typeof fact === 'string' && /^[A-Za-z][\w-]{0,40}$/.test(fact));
