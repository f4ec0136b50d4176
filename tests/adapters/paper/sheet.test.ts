import { describe, expect, test } from 'vitest';
import { sheetPdf } from '../../../src/adapters/paper/sheet.ts';
import type { Paper } from '../../../src/app/letter.ts';
import type { PaperKind } from '../../../src/domain/desk/business.ts';
import { PAPERS } from '../../../src/domain/desk/business.ts';
import { card } from '../../../src/domain/desk/turn.ts';
import { LANGUAGES, type Language } from '../../../src/domain/shop/words.ts';
import { write } from '../../../src/wording/write.ts';
import { order, shop } from '../../wording/samples.ts';
import { pdfText } from './pdfText.ts';

const paid = { ...order, ledger: [{ at: order.acceptedAt, kind: 'paid' as const, cents: 3000, why: '' }] };

function paper(kind: PaperKind, language: Language = 'en'): Paper {
  const about = kind === 'price-list' ? null : paid;
  const letter = write(
    shop,
    language,
    card(7, { code: 'paper', kind, order: about, buyer: 'Sam Fisher', day: '2026-11-25' }),
  );
  if (letter.paper === undefined) throw new Error('There is no paper.');
  return letter.paper;
}

const printed = async (of: Paper): Promise<readonly string[]> => pdfText(await sheetPdf(of, 'plain'));

/** The words of a page, its lines joined as they were broken. */
const joined = (pages: readonly string[]): string => pages.join('\n').replaceAll(/\s+/g, ' ');

/** Without spaces, for a line may break where there is none. */
const unspaced = (text: string): string => text.replaceAll(/\s+/g, '');

describe('papers', () => {
  test.each(PAPERS.flatMap((kind) => LANGUAGES.map((language) => [kind, language] as const)))(
    'the %s in %s has all its words on it',
    async (kind, language) => {
      const sheet = paper(kind, language);
      const text = joined(await printed(sheet));
      const words = [
        sheet.shop,
        sheet.title.toLocaleUpperCase(),
        ...sheet.facts.flatMap(({ text: fact }) => fact.split('\n')),
        ...sheet.blocks.flatMap((block) => {
          if (block.kind === 'table') return [...block.columns.map(({ title }) => title), ...block.rows.flat()];
          return block.kind === 'sums' ? block.rows.flatMap(({ name, amount }) => [name, amount]) : block.lines;
        }),
      ];
      for (const word of words) expect(unspaced(text)).toContain(unspaced(word));
      expect(text).not.toMatch(/\?\?|undefined|NaN/);
    },
  );

  test('a receipt adds up to the cent', async () => {
    const [, money] = paper('receipt').blocks;
    const cents = (text: string): number => Math.round(Number(text.replaceAll(/[^\d.-]/g, '')) * 100);
    const table = paper('receipt').blocks[0];
    if (table?.kind !== 'table' || money?.kind !== 'sums') throw new Error('The receipt has other blocks.');
    const lines = table.rows.reduce((sum, row) => sum + cents(row.at(-1) ?? ''), 0);
    const at = money.rows.findIndex(({ name }) => name === 'Total');
    const added = money.rows.slice(0, at).reduce((sum, { amount }) => sum + cents(amount), 0);
    expect(lines + added).toBe(cents(money.rows[at]?.amount ?? ''));
    expect(cents(money.rows[at]?.amount ?? '')).toBe(order.money.total);
  });

  test('a packing slip says that there is lead in it, and no price', async () => {
    const text = joined(await printed(paper('packing-slip')));
    expect(text).toContain('Contains lead. Wash hands after handling.');
    expect(text).not.toContain('$');
  });

  test.each([
    ['letter', 612, 792],
    ['a4', 595.28, 841.89],
  ] as const)('%s paper is %d by %d points', async (size, width, height) => {
    const source = Buffer.from(await sheetPdf({ ...paper('receipt'), size }, 'plain')).toString('latin1');
    expect(source).toContain(`/MediaBox [0 0 ${width} ${height}]`);
  });

  test('a long order goes on to a next page with the table’s head again, and no line is lost', async () => {
    const sheet = paper('packing-slip');
    const [table, ...rest] = sheet.blocks;
    if (table?.kind !== 'table') throw new Error('The slip begins with its table.');
    const rows = Array.from({ length: 60 }, (_, at) => [`Head number ${at + 1}\nplain`, '5', '☐']);
    const pages = await printed({ ...sheet, blocks: [{ ...table, rows }, ...rest] });
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages.slice(0, -1)) expect(page).toContain('Packed');
    for (let at = 1; at <= 60; at += 1) expect(joined(pages)).toContain(`Head number ${at} `);
    expect(pages[1]).toContain(`Page 2 of ${pages.length}`);
  });
});
