/** A JPEG as a picture and nothing else: without place, time, name of the phone, or a small copy of the whole. */

const MARKER = 0xff;
const BEGIN = 0xd8;
const SCAN = 0xda;
const COMMENT = 0xfe;
const APP0 = 0xe0;
/** Says how the colours are to be read; without it some pictures turn green. */
const APP14 = 0xee;
const APP15 = 0xef;

/** Null for what is no JPEG. Segments that only describe are left out; the picture itself is as it was, byte for byte. */
export function bareJpeg(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  if (bytes[0] !== MARKER || bytes[1] !== BEGIN) return null;
  const parts: Uint8Array[] = [bytes.subarray(0, 2)];
  for (let at = 2; ; ) {
    const code = bytes[at + 1];
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    if (bytes[at] !== MARKER || code === undefined || length < 2) return null;
    const end = code === SCAN ? bytes.length : at + 2 + length;
    if (end > bytes.length) return null;
    const describes = code === COMMENT || (code > APP0 && code <= APP15 && code !== APP14);
    if (!describes) parts.push(bytes.subarray(at, end));
    if (code === SCAN) return joined(parts);
    at = end;
  }
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
