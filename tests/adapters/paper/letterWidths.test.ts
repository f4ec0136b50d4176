import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';
import { expect, test } from 'vitest';
import { textWidth, type Face } from '../../../src/adapters/paper/letterWidths.ts';

const fontFiles = ['DejaVuSans', 'DejaVuSans-Bold'].map((name) =>
  createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`),
);

/** How wide the ink of a text is, in ems. */
function inkWidth(text: string, face: Face): number {
  const weight = face === 'bold' ? ' font-weight="bold"' : '';
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="200"><text x="9" y="99" font-size="100" font-family="DejaVu Sans"${weight}>${text}</text></svg>`;
  const font = { loadSystemFonts: false, fontFiles, defaultFontFamily: 'DejaVu Sans' };
  return (new Resvg(svg, { font }).innerBBox()?.width ?? Number.NaN) / 100;
}

const TEXTS = [
  'Hook 5/0, 60° eye · guard: black',
  'WWWWMMMM@@@@',
  'ililil|||....',
  'Cabeza de hongo, piñón, más',
  '0123456789 3/8 oz × 25',
];

test.each(TEXTS.flatMap((text) => [[text, 'plain'] as const, [text, 'bold'] as const]))(
  '"%s" in the %s face is never wider than reckoned, and not much narrower',
  (text, face) => {
    expect(textWidth(text, face)).toBeGreaterThanOrEqual(inkWidth(text, face));
    expect(textWidth(text, face)).toBeLessThan(inkWidth(text, face) * 1.12 + 0.1);
  },
);
