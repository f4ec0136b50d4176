import { createRequire } from 'node:module';
import { Resvg, type ResvgRenderOptions } from '@resvg/resvg-js';
import { indexedPng } from './indexedPng.ts';

/** The SVG, which must cover its whole area, as a PNG of the same size, its text in DejaVu Sans, which comes with the program. */
export const pngOf = (svg: string): Uint8Array => indexedPng(new Resvg(svg, OPTIONS).render());

const fontFile = (name: string): string => createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

/** Without fonts by file the text would be silently blank. */
const OPTIONS: ResvgRenderOptions = {
  font: {
    loadSystemFonts: false,
    fontFiles: ['DejaVuSans', 'DejaVuSans-Bold'].map(fontFile),
    defaultFontFamily: 'DejaVu Sans',
  },
};
