/** A cell of a table: words, a number, or nothing. */
export type Cell = string | number | null;

/** A table as RFC 4180 writes it: a header line, CRLF after every line, quotes where they are needed.
 *  Words that a spreadsheet would take for a formula get an apostrophe in front, so that nobody's name can calculate anything.
 *  @example writeCsv(['a', 'b'], [['x,y', 1]]) //=> 'a,b\r\n"x,y",1\r\n' */
export const writeCsv = (columns: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [columns, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');

function field(cell: Cell): string {
  if (cell === null) return '';
  const text = typeof cell === 'number' ? String(cell) : harmless(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A plain number may begin with a minus; anything else that begins like a formula is words. */
const harmless = (text: string): string =>
  /^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(text) && !/^-?\d+(\.\d+)?$/.test(text) ? `'${text}` : text;
