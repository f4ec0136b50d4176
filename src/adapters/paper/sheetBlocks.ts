import type { Paper } from '../../app/letter.ts';
import { GAP, INK, PLAIN, space, type Look, type Mark, type Strip } from './sheetMark.ts';
import { clippedTo, lineHeight, wordsIn, type Column } from './sheetWords.ts';

type Block = Paper['blocks'][number];
type Table = Extract<Block, { kind: 'table' }>;
type Sums = Extract<Block, { kind: 'sums' }>;
type Text = Extract<Block, { kind: 'text' }>;

/** The room between the margins, in points. */
export type Room = Readonly<{ left: number; width: number }>;

/** A block as rows that are never cut in two. */
export function blockStrips(block: Block, room: Room): readonly Strip[] {
  const strips =
    block.kind === 'table'
      ? tableStrips(block, room)
      : block.kind === 'sums'
        ? sumStrips(block, room)
        : textStrips(block, room);
  return [...strips, space(GAP)];
}

const BOLD: Look = { ...PLAIN, face: 'bold' };
const DEEP: Look = { ...BOLD, colour: INK.deep };
const TITLE: Look = { face: 'bold', size: 8, colour: '#ffffff' };

/** Space around the words of a cell. */
const PAD = 4;
const TITLE_HEIGHT = 19;

/** The head is printed again on every page that a table goes on to. */
function tableStrips({ columns, rows }: Table, room: Room): readonly Strip[] {
  const placed = placedColumns(columns, room);
  const titles: readonly Mark[] = columns.map(({ title }, at) => {
    const { x, width, align } = placed[at] ?? NOWHERE;
    const text = clippedTo(title, TITLE, width);
    return { kind: 'words', x: align === 'right' ? x + width : x, y: 12.5, text, look: TITLE, align };
  });
  const bar: Mark = { kind: 'box', x: room.left, y: 0, width: room.width, height: TITLE_HEIGHT, colour: INK.deep };
  const head: Strip = { height: TITLE_HEIGHT, marks: [bar, ...titles] };
  const body = rows.map((row, at) => ({ ...rowStrip(row, placed, room, at % 2 === 1 ? INK.tint : null), head }));
  return [{ ...head, follows: body[0]?.height ?? 0 }, ...body];
}

const NOWHERE: Column = { x: 0, width: 0, align: 'left' };

function placedColumns(columns: Table['columns'], { left, width }: Room): readonly Column[] {
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  let x = left;
  return columns.map(({ share, align }) => {
    const column: Column = { x: x + PAD, width: (share / whole) * width - 2 * PAD, align };
    x += (share / whole) * width;
    return column;
  });
}

/** Of a cell of several lines the first is bold. */
function rowStrip(row: readonly string[], columns: readonly Column[], room: Room, tint: string | null): Strip {
  const cells = row.map((text, at) => {
    const column = columns[at] ?? NOWHERE;
    const [first = '', ...rest] = text.split('\n');
    if (rest.length === 0) return wordsIn(first, PLAIN, column, PAD);
    const top = wordsIn(first, BOLD, column, PAD);
    const below = wordsIn(rest.join('\n'), PLAIN, column, PAD + top.height);
    return { marks: [...top.marks, ...below.marks], height: top.height + below.height };
  });
  const height = Math.max(lineHeight(PLAIN), ...cells.map((cell) => cell.height)) + 2 * PAD;
  const { left: x, width } = room;
  const back: readonly Mark[] = tint === null ? [] : [{ kind: 'box', x, y: 0, width, height, colour: tint }];
  const line: Mark = { kind: 'box', x, y: height, width, height: 0.5, colour: INK.line };
  return { height: height + 0.5, marks: [...back, ...cells.flatMap(({ marks }) => marks), line] };
}

/** Sums stand under the table's last column, the strong ones under a line. */
function sumStrips({ rows }: Sums, { left, width }: Room): readonly Strip[] {
  const [x, wide] = [left + width * 0.4, width * 0.6];
  return rows.map(({ name, amount, weight }) => {
    const strong = weight === 'strong';
    const look = strong ? { ...DEEP, size: 11 } : PLAIN;
    const top = strong ? 6 : 2;
    const named = wordsIn(name, look, { x, width: wide * 0.64, align: 'left' }, top);
    const amounts = wordsIn(amount, look, { x: x + wide * 0.66, width: wide * 0.34 - PAD, align: 'right' }, top);
    const line: readonly Mark[] = strong ? [{ kind: 'box', x, y: 0, width: wide, height: 0.8, colour: INK.deep }] : [];
    const height = Math.max(named.height, amounts.height) + 2 * top;
    return { height, marks: [...line, ...named.marks, ...amounts.marks] };
  });
}

/** A heading stays with the line below it. */
function textStrips({ heading, lines }: Text, { left, width }: Room): readonly Strip[] {
  const column: Column = { x: left, width, align: 'left' };
  const body = lines.map((line): Strip => {
    const { marks, height } = wordsIn(line, PLAIN, column, 0);
    return { marks, height: height + 2 };
  });
  if (heading === '') return body;
  const { marks, height } = wordsIn(heading, DEEP, column, 0);
  return [{ marks, height: height + 3, follows: body[0]?.height ?? 0 }, ...body];
}
