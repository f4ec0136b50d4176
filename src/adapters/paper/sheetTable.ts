import type { Paper } from '../../app/letter.ts';
import { INK, room, type Page } from './sheetPage.ts';

type Table = Extract<Paper['blocks'][number], { kind: 'table' }>;

/** Space around the words of a cell, in points. */
const PAD = 4;

/** A table whose rows are never cut in two; its head is printed again on every page it goes on to. */
export function printTable(doc: Page, { columns, rows }: Table): void {
  const cells = columnsOf(doc, columns);
  printTitles(doc, cells);
  rows.forEach((row, at) => {
    const height = heightOf(doc, cells, row);
    if (doc.y + height > room(doc).bottom) {
      doc.addPage();
      printTitles(doc, cells);
    }
    printRow(doc, cells, row, height, at % 2 === 1 ? INK.tint : null);
  });
}

type Column = Table['columns'][number] & Readonly<{ x: number; width: number }>;

/** The columns where they stand. */
function columnsOf(doc: Page, columns: Table['columns']): readonly Column[] {
  const { left, width } = room(doc);
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  let x = left;
  return columns.map((column) => {
    const placed = { ...column, x, width: (column.share / whole) * width };
    x += placed.width;
    return placed;
  });
}

function printTitles(doc: Page, columns: readonly Column[]): void {
  const { left, width } = room(doc);
  const y = doc.y;
  doc.rect(left, y, width, 19).fill(INK.deep);
  doc.font('bold').fontSize(8).fillColor('#ffffff');
  for (const { title, align, x, width: own } of columns)
    doc.text(title, x + PAD, y + 5.5, { width: own - 2 * PAD, align, lineBreak: false, ellipsis: true });
  doc.y = y + 19;
}

const heightOf = (doc: Page, columns: readonly Column[], row: readonly string[]): number => {
  doc.font('plain').fontSize(9.5);
  const heights = columns.map(({ width }, at) =>
    doc.heightOfString(row[at] ?? '', { width: width - 2 * PAD, lineGap: 1.5 }),
  );
  return Math.max(...heights, 11) + 2 * PAD;
};

function printRow(
  doc: Page,
  columns: readonly Column[],
  row: readonly string[],
  height: number,
  tint: string | null,
): void {
  const { left, width } = room(doc);
  const y = doc.y;
  if (tint !== null) doc.rect(left, y, width, height).fill(tint);
  doc.font('plain').fontSize(9.5).fillColor(INK.text);
  columns.forEach(({ x, width: own, align }, at) => {
    const [first = '', ...rest] = (row[at] ?? '').split('\n');
    const options = { width: own - 2 * PAD, align, lineGap: 1.5 };
    doc.font(rest.length > 0 ? 'bold' : 'plain').text(first, x + PAD, y + PAD, options);
    if (rest.length > 0) doc.font('plain').text(rest.join('\n'), x + PAD, doc.y, options);
  });
  doc.rect(left, y + height, width, 0.5).fill(INK.line);
  doc.y = y + height + 0.5;
}
