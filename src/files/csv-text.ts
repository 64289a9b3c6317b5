/** Cells as a spreadsheet reads them (RFC 4180), and never as it would run them. */

export type CsvCell = string | number | boolean | null;

export type CsvStyle = {
  /** `,` writes numbers as 2,5 and parts cells by `;`, as spreadsheets do where the comma is the decimal mark. */
  readonly decimal: '.' | ',';
  /** Some spreadsheets take a file for UTF-8 only if it begins with this mark. */
  readonly byteOrderMark: boolean;
};

/** What makes a spreadsheet take a text for a formula, the full-width forms of the same signs too. */
const RUNS = new Set(['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠']);

export function csvText(rows: readonly (readonly CsvCell[])[], { decimal, byteOrderMark }: CsvStyle): string {
  const separator = decimal === ',' ? ';' : ',';
  const lines = rows.map((row) => row.map((value) => cell(value, { decimal, separator })).join(separator));
  return `${byteOrderMark ? '\uFEFF' : ''}${lines.map((line) => `${line}\r\n`).join('')}`;
}

/** Numbers stay numbers, minus sign and all; only a text can be taken for a formula. */
function cell(value: CsvCell, { decimal, separator }: { decimal: string; separator: string }): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value).replace('.', decimal);
  if (typeof value === 'boolean') return String(value);
  const text = RUNS.has(value.charAt(0)) ? `'${value}` : value;
  const quoted = text.includes(separator) || /["\r\n,;]|^\s|\s$/.test(text);
  return quoted ? `"${text.replaceAll('"', '""')}"` : text;
}
