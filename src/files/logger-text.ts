/** The bytes of a logger's file as text: UTF-8 or UTF-16 with or without a byte-order mark, else the Latin alphabet of older programs. */

export type TextProblem = 'empty' | 'too-large' | 'not-text';
export type LoggerText = { ok: true; text: string } | { ok: false; code: TextProblem };

export const MOST_LOGGER_BYTES = 16 * 1024 * 1024;
const SAMPLE_BYTES = 2000;

/** Every line end becomes one line feed, so that rows are counted as an editor counts them. */
export function loggerText(bytes: Uint8Array): LoggerText {
  if (bytes.length > MOST_LOGGER_BYTES) return { ok: false, code: 'too-large' };
  const decoded = decode(bytes);
  if (decoded === null) return { ok: false, code: 'not-text' };
  const text = withoutEndMark(decoded).replace(/\r\n?/g, '\n');
  if (hasControls(text)) return { ok: false, code: 'not-text' };
  return text.trim() === '' ? { ok: false, code: 'empty' } : { ok: true, text };
}

function decode(bytes: Uint8Array): string | null {
  const named = utf16(bytes);
  if (named !== null) return tried(named, bytes);
  return tried('utf-8', bytes) ?? tried('windows-1252', bytes);
}

function tried(encoding: string, bytes: Uint8Array): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** By its mark, or by the noughts that it leaves in every other byte of plain text. */
function utf16(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const sample = bytes.subarray(0, SAMPLE_BYTES);
  const noughts = { even: 0, odd: 0 };
  for (const [at, byte] of sample.entries()) if (byte === 0) noughts[at % 2 === 0 ? 'even' : 'odd'] += 1;
  if (noughts.odd > sample.length / 4 && noughts.even === 0) return 'utf-16le';
  if (noughts.even > sample.length / 4 && noughts.odd === 0) return 'utf-16be';
  return null;
}

/** A spreadsheet's own file, an archive or a picture has them; a table has tabs, line ends and at the most a separator of units. */
function hasControls(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code < 0x20 && code !== 0x09 && code !== 0x0a && code !== 0x0c && code !== 0x1f) return true;
  }
  return false;
}

/** Old programs end a text with one or more of this. */
function withoutEndMark(text: string): string {
  let end = text.length;
  while (text.charCodeAt(end - 1) === 0x1a) end -= 1;
  return text.slice(0, end);
}
