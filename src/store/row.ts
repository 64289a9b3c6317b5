import { type Entry, type EntryId, hashLine, readLine } from '#record/entry.ts';
import type { Line } from '#record/line.ts';
import type { Row } from './database.ts';

/** Lines that were checked once in this page, by hash. An entry never changes, so neither does what is remembered of it. */
const remembered = new Map<string, Line>();

export function rememberedLines(): Line[] {
  return [...remembered.values()];
}

export function remember(line: Line): Line {
  remembered.set(line.hash, line);
  return line;
}

/**
 * Where a damaged row, or another line of the same device and number, already has this key, a branch keeps both: the row is
 * found under its own key, and its line says what it is.
 */
export function rowOf({ hash, line, entry }: Line, branched: { id: boolean; seq: boolean }): Row {
  const branch = `~${hash.slice(0, 16)}`;
  return {
    id: branched.id ? entry.id + branch : entry.id,
    subject: entry.subject,
    touches: [...new Set([entry.subject, ...entry.refs])],
    kind: entry.kind ?? entry.named,
    atMs: entry.atMs,
    device: branched.seq ? entry.device + branch : entry.device,
    seq: entry.seq,
    hash,
    line,
  };
}

/** The line of a row, or null when it does not prove itself. */
export function lineOf(row: Row): Line | null {
  const known = remembered.get(row.hash);
  if (known && known.line === row.line) return columnsHold(row, known.entry) ? known : null;
  if (typeof row.line !== 'string' || hashLine(row.line) !== row.hash) return null;
  const read = readLine(row.line);
  if (!read.ok || !columnsHold(row, read.entry)) return null;
  return remember({ hash: row.hash, line: row.line, entry: read.entry });
}

/** Every row as an entry. A row that does not prove itself is an entry that this build cannot read: what it touches is not known. */
export function entriesOf(rows: readonly Row[]): Entry[] {
  const good = new Map<string, Entry>();
  const bad: Row[] = [];
  for (const row of rows) {
    const line = lineOf(row);
    if (line) good.set(line.entry.id, line.entry);
    else bad.push(row);
  }
  return [...good.values(), ...bad.filter((row) => !good.has(row.id)).map(unreadable)];
}

function unreadable(row: Row): Entry {
  const { id, subject, touches, atMs, device, seq } = row;
  return {
    id: id as EntryId,
    subject,
    refs: touches.filter((touched) => touched !== subject),
    kind: null,
    named: 'unreadable',
    v: 1,
    atMs,
    zone: '+00:00',
    writtenAtMs: atMs,
    by: '',
    device,
    seq,
    prev: '',
  };
}

function columnsHold(row: Row, entry: Entry): boolean {
  return (
    row.id.startsWith(entry.id) &&
    row.subject === entry.subject &&
    row.atMs === entry.atMs &&
    row.seq === entry.seq &&
    row.device.startsWith(entry.device) &&
    [entry.subject, ...entry.refs].every((touched) => row.touches.includes(touched))
  );
}
