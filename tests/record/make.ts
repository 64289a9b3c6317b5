/** Entries for tests, as a device would write them. Readings here are invented. */
import { type Entry, type EntryId, hashLine, type KnownEntry, readLine, writeLine } from '#record/entry.ts';
import type { BodyOf, Kind } from '#record/kinds.ts';
import type { Line } from '#record/line.ts';
import type { SubjectId } from '#record/subject.ts';

export const HOUR_MS = 3_600_000;
export const START_MS = Date.UTC(2024, 0, 8, 8);

export function idOf(number: number): EntryId {
  return `018cdc00-0000-7000-8000-${number.toString(16).padStart(12, '0')}` as EntryId;
}

export function deviceOf(number: number): string {
  return `018cdc00-0000-7000-9000-${number.toString(16).padStart(12, '0')}`;
}

export type More = {
  readonly refs?: readonly SubjectId[];
  readonly atMs?: number;
  readonly strikes?: EntryId;
  readonly device?: string;
};

export type Writer = {
  readonly write: <K extends Kind>(kind: K, subject: SubjectId, body: BodyOf<K>, more?: More) => KnownEntry;
  readonly entries: readonly KnownEntry[];
  readonly lines: readonly Line[];
};

/** Writes a log in which each line follows the line before of its device. */
export function writer(first = 1): Writer {
  const lines: Line[] = [];
  const ends = new Map<string, { seq: number; hash: string }>();
  return {
    write(kind, subject, body, more = {}) {
      const device = more.device ?? deviceOf(1);
      const end = ends.get(device) ?? { seq: 0, hash: '' };
      const number = first + lines.length;
      const atMs = more.atMs ?? START_MS + number * HOUR_MS;
      const text = writeLine({
        id: idOf(number),
        subject,
        refs: more.refs ?? [],
        kind,
        v: 1,
        atMs,
        zone: '+01:00',
        writtenAtMs: START_MS + number * HOUR_MS,
        by: 'AB',
        device,
        seq: end.seq + 1,
        prev: end.hash,
        ...(more.strikes ? { strikes: { id: more.strikes, reason: 'misread' } } : {}),
        body,
      } as KnownEntry);
      const line = lineOf(text);
      lines.push(line);
      ends.set(device, { seq: end.seq + 1, hash: line.hash });
      return line.entry as KnownEntry;
    },
    get entries() {
      return lines.map((line) => line.entry as KnownEntry);
    },
    lines,
  };
}

export function lineOf(text: string): Line {
  const read = readLine(text);
  if (!read.ok) throw new Error(`lineOf: ${JSON.stringify(read.problem)} in ${text}`);
  return { hash: hashLine(text), line: text, entry: read.entry };
}

/** What a newer build wrote: a kind that this one does not know. */
export function newer(line: Line): Line {
  return lineOf(line.line.replace(/"kind":"[a-z-]+"/, '"kind":"ultrasound-read"'));
}

export function known(entry: Entry): KnownEntry {
  if (entry.kind === null) throw new Error(`known: ${entry.named} is not known`);
  return entry;
}
