/** A logger's text as rows of cells, by a parser that knows quotation marks, in steps that leave the page alive. */
import type { Parser } from 'papaparse';
import { type FoundLayout, findLayout, type Layout, type LayoutProblem, type Rows } from './logger-layout.ts';

export type TableRefusal = {
  readonly row: number;
  readonly code: 'open-quote' | 'bad-quote' | 'too-many-rows';
};

export const MOST_LOGGER_ROWS = 250_000;
const STEP_CHARS = 64 * 1024;
const SAMPLE_CHARS = 64 * 1024;
const SAMPLE_ROWS = 400;

/** The rarer first: a comma or a space may as well stand inside a cell. */
const SEPARATORS = ['\t', ';', '|', '\u001f', '^', '~', ',', ' '];

export type ParsedText = { readonly text: string; readonly separator: string; readonly layout: Layout };
export type FoundTable = ({ ok: true } & ParsedText) | { ok: false; code: LayoutProblem };

/** The first separator under which the text is a table of readings. */
export async function findTable(whole: string): Promise<FoundTable> {
  const { default: papa } = await import('papaparse');
  const hint = /^"?sep=(.)"?\n/i.exec(whole);
  const separators = hint?.[1] ? [hint[1]] : SEPARATORS;
  const problems: LayoutProblem[] = [];
  for (const separator of separators) {
    const text = separator === ' ' ? evenly(whole) : whole;
    if (!text.includes(separator)) continue;
    const { data } = papa.parse<string[]>(sampleOf(text), {
      delimiter: separator,
      newline: '\n',
      preview: SAMPLE_ROWS,
    });
    const found: FoundLayout = findLayout(data, separator);
    if (found.ok) return { ok: true, text, separator, layout: found.layout };
    problems.push(found.code);
  }
  return { ok: false, code: problems.find((code) => code !== 'no-times') ?? 'no-times' };
}

/** Columns made even by spaces. */
function evenly(text: string): string {
  return text.replace(/ +/g, ' ').replace(/^ | $/gm, '');
}

function sampleOf(text: string): string {
  if (text.length <= SAMPLE_CHARS) return text;
  return text.slice(0, text.lastIndexOf('\n', SAMPLE_CHARS));
}

type ParserResult = { data: string[][]; errors: { code: string; row?: number }[]; meta: { cursor: number } };

export type Step =
  | { readonly rows: Rows; readonly doneFraction: number; readonly refusal?: never }
  | { readonly refusal: TableRefusal };

/** Gives the rows step by step, with the share of the text that is done. */
export async function* rowsOf({ text, separator }: ParsedText): AsyncGenerator<Step> {
  if (linesOf(text) > MOST_LOGGER_ROWS)
    return yield { refusal: { row: MOST_LOGGER_ROWS + 1, code: 'too-many-rows' } };
  const { default: papa } = await import('papaparse');
  const parser: Parser = new papa.Parser({ delimiter: separator, newline: '\n' });
  let start = 0;
  let stepChars = STEP_CHARS;
  let row = 0;
  while (start < text.length) {
    const last = start + stepChars >= text.length;
    const { data, errors, meta }: ParserResult = parser.parse(text.slice(start, start + stepChars), 0, !last);
    const error = errors.find((each) => last || (each.row ?? 0) < data.length);
    if (error)
      return yield {
        refusal: {
          row: row + (error.row ?? 0) + 1,
          code: error.code === 'MissingQuotes' ? 'open-quote' : 'bad-quote',
        },
      };
    // A row that did not end within the step is read again with the next, in a step of twice the size.
    stepChars = meta.cursor === 0 ? stepChars * 2 : STEP_CHARS;
    start = last ? text.length : start + meta.cursor;
    row += data.length;
    yield { rows: data, doneFraction: start / text.length };
  }
}

function linesOf(text: string): number {
  let count = 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}
