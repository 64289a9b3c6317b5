/** A text as a QR code: a square of dark and light modules, without the quiet zone around it. */

export type Qr =
  | { ok: true; version: number; ecc: 'L' | 'M'; modules: readonly (readonly boolean[])[] }
  | { ok: false; code: 'too-long' };

/**
 * The largest versions at each level of error correction (ISO/IEC 18004): M restores 15 %, L 7 %. Beyond 89 modules a side,
 * larger modules help a camera more than more correction; at 117 modules a print 6 cm wide still has half a millimetre for each
 * (common practice: no less than 0.4 mm).
 */
const LEVELS = [
  { ecc: 'M', maxVersion: 18 },
  { ecc: 'L', maxVersion: 25 },
] as const;

export async function qrOf(text: string): Promise<Qr> {
  const { encode } = await import('uqr');
  for (const { ecc, maxVersion } of LEVELS) {
    try {
      const { version, data } = encode(text, { ecc, border: 0, maxVersion });
      return { ok: true, version, ecc, modules: data };
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return { ok: false, code: 'too-long' };
}
