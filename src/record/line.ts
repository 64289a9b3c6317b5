/** A line with its sum before it (`<sha-256> <line>`): how entries stand in a backup and in the second copy, so that each proves itself. */
import { type Entry, hashLine, type LineProblem, MAX_LINE_BYTES, readLine } from './entry.ts';

/** An entry beside the very text that was hashed: what is stored, copied and exported is this text, never a new one. */
export type Line = { readonly hash: string; readonly line: string; readonly entry: Entry };

export type SummedProblem = LineProblem | { readonly code: 'damaged' };
export type ReadSummed = { ok: true; line: Line } | { ok: false; problem: SummedProblem };

const SUM = /^[0-9a-f]{64} /;
const SUM_LENGTH = 65;

export function summed(text: string): string {
  return `${hashLine(text)} ${text}`;
}

/** The text behind a sum that holds, or null: one changed character anywhere, in the text or in the sum, and it is null. */
export function unsummed(text: string): string | null {
  if (text.length > MAX_LINE_BYTES + SUM_LENGTH || !SUM.test(text)) return null;
  const rest = text.slice(SUM_LENGTH);
  return hashLine(rest) === text.slice(0, SUM_LENGTH - 1) ? rest : null;
}

export function readSummed(text: string): ReadSummed {
  const line = unsummed(text);
  if (line === null) return { ok: false, problem: { code: 'damaged' } };
  const read = readLine(line);
  if (!read.ok) return read;
  return { ok: true, line: { hash: text.slice(0, SUM_LENGTH - 1), line, entry: read.entry } };
}
