import type { Paper } from '../../app/letter.ts';
import { blockStrips, type Room } from './sheetBlocks.ts';
import { GAP, INK, lowered, PLAIN, space, type Look, type Mark, type Strip } from './sheetMark.ts';
import { clippedTo, wordsIn, wrapped } from './sheetWords.ts';

/** A page with everything that is on it; lengths in points. */
export type Page = Readonly<{ width: number; height: number; marks: readonly Mark[] }>;

/** A paper laid out on pages of its size. */
export function sheetPages(paper: Paper): readonly Page[] {
  const { width, height } = SIZES[paper.size];
  const pages = paged(stripsOf(paper, width), TOP, height - BOTTOM);
  return pages.map(({ marks }, at) => ({
    width,
    height,
    marks: [...marks, ...footMarks(paper, width, height - BOTTOM + FOOT_GAP, { at, of: pages.length })],
  }));
}

/** The same paper on one page as long as it takes, for a phone's screen. */
export function longSheet(paper: Paper): Page {
  const { width } = SIZES[paper.size];
  const [page = { marks: [], end: TOP }] = paged(stripsOf(paper, width), TOP, Infinity);
  const height = Math.ceil(page.end + BOTTOM);
  return { width, height, marks: [...page.marks, ...footMarks(paper, width, page.end + FOOT_GAP, null)] };
}

/** ISO 216 A4, 210 by 297 mm; ANSI/ASME Y14.1 size A, 8½ by 11 inches. */
const SIZES = { letter: { width: 612, height: 792 }, a4: { width: 595.28, height: 841.89 } } as const;

const SIDE = 54;
const TOP = 54;
const BOTTOM = 72;
const FOOT_GAP = 16;

const stripsOf = (paper: Paper, width: number): readonly Strip[] => {
  const room: Room = { left: SIDE, width: width - 2 * SIDE };
  return [
    headStrip(paper, room),
    ...factStrips(paper.facts, room),
    space(6),
    ...paper.blocks.flatMap((block) => blockStrips(block, room)),
  ];
};

type Filled = Readonly<{ marks: readonly Mark[]; end: number }>;

/** Strips one under the other; one that does not fit begins the next page. */
function paged(strips: readonly Strip[], top: number, bottom: number): readonly Filled[] {
  const pages: { marks: Mark[]; end: number }[] = [{ marks: [], end: top }];
  const put = ({ marks, height }: Strip): void => {
    const page = pages.at(-1);
    if (page === undefined) return;
    page.marks.push(...lowered(marks, page.end));
    page.end += height;
  };
  for (const strip of strips) {
    const end = pages.at(-1)?.end ?? top;
    const isFull = end > top && strip.marks.length > 0 && end + strip.height + (strip.follows ?? 0) > bottom;
    if (isFull) {
      pages.push({ marks: [], end: top });
      if (strip.head) put(strip.head);
    }
    put(strip);
  }
  return pages;
}

const SHOP: Look = { face: 'bold', size: 19, colour: INK.deep };
const TITLE: Look = { face: 'plain', size: 12, colour: INK.soft };
const NAME: Look = { face: 'plain', size: 7.5, colour: INK.soft };
const FACT: Look = { ...PLAIN, size: 10 };
const FOOT: Look = { face: 'plain', size: 7.5, colour: INK.soft };

/** The shop on the left, what the paper is on the right, a line under both. */
function headStrip({ shop, title }: Paper, { left, width }: Room): Strip {
  const named = wordsIn(shop, SHOP, { x: left, width: width * 0.6, align: 'left' }, 0);
  const column = { x: left + width * 0.62, width: width * 0.38, align: 'right' } as const;
  const titled = wordsIn(title.toLocaleUpperCase(), TITLE, column, 6);
  const y = Math.max(named.height, titled.height + 6) + 6;
  const line: Mark = { kind: 'box', x: left, y, width, height: 2, colour: INK.deep };
  return { height: y + 2 + GAP, marks: [...named.marks, ...titled.marks, line] };
}

const FACTS_A_ROW = 3;

/** Facts by threes, each under its small name; the row is as high as its highest. */
function factStrips(facts: Paper['facts'], { left, width }: Room): readonly Strip[] {
  const each = width / FACTS_A_ROW;
  const rows = Array.from({ length: Math.ceil(facts.length / FACTS_A_ROW) }, (_, at) =>
    facts.slice(at * FACTS_A_ROW, (at + 1) * FACTS_A_ROW),
  );
  return rows.map((row) => {
    const cells = row.map(({ name, text }, at) => {
      const column = { x: left + at * each, width: each - GAP, align: 'left' } as const;
      const small = wordsIn(name.toLocaleUpperCase(), NAME, column, 0);
      const said = wordsIn(text, FACT, column, small.height + 1);
      return { marks: [...small.marks, ...said.marks], height: small.height + 1 + said.height };
    });
    return {
      height: Math.max(...cells.map((cell) => cell.height)) + 11,
      marks: cells.flatMap(({ marks }) => marks),
    };
  });
}

const FOOT_LINES = 2;

/** What stands at the foot of each page, and which page it is. */
function footMarks(
  { foot, pages }: Paper,
  width: number,
  y: number,
  number: Readonly<{ at: number; of: number }> | null,
): readonly Mark[] {
  const inside = width - 2 * SIDE;
  const lines = wrapped(foot, FOOT, inside * 0.78);
  const shown = lines.slice(0, FOOT_LINES);
  // What does not fit on the last line is cut there.
  if (lines.length > FOOT_LINES)
    shown[FOOT_LINES - 1] = clippedTo(lines.slice(FOOT_LINES - 1).join(' '), FOOT, inside * 0.78);
  const column = { x: SIDE, width: inside * 0.78, align: 'left' } as const;
  const said = wordsIn(shown.join('\n'), FOOT, column, y + 8).marks;
  const line: Mark = { kind: 'box', x: SIDE, y, width: inside, height: 0.5, colour: INK.line };
  if (number === null) return [line, ...said];
  const text = pages.replace('{page}', String(number.at + 1)).replace('{of}', String(number.of));
  const right = { x: SIDE + inside * 0.8, width: inside * 0.2, align: 'right' } as const;
  return [line, ...said, ...wordsIn(text, FOOT, right, y + 8).marks];
}
