/** Numbers as people type them: comma or point, thousands, fractions. */

/**
 * A typed number; null where one mark could be either or nothing can be read. `decimal` is the maker's own mark, which
 * settles "1,250" and "1.250"; in "0,250" and "2,5" nothing needs settling.
 *
 * Source: arithmetic (derived).
 * @example readNumber('1 1/2', '.') // => 1.5
 * @example readNumber('2,5', '.') // => 2.5
 * @example readNumber('1,250', '.') // => null
 */
export function readNumber(text: string, decimal: '.' | ','): number | null {
  const value = text.includes('/') ? fraction(text) : plain(text, decimal);
  return value !== null && Number.isFinite(value) ? value : null;
}

function fraction(text: string): number {
  const [whole, parts] = text.includes(' ') ? text.split(' ') : ['0', text];
  const [top, bottom] = (parts ?? '').split('/').map(Number);
  return Number(whole) + (top ?? Number.NaN) / (bottom ?? Number.NaN);
}

function plain(text: string, decimal: '.' | ','): number | null {
  if (!/^\d*(?:[.,]\d+)*$/.test(text) || text === '') return null;
  const marks = text.replaceAll(/\d/g, '');
  const last = marks.at(-1);
  if (last === undefined) return Number(text);
  if (marks.length === 1) {
    const couldBeThousands = last !== decimal && /^[1-9]\d{0,2}[.,]\d{3}$/.test(text);
    return couldBeThousands ? null : Number(text.replace(',', '.'));
  }
  const thousandsOnly = marks === last.repeat(marks.length);
  if (!/^\d{1,3}([.,]\d{3})+([.,]\d+)?$/.test(text)) return null;
  if (!thousandsOnly && marks.indexOf(last) !== marks.length - 1) return null;
  if (thousandsOnly && !/^\d{1,3}([.,]\d{3})+$/.test(text)) return null;
  return Number(text.replaceAll(/[.,]/g, (mark) => (mark === last && !thousandsOnly ? '.' : '')));
}
