/**
 * A backup behind a passphrase: AES-256-GCM, its key by PBKDF2-SHA-256, both of the browser. A lost passphrase is a lost copy,
 * so a sealed file is never the only one. The first line says how it was sealed, the second is the sealed text in base64.
 */
import * as z from 'zod/mini';

export const ITERATIONS = 600_000;
const MOST_ITERATIONS = 10_000_000;

const headerSchema = z.strictObject({
  format: z.literal('greenweight-sealed'),
  version: z.literal(1),
  cipher: z.literal('AES-256-GCM'),
  key: z.literal('PBKDF2-SHA-256'),
  iterations: z.int().check(z.gte(ITERATIONS), z.lte(MOST_ITERATIONS)),
  salt: z.string().check(z.maxLength(64)),
  iv: z.string().check(z.maxLength(64)),
});

export type Unsealed =
  | { ok: true; text: string }
  /** A wrong passphrase and a changed file cannot be told apart. */
  | { ok: false; problem: 'not-sealed' | 'wrong-passphrase-or-changed' };

/** @throws RangeError when the passphrase is shorter than 8 characters: no count of iterations mends that. */
export async function seal(text: string, passphrase: string): Promise<string> {
  if (!(passphrase.length >= 8))
    throw new RangeError(`seal: passphrase requires 8 characters, got ${passphrase.length}`);
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const header = JSON.stringify({
    format: 'greenweight-sealed',
    version: 1,
    cipher: 'AES-256-GCM',
    key: 'PBKDF2-SHA-256',
    iterations: ITERATIONS,
    salt: toBase64(salt),
    iv: toBase64(iv),
  });
  const sealed = await crypto.subtle.encrypt(
    { name: 'AES-GCM', iv, additionalData: utf8(header) },
    await keyOf({ passphrase, salt, iterations: ITERATIONS }),
    utf8(text),
  );
  return `${header}\n${toBase64(new Uint8Array(sealed))}\n`;
}

export function isSealed(file: string): boolean {
  return headerOf(file.split('\n', 1)[0] ?? '') !== null;
}

export async function unseal(file: string, passphrase: string): Promise<Unsealed> {
  const [first = '', second = ''] = file.split('\n');
  const header = headerOf(first);
  if (!header) return { ok: false, problem: 'not-sealed' };
  try {
    const { salt, iterations, iv } = header;
    const text = await crypto.subtle.decrypt(
      { name: 'AES-GCM', iv: fromBase64(iv), additionalData: utf8(first) },
      await keyOf({ passphrase, salt: fromBase64(salt), iterations }),
      fromBase64(second),
    );
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(text) };
  } catch {
    return { ok: false, problem: 'wrong-passphrase-or-changed' };
  }
}

function headerOf(line: string): z.infer<typeof headerSchema> | null {
  try {
    return headerSchema.parse(JSON.parse(line));
  } catch {
    return null;
  }
}

async function keyOf(from: {
  passphrase: string;
  salt: Uint8Array<ArrayBuffer>;
  iterations: number;
}): Promise<CryptoKey> {
  const { passphrase, salt, iterations } = from;
  // One spelling for what looks the same: an accent typed as one character or as two.
  const typed = utf8(passphrase.normalize('NFC'));
  const material = await crypto.subtle.importKey('raw', typed, 'PBKDF2', false, ['deriveKey']);
  return crypto.subtle.deriveKey(
    { name: 'PBKDF2', hash: 'SHA-256', salt, iterations },
    material,
    { name: 'AES-GCM', length: 256 },
    false,
    ['encrypt', 'decrypt'],
  );
}

function utf8(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text);
}

function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += 32_768) {
    binary += String.fromCharCode(...bytes.subarray(at, at + 32_768));
  }
  return btoa(binary);
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
