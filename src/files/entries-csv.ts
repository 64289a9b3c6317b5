/** Everything that was written down, for a spreadsheet or another program. For reading; only a backup can be read back. */

import type { Line } from '#record/line.ts';
import { plain } from '#record/plain.ts';
import { putRight } from '#record/put-right.ts';
import { inOrder } from '#record/strikes.ts';
import { type CsvCell, type CsvStyle, csvText } from './csv-text.ts';

/**
 * One row an entry: what every entry carries, then one column for each fact that any of them holds (`body.massG`). Times are
 * those of clocks put right; what a wrong clock showed stands beside them.
 */
export function entriesCsv(written: readonly Line[], style: CsvStyle): string {
  const lines = inTrueOrder(written);
  const facts = lines.map((line) => factsOf(bodyOf(line), 'body'));
  const names = [...new Set(facts.flatMap((each) => [...each.keys()]))];
  const rows = lines.map((line, at) => [
    ...Object.values(envelope(line)),
    ...names.map((name) => facts[at]?.get(name) ?? null),
  ]);
  const [first] = lines;
  return csvText(first ? [[...Object.keys(envelope(first)), ...names], ...rows] : [], style);
}

/** Every line byte for byte as it was written and hashed, in one JSON document. */
export function entriesJson(lines: readonly Line[]): string {
  const head = `{"format":"greenweight-entries","version":1,"entries":[`;
  return `${head}\n${lines.map(({ line }) => line).join(',\n')}\n]}\n`;
}

function inTrueOrder(written: readonly Line[]): readonly Line[] {
  const entries = written.map(({ entry }) => entry);
  const right = putRight(entries, entries);
  if (!right.some(({ clock }) => clock)) return written;
  return written
    .map((line, at) => ({ ...line, entry: right[at] ?? line.entry }))
    .sort((a, b) => inOrder(a.entry, b.entry));
}

function envelope({ entry }: Line): Record<string, CsvCell> {
  return {
    id: entry.id,
    subject: entry.subject,
    kind: entry.kind ?? entry.named,
    version: entry.v,
    at: local(entry.atMs, entry.zone),
    at_utc: utc(entry.atMs),
    written_utc: utc(entry.writtenAtMs),
    clock_showed_utc: entry.clock ? utc(entry.clock.writtenAtMs) : null,
    by: entry.by,
    device: entry.device,
    seq: entry.seq,
    refs: entry.refs.join(' '),
    strikes: entry.strikes?.id ?? null,
    strike_reason: entry.strikes?.reason ?? null,
  };
}

/** From the line and not from the entry, so that the facts of a newer phone are there too. */
function bodyOf({ line }: Line): unknown {
  const raw: { body?: unknown } = JSON.parse(line);
  return plain(raw) ? raw.body : null;
}

/** Facts by their dotted path; a list of texts in one cell, any other list as JSON. */
function factsOf(value: unknown, path: string): Map<string, CsvCell> {
  if (value === null || value === undefined) return new Map();
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean')
    return new Map([[path, value]]);
  if (Array.isArray(value)) {
    const texts = value.every((item) => typeof item === 'string');
    return new Map([[path, texts ? value.join('; ') : JSON.stringify(value)]]);
  }
  return new Map(Object.entries(value).flatMap(([key, part]) => [...factsOf(part, `${path}.${key}`)]));
}

function utc(atMs: number): string {
  return new Date(atMs).toISOString();
}

/** The wall clock where it was written, with the offset that was in force there. */
function local(atMs: number, zone: string): string {
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4));
  const wall = new Date(atMs + (zone.startsWith('-') ? -1 : 1) * minutes * 60_000);
  return Number.isNaN(wall.getTime()) ? '' : `${wall.toISOString().slice(0, -1)}${zone}`;
}
