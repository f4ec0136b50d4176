import type { Decision, Turn } from '../turn.ts';
import { cost, paid, refund, reprice, unpaid } from './money.ts';
import { paperFor, priceList } from './papers.ts';
import { books, month, tax } from './reports.ts';
import { buy, journal, stockAsked, stockTold } from './stockWords.ts';

/** A command of the maker about stock or money; undefined for words that are about neither. */
export function business(turn: Turn, text: string): Decision | undefined {
  const said = text.trim();
  for (const [pattern, act] of COMMANDS) {
    const found = pattern.exec(said)?.[0];
    const decided = found === undefined ? undefined : act(turn, said.slice(found.length).trim(), said);
    if (decided) return decided;
  }
  return undefined;
}

/** Each with what may follow it; one that finds nothing to do leaves the words to the next. */
const COMMANDS: readonly (readonly [RegExp, (turn: Turn, rest: string, text: string) => Decision | undefined])[] = [
  [/^\/?(?:what to buy|buy|comprar|qué comprar)[?.!]*$/i, buy],
  [/^\/?(?:journal|changes|diario)[.!]*$/i, journal],
  [/^\/?(?:unpaid|owed|sin pagar|deudas)[?.!]*$/i, unpaid],
  [/^\/?(?:month|mes)\b/i, month],
  [/^\/?(?:tax|impuesto)(?=\s+q?\d|\s*$)/i, tax],
  [/^\/?(?:books|libros)\b/i, books],
  [/^\/?(?:cost|costo|coste)\b(?=\s*(?:k|\d|$))/i, cost],
  [/^\/?(?:paid|pagado|pagó)(?=\s|$)/i, paid],
  [/^\/?(?:refund|reembolso)\b/i, refund],
  [/^\/?(?:price|precio)\b(?=\s*k)/i, reprice],
  [/^\/?(?:slip|albarán|albaran)\b/i, paperFor('packing-slip', 'slip')],
  [/^\/?(?:sheet|hoja)\b/i, paperFor('order-sheet', 'sheet')],
  [/^\/?(?:receipt|recibo)\b/i, paperFor('receipt', 'receipt')],
  [/^\/?(?:price list|prices|lista de precios|precios)[.!]*$/i, priceList],
  [/^\/?\p{L}+\s.*\d/su, stockTold],
  [/^\/?\p{L}+(?:\s\D*)?$/su, stockAsked],
];
