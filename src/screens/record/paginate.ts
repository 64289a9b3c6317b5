/** Sheets of paper, filled line by line, so that lot and page x of y stand on each whatever the browser can do. Pure. */
import { cutText, linesOf } from './cell-lines.ts';

export type Paper = 'A4' | 'Letter';

/** Lines of text that fit a sheet between its head and its foot, at the size in which it is printed. */
const LINES: Readonly<Record<Paper, number>> = { A4: 56, Letter: 52 };

export type TableBlock = {
  readonly kind: 'table';
  readonly key: string;
  readonly title: string;
  readonly columns: readonly string[];
  /** How many characters fit a line of each column. */
  readonly widths: readonly number[];
  readonly rows: readonly { key: string; cells: readonly string[]; struck: boolean }[];
};
export type TextBlock = {
  readonly kind: 'text';
  readonly key: string;
  readonly title: string;
  readonly lines: readonly string[];
};
/** Pictures, three beside each other. */
export type PhotoBlock = {
  readonly kind: 'photos';
  readonly key: string;
  readonly title: string;
  readonly photos: readonly { key: string; sha256: string; alt: string; caption: string }[];
};
export type Block = TableBlock | TextBlock | PhotoBlock;

type Row = TableBlock['rows'][number];
type Item = { readonly height: number } & (
  | { readonly row: Row }
  | { readonly line: string }
  | { readonly photos: PhotoBlock['photos'] }
);

const TEXT_WIDTH = 96;
/** A row's own padding and rule count a third of a line. */
const ROW_EXTRA_LINES = 0.32;
const LINE_EXTRA_LINES = 0.1;
const TITLE_LINES = 2.2;
const HEAD_LINES = 1.5;
const PHOTOS_ACROSS = 3;
/** A picture as high as it is wide, and three lines below it. */
const PHOTO_LINES = 18;

/** The tallest cell decides. */
export function rowLines(cells: readonly string[], widths: readonly number[]): number {
  return Math.max(...cells.map((cell, at) => linesOf(cell, widths[at] ?? TEXT_WIDTH))) + ROW_EXTRA_LINES;
}

/** A row that no sheet could hold is cut across, and goes on in the next one. */
function rowsOf(row: Row, widths: readonly number[], most: number): Row[] {
  if (rowLines(row.cells, widths) <= most) return [row];
  const cut = row.cells.map((cell, at) =>
    cutText(cell, { width: widths[at] ?? TEXT_WIDTH, most: Math.floor(most - ROW_EXTRA_LINES) }),
  );
  const rest = {
    key: `${row.key}+`,
    cells: cut.map(([, after]) => after),
    // Only the first line of what was struck is drawn through, wherever it ends.
    struck: row.struck && cut.every(([before]) => !before.includes('\n')),
  };
  return [{ ...row, cells: cut.map(([before]) => before) }, ...rowsOf(rest, widths, most)];
}

function textLines(line: string, most: number): string[] {
  const [before, after] = cutText(line, { width: TEXT_WIDTH, most: Math.floor(most) });
  return after === '' ? [before] : [before, ...textLines(after, most)];
}

function itemsOf(block: Block, most: number): Item[] {
  switch (block.kind) {
    case 'table':
      return block.rows
        .flatMap((row) => rowsOf(row, block.widths, most))
        .map((row) => ({ row, height: rowLines(row.cells, block.widths) }));
    case 'text':
      return block.lines
        .flatMap((line) => textLines(line, most))
        .map((line) => ({ line, height: linesOf(line, TEXT_WIDTH) + LINE_EXTRA_LINES }));
    case 'photos': {
      const { photos } = block;
      return Array.from({ length: Math.ceil(photos.length / PHOTOS_ACROSS) }, (_, at) => ({
        photos: photos.slice(at * PHOTOS_ACROSS, (at + 1) * PHOTOS_ACROSS),
        height: PHOTO_LINES,
      }));
    }
  }
}

function partOf(block: Block, key: string, items: readonly Item[]): Block {
  switch (block.kind) {
    case 'table':
      return { ...block, key, rows: items.flatMap((item) => ('row' in item ? item.row : [])) };
    case 'text':
      return { ...block, key, lines: items.flatMap((item) => ('line' in item ? item.line : [])) };
    case 'photos':
      return { ...block, key, photos: items.flatMap((item) => ('photos' in item ? item.photos : [])) };
  }
}

/**
 * Blocks parted into sheets. A table is parted between rows, with its head repeated; a text between its lines. Nothing is
 * lost, nothing printed twice, and what is higher than a sheet goes on on the next one.
 */
export function paginate(blocks: readonly Block[], paper: Paper): Block[][] {
  const most = LINES[paper];
  const sheets: Block[][] = [[]];
  let used = 0;
  const room = (need: number) => used === 0 || used + need <= most;
  const turn = () => {
    sheets.push([]);
    used = 0;
  };
  for (const block of blocks) {
    const opening = TITLE_LINES + (block.kind === 'table' ? HEAD_LINES : 0);
    const items = itemsOf(block, most - opening);
    let part: Item[] = [];
    const put = () => {
      if (part.length > 0) sheets.at(-1)?.push(partOf(block, `${block.key}-${sheets.length}`, part));
      part = [];
    };
    if (!room(opening + (items[0]?.height ?? 0))) turn();
    used += opening;
    for (const item of items) {
      if (part.length > 0 && !room(item.height)) {
        put();
        turn();
        used += opening;
      }
      part.push(item);
      used += item.height;
    }
    put();
  }
  return sheets.filter((sheet) => sheet.length > 0);
}
