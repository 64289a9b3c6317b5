/**
 * A formula in the fragment of a link: nothing of it reaches a server. Behind the route stands, in base64url, one byte for the
 * version, four of the SHA-256 of what follows, in version 2 the two UUIDs of the version that it was made from, and the text
 * deflated: JSON of the formula without the ids of its lines. Without a parent a link is of version 1.
 */
import type { Formula } from '#core/formula/formula.ts';
import { hashLine } from '#record/entry.ts';
import {
  checkFormula,
  type FormulaParent,
  type FormulaProblem,
  isRecord,
  readUntrusted,
} from './formula-file.ts';
import { LINK_DICTIONARY } from './link-dictionary.ts';

export const FORMULA_ROUTE = '#/formulas/from/';
export const MOST_LINK_CHARS = 8 * 1024;
export const MOST_INFLATED_BYTES = 256 * 1024;
const PLAIN = 1;
const WITH_PARENT = 2;
const SUM_BYTES = 4;
const UUID_BYTES = 16;
/** Text that is told again and again shrinks a hundredfold at the most; what claims more is made to fill the memory. */
const MOST_RATIO = 100;
const RATIO_SLACK_BYTES = 4096;
/** Deflate makes at most 1032 bytes out of one: a step makes no more than the limit. */
const STEP_BYTES = 256;

type LinkCode = 'not-a-link' | 'newer-format' | 'too-long' | 'damaged' | 'inflates-too-far';
export type LinkProblem = FormulaProblem | { readonly code: LinkCode };
export type ReadLink =
  | { ok: true; formula: Formula; from?: FormulaParent }
  | { ok: false; problem: LinkProblem };
export type WrittenLink = { ok: true; link: string } | { ok: false; problem: LinkProblem };

/** `base` is the address of the app without a fragment. A link is read back before it is given out. */
export async function writeFormulaLink({
  formula,
  base,
  from,
}: {
  formula: Formula;
  base: string;
  /** The version that whoever takes it in will have made theirs from. */
  from?: FormulaParent;
}): Promise<WrittenLink> {
  const { deflateSync } = await import('fflate');
  const text = JSON.stringify({ ...formula, lines: formula.lines.map(({ id: _id, ...line }) => line) });
  const packed = deflateSync(utf8(text), { level: 9, mem: 9, dictionary: utf8(LINK_DICTIONARY) });
  const parent = from ? parentBytes(from) : null;
  const version = parent ? WITH_PARENT : PLAIN;
  const bytes = [version, ...sumOf(text, parent ?? []), ...(parent ?? []), ...packed];
  const link = `${base}${FORMULA_ROUTE}${toBase64Url(bytes)}`;
  const read = await readFormulaLink(link);
  return read.ok ? { ok: true, link } : read;
}

/** The lines get the ids 1, 2, 3 and so on: a link carries what is weighed, not how another phone counted it. */
export async function readFormulaLink(link: string): Promise<ReadLink> {
  const at = link.indexOf(FORMULA_ROUTE);
  if (at < 0) return refused('not-a-link');
  const code = link.slice(at + FORMULA_ROUTE.length);
  if (code.length > MOST_LINK_CHARS) return refused('too-long');
  const bytes = fromBase64Url(code);
  const version = bytes?.[0];
  if (!bytes || version === undefined) return refused('not-a-link');
  if (version > WITH_PARENT) return refused('newer-format');
  const packedAt = 1 + SUM_BYTES + (version === WITH_PARENT ? 2 * UUID_BYTES : 0);
  if (version < PLAIN || bytes.length <= packedAt) return refused('damaged');
  const parent = bytes.subarray(1 + SUM_BYTES, packedAt);
  const inflated = await inflate(bytes.subarray(packedAt));
  if (!inflated.ok) return refused(inflated.code);
  const sum = sumOf(inflated.text, parent);
  if (!sum.every((byte, index) => byte === bytes[1 + index])) return refused('damaged');
  const read = readUntrusted(inflated.text);
  if (!read.ok) return read;
  const checked = checkFormula(numbered(read.value));
  return checked.ok && version === WITH_PARENT ? { ...checked, from: parentOf(parent) } : checked;
}

/** Null where it is not named by two UUIDs: then the link carries no parent. */
function parentBytes({ formula, entry }: FormulaParent): number[] | null {
  const hex = `${formula.slice('formula:'.length)} ${entry}`.replaceAll('-', '');
  if (!/^[0-9a-f]{32} [0-9a-f]{32}$/.test(hex)) return null;
  return (hex.match(/[0-9a-f]{2}/g) ?? []).map((byte) => Number.parseInt(byte, 16));
}

function parentOf(bytes: Uint8Array): FormulaParent {
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  const uuid = (from: number) =>
    hex.slice(from, from + 32).replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
  return { formula: `formula:${uuid(0)}`, entry: uuid(32) };
}

type Inflated = { ok: true; text: string } | { ok: false; code: 'damaged' | 'inflates-too-far' };

/** In small steps, so that the bytes are counted before there are many of them. */
async function inflate(packed: Uint8Array): Promise<Inflated> {
  const { Inflate } = await import('fflate');
  const mostBytes = Math.min(MOST_INFLATED_BYTES, packed.length * MOST_RATIO + RATIO_SLACK_BYTES);
  const parts: Uint8Array[] = [];
  let sizeBytes = 0;
  const stream = new Inflate({ dictionary: utf8(LINK_DICTIONARY) }, (part) => {
    sizeBytes += part.length;
    parts.push(part.slice());
  });
  try {
    for (let start = 0; start < packed.length; start += STEP_BYTES) {
      stream.push(packed.slice(start, start + STEP_BYTES), start + STEP_BYTES >= packed.length);
      if (sizeBytes > mostBytes) return { ok: false, code: 'inflates-too-far' };
    }
    const whole = new Uint8Array(sizeBytes);
    let end = 0;
    for (const part of parts) {
      whole.set(part, end);
      end += part.length;
    }
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(whole) };
  } catch {
    return { ok: false, code: 'damaged' };
  }
}

function numbered(value: unknown): unknown {
  if (!isRecord(value) || !Array.isArray(value.lines)) return value;
  const lines = value.lines.map((line: unknown, at) =>
    isRecord(line) ? { ...line, id: String(at + 1) } : line,
  );
  return { ...value, lines };
}

function sumOf(text: string, parent: ArrayLike<number>): number[] {
  const hash = hashLine(text + Array.from(parent, (byte) => byte.toString(16).padStart(2, '0')).join(''));
  return Array.from({ length: SUM_BYTES }, (_, at) => Number.parseInt(hash.slice(2 * at, 2 * at + 2), 16));
}

function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

function toBase64Url(bytes: readonly number[]): string {
  const base64 = btoa(bytes.map((byte) => String.fromCharCode(byte)).join(''));
  return base64.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function fromBase64Url(code: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]+$/.test(code) || code.length % 4 === 1) return null;
  const binary = atob(code.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}

function refused(code: LinkCode): { ok: false; problem: LinkProblem } {
  return { ok: false, problem: { code } };
}
