import { describe, expect, test } from 'vitest';
import type { Paper } from '../../../src/app/letter.ts';
import { textWidth } from '../../../src/adapters/paper/letterWidths.ts';
import { longSheet, sheetPages, type Page } from '../../../src/adapters/paper/sheetLayout.ts';
import type { Mark } from '../../../src/adapters/paper/sheetMark.ts';
import { sheetPng, sheetSvg } from '../../../src/adapters/paper/sheetPicture.ts';
import { PAPERS, type PaperKind } from '../../../src/domain/desk/business.ts';
import { card } from '../../../src/domain/desk/turn.ts';
import { LANGUAGES, type Language } from '../../../src/domain/shop/words.ts';
import { write } from '../../../src/wording/write.ts';
import { order, shop } from '../../wording/samples.ts';
import { rasterOf } from './raster.ts';

const ADDRESS = [
  'Maximiliana Featherstonehaugh-Wolverhampton III',
  `c/o ${'Verylongname'.repeat(9)}`,
  '12345 Northwest Old Military Road, Building 7, Apartment 1204B',
  'Duluth, MN 55801-1234',
].join('\n');
const line = order.lines[0] ?? expect.fail();
const [priced] = order.money.lines;
const long = {
  ...order,
  address: ADDRESS,
  lines: Array.from({ length: 10 }, () => line),
  money: { ...order.money, lines: Array.from({ length: 10 }, () => priced ?? expect.fail()) },
  ledger: [{ at: order.acceptedAt, kind: 'paid' as const, cents: 3000, why: '' }],
};

function paper(kind: PaperKind, language: Language, size: Paper['size']): Paper {
  const about = kind === 'price-list' ? null : long;
  const say = { code: 'paper', kind, order: about, buyer: 'Sam Fisher', day: '2026-11-25' } as const;
  return { ...(write(shop, language, card(7, say)).paper ?? expect.fail()), size };
}

const ALL = PAPERS.flatMap((kind) =>
  LANGUAGES.flatMap((language) => (['letter', 'a4'] as const).map((size) => [kind, language, size] as const)),
);

type Words = Extract<Mark, { kind: 'words' }>;
const wordsOn = ({ marks }: Pick<Page, 'marks'>): readonly Words[] =>
  marks.flatMap((mark) => (mark.kind === 'words' && mark.text !== '' ? [mark] : []));

/** The ink's box: letters stand on their baseline, a little of them hangs below it. */
function boxOf({ x, y, text, look, align }: Words) {
  const width = textWidth(text, look.face) * look.size;
  const left = align === 'right' ? x - width : x;
  return { left, right: left + width, top: y - look.size * 0.76, bottom: y + look.size * 0.24 };
}

const overlap = (one: ReturnType<typeof boxOf>, other: ReturnType<typeof boxOf>): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;

describe('a paper with ten lines and a long address', () => {
  test.each(ALL)('the %s in %s on %s: nothing overlaps, and nothing is past the margins', (...of) => {
    for (const page of [...sheetPages(paper(...of)), longSheet(paper(...of))]) {
      const words = wordsOn(page);
      const boxes = words.map(boxOf);
      boxes.forEach((box, at) => {
        const { text } = words[at] ?? {};
        expect(box.left, text).toBeGreaterThanOrEqual(54);
        expect(box.right, text).toBeLessThanOrEqual(page.width - 54 + 0.01);
        expect(box.bottom, text).toBeLessThanOrEqual(page.height - 18);
        boxes
          .slice(at + 1)
          .forEach((other, more) =>
            expect(overlap(box, other), `${text} and ${words[at + 1 + more]?.text}`).toBe(false),
          );
      });
    }
  });

  test.each(ALL)('the %s in %s on %s: the picture says all that the pages say, and in their order', (...of) => {
    const pages = sheetPages(paper(...of));
    const said = (page: Page): readonly string[] => wordsOn(page).map(({ text }) => text);
    const [first = [], ...more] = pages.map(said);
    const onPages = new Set([...first, ...more.flat()].filter((text) => !/ \d+ (of|de) \d+$/.test(text)));
    expect(new Set(said(longSheet(paper(...of))))).toEqual(onPages);
    const svg = sheetSvg(paper(...of));
    expect(svg).toContain('Kettle Bay Jigs');
    expect(svg).not.toMatch(/undefined|NaN/);
  });

  test('is a picture twice as many pixels wide as its page has points, white at its edges', () => {
    for (const [size, width] of [
      ['letter', 1224],
      ['a4', 1191],
    ] as const) {
      const image = rasterOf(sheetPng(paper('receipt', 'en', size)));
      expect(image.width).toBe(width);
      const { pixels } = image;
      for (const at of [0, width - 1, width * (image.height - 1), width * image.height - 1])
        expect([...pixels.subarray(at * 4, at * 4 + 4)]).toEqual([255, 255, 255, 255]);
    }
  });
});
