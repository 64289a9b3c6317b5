/** How many lines a text takes in a cell, and where it is cut when a sheet ends before it. Widths are counted in letters. */

/** In widths of an average letter of the print, measured over the widest of each group: none may be thought narrower than it is. */
const WIDE = /[WM@%mw—…A-Z&]/;
const WIDEST = 1.6;
const CAPITAL = 1.08;
/** Signs of other scripts, and pictures. */
const FOREIGN = 2.4;
const LAST_LATIN = 0x24f;

function widthOf(sign: string): number {
  const code = sign.codePointAt(0) ?? 0;
  if (code > LAST_LATIN && !/[\u2000-\u206f\u2190-\u22ff]/.test(sign)) return FOREIGN;
  if (!WIDE.test(sign)) return 1;
  return /[A-LN-VX-Z]/.test(sign) ? CAPITAL : WIDEST;
}

function textWidth(text: string): number {
  let sum = 0;
  for (const sign of text) sum += widthOf(sign);
  return sum;
}

export function linesOf(text: string, width: number): number {
  return text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(textWidth(line) / width)), 0);
}

/** So much of a text as fits so many lines, and the rest; cut behind a space where one is near. */
export function cutText(text: string, { width, most }: { width: number; most: number }): [string, string] {
  let left = most;
  let at = 0;
  for (const line of text.split('\n')) {
    const need = linesOf(line, width);
    if (left === 0) return [text.slice(0, Math.max(0, at - 1)), text.slice(at)];
    if (need > left) {
      const end = at + fitting(line, left * width);
      return [text.slice(0, end), text.slice(end)];
    }
    left -= need;
    at += line.length + 1;
  }
  return [text, ''];
}

function fitting(line: string, most: number): number {
  let sum = 0;
  let end = 0;
  for (const sign of line) {
    sum += widthOf(sign);
    if (sum > most) break;
    end += sign.length;
  }
  const space = line.lastIndexOf(' ', end) + 1;
  return end - space < 40 && space > 0 ? space : end;
}
