/** What a step looks like: a tint, and a pattern in a darker colour, so that it is known without seeing colours. */
type Look = Readonly<{ tint: string; line: string; tile: number; marks: string }>;

/** The fill of a step's blocks, to be used with `patternDefinitions`. */
export const fillOf = (step: string): string => `url(#step-${step in LOOKS ? step : 'other'})`;

export const tintOf = (step: string): string => (LOOKS[step] ?? OTHER).tint;

/** Definitions that the fills refer to. */
export const patternDefinitions = (): string =>
  [...Object.entries(LOOKS), ['other', OTHER] as const].map(([step, look]) => pattern(`step-${step}`, look)).join('') +
  pattern('closed', { tint: '#e6eaed', line: '#d0d7dc', tile: 16, marks: 'M-4 4L4-4M0 16L16 0M12 20L20 12' });

const OTHER: Look = { tint: '#f1f1f1', line: '#9a9a9a', tile: 16, marks: '' };

const LOOKS: Readonly<Record<string, Look>> = {
  pour: { tint: '#ffe2b8', line: '#d9861a', tile: 18, marks: 'M-4 4L4-4M0 18L18 0M14 22L22 14' },
  trim: { tint: '#eceff1', line: '#7d8990', tile: 9, marks: 'M0 4.5H9' },
  paint: { tint: '#d3efd0', line: '#2f8f3a', tile: 18, marks: 'M4.5 4.5h.01M13.5 13.5h.01' },
  'clear-eyes': { tint: '#cdeeee', line: '#1c8a8f', tile: 22, marks: 'M6 11A5 5 0 1 1 16 11A5 5 0 1 1 6 11Z' },
  bake: { tint: '#ffd6cf', line: '#c8402c', tile: 18, marks: 'M0 0L18 18M0 18L18 0' },
  guard: { tint: '#d5e3fb', line: '#2f62b8', tile: 14, marks: 'M7 0V14' },
  dress: { tint: '#ecdaf6', line: '#8440a8', tile: 20, marks: 'M0 5L5 0L15 10L20 5M0 15L5 10L15 20L20 15' },
  pack: { tint: '#ecdfd0', line: '#80592f', tile: 18, marks: 'M0 9H18M9 0V18' },
};

const pattern = (id: string, { tint, line, tile, marks }: Look): string =>
  `<pattern id="${id}" width="${tile}" height="${tile}" patternUnits="userSpaceOnUse"><rect width="${tile}" height="${tile}" fill="${tint}"/><path d="${marks}" fill="none" stroke="${line}" stroke-width="${marks.includes('h.01') ? 6 : 2.6}" stroke-linecap="round" stroke-opacity="0.75"/></pattern>`;
