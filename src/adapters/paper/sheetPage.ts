/** The document that is printed on. */
export type Page = PDFKit.PDFDocument;

/** The colours of print: dark enough for any printer. */
export const INK = { deep: '#17404f', text: '#1f2428', soft: '#5b6770', line: '#c9d1d6', tint: '#eef3f5' } as const;

/** Between two parts, in points. */
export const GAP = 14;

/** The part of the page inside its margins, in points from its upper left corner. */
export function room(doc: Page): Readonly<{ left: number; width: number; top: number; bottom: number }> {
  const { width, height, margins } = doc.page;
  return {
    left: margins.left,
    width: width - margins.left - margins.right,
    top: margins.top,
    bottom: height - Math.max(margins.bottom, 72),
  };
}
