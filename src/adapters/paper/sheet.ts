import { createRequire } from 'node:module';
import type { Paper } from '../../app/letter.ts';
import { sheetPages, type Page } from './sheetLayout.ts';
import type { Mark } from './sheetMark.ts';

/** A paper as a PDF. Its letters are DejaVu Sans, which comes with the program.
 *  `packed` makes it small; `plain` leaves its insides readable. */
export async function sheetPdf(paper: Paper, insides: 'packed' | 'plain' = 'packed'): Promise<Uint8Array> {
  // Loaded when the first paper is printed: it takes a fifth of a second and thirty megabytes.
  const { default: Pdf } = await import('pdfkit');
  const doc = new Pdf({
    autoFirstPage: false,
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
  for (const page of sheetPages(paper)) printPage(doc, page);
  doc.end();
  return finished;
}

const fontFile = (name: string): string => createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

function printPage(doc: PDFKit.PDFDocument, { width, height, marks }: Page): void {
  doc.addPage({ size: [width, height], margin: 0 });
  for (const mark of marks) printMark(doc, mark);
}

function printMark(doc: PDFKit.PDFDocument, mark: Mark): void {
  if (mark.kind === 'box') {
    doc.rect(mark.x, mark.y, mark.width, mark.height).fill(mark.colour);
    return;
  }
  const { text, look, align, y } = mark;
  if (text === '') return;
  doc.font(look.face).fontSize(look.size).fillColor(look.colour);
  const x = align === 'right' ? mark.x - doc.widthOfString(text) : mark.x;
  doc.text(text, x, y, { lineBreak: false, baseline: 'alphabetic' });
}
