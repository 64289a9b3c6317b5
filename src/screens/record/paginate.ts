/** Sheets of paper, filled line by line, so that lot and page x of y stand on each whatever the browser can do. Pure. */

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
export type Block = TableBlock | TextBlock;

type Item = {
  readonly row: TableBlock['rows'][number] | null;
  readonly line: string | null;
  readonly height: number;
};

const TEXT_WIDTH = 96;

function linesOf(text: string, width: number): number {
  return text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / width)), 0);
}

/** The tallest cell decides; a row's own padding and rule count a third of a line. */
export function rowLines(cells: readonly string[], widths: readonly number[]): number {
  return Math.max(...cells.map((cell, at) => linesOf(cell, widths[at] ?? TEXT_WIDTH))) + 0.32;
}

const TITLE_LINES = 2.2;
const HEAD_LINES = 1.5;

/**
 * Blocks parted into sheets. A table is parted between rows, with its head repeated; a text between its lines. No row is lost,
 * none is printed twice, and a row higher than a sheet gets one of its own.
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
    const items: Item[] =
      block.kind === 'table'
        ? block.rows.map((row) => ({ row, line: null, height: rowLines(row.cells, block.widths) }))
        : block.lines.map((line) => ({ row: null, line, height: linesOf(line, TEXT_WIDTH) + 0.1 }));
    const opening = TITLE_LINES + (block.kind === 'table' ? HEAD_LINES : 0);
    let part: Item[] = [];
    const put = () => {
      if (part.length === 0) return;
      const key = `${block.key}-${sheets.length}`;
      const piece: Block =
        block.kind === 'table'
          ? { ...block, key, rows: part.flatMap(({ row }) => row ?? []) }
          : { ...block, key, lines: part.flatMap(({ line }) => line ?? []) };
      sheets.at(-1)?.push(piece);
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
