/**
 * The backup file: UTF-8, one line each for a header, every entry and a trailer, each with its SHA-256 before it, so that a
 * changed byte is found in its line. The trailer counts the lines, names the last of each device and sums all bytes before it.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as z from 'zod/mini';
import { type ChainFault, chainOrder, checkChains } from './chain.ts';
import { type Line, readSummed, type SummedProblem, summed, unsummed } from './line.ts';

export const FILE_FORMAT = 'greenweight-log';
export const FILE_VERSION = 1;
export const MAX_FILE_CHARS = 50 * 1024 * 1024;
export const MAX_FILE_LINES = 200_000;

const count = z.int().check(z.gte(0), z.lte(MAX_FILE_LINES));
const headerSchema = z.object({
  format: z.literal(FILE_FORMAT),
  version: z.int().check(z.gte(1)),
  build: z.string().check(z.maxLength(60)),
  madeAtMs: z.int().check(z.gte(0)),
  device: z.string().check(z.maxLength(36)),
  count,
});
const trailerSchema = z.strictObject({
  count,
  heads: z.array(z.strictObject({ device: z.string(), seq: z.int(), hash: z.string() })),
  sha256: z.string(),
});

export type FileHeader = z.infer<typeof headerSchema>;

export type FileProblem = { readonly line: number } & (
  | SummedProblem
  | {
      readonly code:
        | 'too-large'
        | 'too-many-lines'
        | 'not-ours'
        | 'newer-format'
        | 'twice'
        | 'no-trailer'
        | 'damaged-trailer'
        | 'not-as-written';
    }
);

export type LogFile = {
  readonly header: FileHeader | null;
  /** Every line that proves itself, whatever else is wrong with the file. */
  readonly lines: readonly Line[];
  /** Empty only for a file in which every byte is as it was written. */
  readonly problems: readonly FileProblem[];
  /** What the file's own chains lack: a file may be whole and yet be of a log that lacks lines. */
  readonly faults: readonly ChainFault[];
};

/** The text of a backup and the sum that its trailer holds. Lines are put in the order of their chains: same log, same bytes. */
export function writeFile(
  lines: readonly Line[],
  made: { build: string; madeAtMs: number; device: string },
): { text: string; hash: string } {
  const header = {
    format: FILE_FORMAT,
    version: FILE_VERSION,
    build: made.build,
    madeAtMs: made.madeAtMs,
    device: made.device,
    count: lines.length,
  };
  const entries = chainOrder(lines).map((line) => `${line.hash} ${line.line}`);
  const body = `${[summed(JSON.stringify(header)), ...entries].join('\n')}\n`;
  const hash = bytesToHex(sha256(utf8ToBytes(body)));
  const { heads } = checkChains(lines);
  return { text: `${body}${summed(JSON.stringify({ count: lines.length, heads, sha256: hash }))}\n`, hash };
}

export function readFile(text: string): LogFile {
  if (text.length > MAX_FILE_CHARS) return refused({ line: 0, code: 'too-large' });
  const texts = text.split('\n');
  if (texts.length > MAX_FILE_LINES + 3) return refused({ line: 0, code: 'too-many-lines' });
  const problems: FileProblem[] = [];
  const header = headerOf(texts[0] ?? '', problems);
  const ended = texts.at(-1) === '';
  if (ended) texts.pop();
  const trailer = trailerOf(texts.at(-1) ?? '');
  if (trailer && !ended) problems.push({ line: texts.length, code: 'damaged-trailer' });

  const byId = new Map<string, Line>();
  texts.slice(1, trailer ? -1 : undefined).forEach((each, index) => {
    const line = index + 2;
    // Line ends that were changed on the way are for the sum over all bytes to tell; the line itself is as it was.
    const read = readSummed(each.endsWith('\r') ? each.slice(0, -1) : each);
    const last = line === texts.length;
    if (!read.ok) problems.push(last ? { line, code: 'damaged-trailer' } : { line, ...read.problem });
    else if (byId.has(read.line.entry.id)) problems.push({ line, code: 'twice' });
    else byId.set(read.line.entry.id, read.line);
    if (read.ok && last) problems.push({ line, code: 'no-trailer' });
  });
  if (!header && byId.size === 0) return refused({ line: 1, code: 'not-ours' });
  if (!trailer && texts.length < 2) problems.push({ line: 1, code: 'no-trailer' });
  const lines = [...byId.values()];
  if (trailer && problems.length === 0) {
    const body = text.slice(0, text.length - (texts.at(-1)?.length ?? 0) - 1);
    const whole =
      trailer.count === lines.length &&
      header?.count === lines.length &&
      trailer.sha256 === bytesToHex(sha256(utf8ToBytes(body)));
    if (!whole) problems.push({ line: texts.length, code: 'not-as-written' });
  }
  return {
    header,
    lines,
    problems: problems.sort((a, b) => a.line - b.line),
    faults: checkChains(lines).faults,
  };
}

function refused(problem: FileProblem): LogFile {
  return { header: null, lines: [], problems: [problem], faults: [] };
}

function headerOf(text: string, problems: FileProblem[]): FileHeader | null {
  const header = headerSchema.safeParse(parsed(text));
  if (!header.success) {
    problems.push({ line: 1, code: 'damaged' });
    return null;
  }
  if (header.data.version > FILE_VERSION) problems.push({ line: 1, code: 'newer-format' });
  return header.data;
}

function trailerOf(text: string): z.infer<typeof trailerSchema> | null {
  const trailer = trailerSchema.safeParse(parsed(text));
  return trailer.success ? trailer.data : null;
}

function parsed(text: string): unknown {
  const line = unsummed(text);
  if (line === null) return null;
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}
