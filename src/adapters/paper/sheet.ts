import { createRequire } from 'node:module';
import type { Paper } from '../../app/letter.ts';
import { printTable } from './sheetTable.ts';
import { GAP, INK, room, type Page } from './sheetPage.ts';

/** A paper as a PDF of one layout: head, facts, blocks, and a foot on every page. Its letters are DejaVu Sans, which comes with the program.
 *  `packed` makes it small; `plain` leaves its insides readable. */
export async function sheetPdf(paper: Paper, insides: 'packed' | 'plain' = 'packed'): Promise<Uint8Array> {
  // Loaded when the first paper is printed: it takes a fifth of a second and thirty megabytes.
  const { default: Pdf } = await import('pdfkit');
  const doc = new Pdf({
    size: paper.size === 'a4' ? 'A4' : 'LETTER',
    margins: { top: 54, left: 54, right: 54, bottom: 72 },
    bufferPages: true,
    compress: insides === 'packed',
    info: { Title: paper.title, Author: paper.shop, Creator: 'jigwright' },
    font: fontFile('DejaVuSans'),
  });
  const chunks: Uint8Array[] = [];
  const finished = new Promise<Uint8Array>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
  doc.registerFont('plain', fontFile('DejaVuSans'));
  doc.registerFont('bold', fontFile('DejaVuSans-Bold'));
  printHead(doc, paper);
  printFacts(doc, paper.facts);
  for (const block of paper.blocks) printBlock(doc, block);
  printFeet(doc, paper);
  doc.end();
  return finished;
}

const fontFile = (name: string): string => createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

/** The shop on the left, what the paper is on the right, a line under both. */
function printHead(doc: Page, { shop, title }: Paper): void {
  const { left, width, top } = room(doc);
  doc
    .font('bold')
    .fontSize(19)
    .fillColor(INK.deep)
    .text(shop, left, top, { width: width * 0.62 });
  const under = doc.y;
  doc
    .font('plain')
    .fontSize(11)
    .fillColor(INK.soft)
    .text(title.toLocaleUpperCase(), left + width * 0.5, top + 7, {
      width: width * 0.5 - 2,
      align: 'right',
      characterSpacing: 1.5,
    });
  const y = Math.max(under, doc.y) + 8;
  doc.rect(left, y, width, 2).fill(INK.deep);
  doc.y = y + 2 + GAP;
}

/** Facts by threes, each under its small name; the row is as high as its highest. */
function printFacts(doc: Page, facts: Paper['facts']): void {
  const { left, width } = room(doc);
  const each = width / FACTS_A_ROW;
  for (let at = 0; at < facts.length; at += FACTS_A_ROW) {
    const top = doc.y;
    const ends = facts.slice(at, at + FACTS_A_ROW).map(({ name, text }, column) => {
      const x = left + column * each;
      doc
        .font('plain')
        .fontSize(7.5)
        .fillColor(INK.soft)
        .text(name.toLocaleUpperCase(), x, top, {
          width: each - GAP,
          characterSpacing: 0.6,
        });
      doc
        .font('plain')
        .fontSize(10)
        .fillColor(INK.text)
        .text(text, x, doc.y + 2, { width: each - GAP, lineGap: 1.5 });
      return doc.y;
    });
    doc.y = Math.max(top, ...ends) + 12;
  }
  doc.y += 6;
}

const FACTS_A_ROW = 3;

type Block = Paper['blocks'][number];

function printBlock(doc: Page, block: Block): void {
  if (block.kind === 'table') printTable(doc, block);
  else if (block.kind === 'sums') printSums(doc, block.rows);
  else printText(doc, block);
  doc.y += GAP;
}

/** Sums stand under the table's last column, the strong ones between lines. */
function printSums(doc: Page, rows: Extract<Block, { kind: 'sums' }>['rows']): void {
  const { left, width } = room(doc);
  const [x, w] = [left + width * 0.4, width * 0.6];
  for (const { name, amount, weight } of rows) {
    if (doc.y + 24 > room(doc).bottom) doc.addPage();
    const strong = weight === 'strong';
    if (strong) doc.rect(x, doc.y, w, 0.8).fill(INK.deep);
    const y = doc.y + (strong ? 6 : 2);
    doc
      .font(strong ? 'bold' : 'plain')
      .fontSize(strong ? 11 : 9.5)
      .fillColor(strong ? INK.deep : INK.text);
    doc.text(name, x, y, { width: w * 0.68 });
    const under = doc.y;
    doc.text(amount, x + w * 0.6, y, { width: w * 0.4 - 6, align: 'right' });
    doc.y = Math.max(under, doc.y) + (strong ? 6 : 2);
  }
}

/** A heading and its lines; the last line of a page takes its heading along. */
function printText(doc: Page, { heading, lines }: Extract<Block, { kind: 'text' }>): void {
  const { left, width, bottom } = room(doc);
  if (doc.y + 44 > bottom) doc.addPage();
  if (heading !== '') {
    doc.font('bold').fontSize(9.5).fillColor(INK.deep).text(heading, left, doc.y, { width });
    doc.y += 3;
  }
  for (const line of lines) {
    doc.font('plain').fontSize(9.5).fillColor(INK.text).text(line, left, doc.y, { width, lineGap: 2 });
    doc.y += 2;
  }
}

/** What stands at the foot of each page, and which page it is. */
function printFeet(doc: Page, { foot, pages }: Paper): void {
  const { start, count } = doc.bufferedPageRange();
  for (let at = start; at < start + count; at += 1) {
    doc.switchToPage(at);
    // The foot stands below the margin, where text would otherwise start a new page.
    doc.page.margins.bottom = 0;
    const { left, width } = room(doc);
    const y = doc.page.height - 48;
    doc.rect(left, y - 8, width, 0.5).fill(INK.line);
    doc.font('plain').fontSize(7.5).fillColor(INK.soft);
    doc.text(foot, left, y, { width: width * 0.78, height: 22, ellipsis: true, lineGap: 1 });
    const number = pages.replace('{page}', String(at - start + 1)).replace('{of}', String(count));
    doc.text(number, left + width * 0.8, y, { width: width * 0.2, align: 'right' });
  }
}
