/** One immutable entry: one thing that somebody did or read. Its line of text is what is hashed, stored and exported. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as z from 'zod/mini';
import { type BodyOf, bodySchema, type Kind, writtenVersion } from './kinds.ts';
import { plain } from './plain.ts';
import { type SubjectId, subjectId } from './subject.ts';

export type EntryId = string & { readonly brand: 'entry' };

/** What every entry carries, whatever its kind; a kind that this build does not know keeps its envelope readable. */
export type Envelope = {
  readonly id: EntryId;
  readonly subject: SubjectId;
  readonly refs: readonly SubjectId[];
  /** The instant it was true, and the UTC offset in force there then, such as `+01:00`. */
  readonly atMs: number;
  readonly zone: string;
  readonly writtenAtMs: number;
  readonly by: string;
  readonly device: string;
  readonly seq: number;
  /** Hash of this device's line before; empty for its first. */
  readonly prev: string;
  readonly strikes?: { readonly id: EntryId; readonly reason: string };
  /** Where its phone's clock was put right: what the line says. No part of the line. */
  readonly clock?: WrongClock;
};

export type WrongClock = {
  readonly atMs: number;
  readonly zone: string;
  readonly writtenAtMs: number;
  /** Every standing correction of it; the last counts. */
  readonly corrections: readonly EntryOf<'clock-corrected'>[];
  /** They say different things. */
  readonly disputed: boolean;
};

export type EntryOf<K extends Kind> = Envelope & {
  readonly kind: K;
  readonly v: number;
  readonly body: BodyOf<K>;
};

export type KnownEntry = { [K in Kind]: EntryOf<K> }[Kind];

/** A newer phone's kind or version: kept and passed on untouched; what it touches turns to *no reading*. */
export type UnknownEntry = Envelope & { readonly kind: null; readonly named: string; readonly v: number };

export type Entry = KnownEntry | UnknownEntry;

/** What a screen hands to the store; the store adds id, device, seq, prev and the time of writing. */
export type Draft = {
  [K in Kind]: {
    readonly kind: K;
    readonly subject: SubjectId;
    readonly refs?: readonly SubjectId[];
    readonly atMs: number;
    readonly zone: string;
    readonly by: string;
    readonly body: BodyOf<K>;
    readonly strikes?: { readonly id: EntryId; readonly reason: string };
  };
}[Kind];

export const MAX_LINE_BYTES = 64 * 1024;

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const id = z.custom<EntryId>((value) => typeof value === 'string' && uuid.test(value), 'id');
const instant = z.int().check(z.gte(0), z.lte(8.64e15));

const lineSchema = z.strictObject({
  id,
  subject: subjectId,
  refs: z.array(subjectId).check(z.maxLength(200)),
  kind: z.string().check(z.regex(/^[a-z][a-z-]{0,39}$/, 'kind')),
  v: z.int().check(z.gte(1), z.lte(1000)),
  atMs: instant,
  zone: z.string().check(z.regex(/^[+-]\d\d:\d\d$/, 'zone')),
  writtenAtMs: instant,
  by: z.string().check(z.maxLength(40)),
  device: id,
  seq: z.int().check(z.gte(1)),
  prev: z.string().check(z.regex(/^([0-9a-f]{64})?$/, 'prev')),
  strikes: z.optional(z.strictObject({ id, reason: z.string().check(z.maxLength(400)) })),
  body: z.unknown(),
});

export type LineProblem =
  | { readonly code: 'not-json' }
  | { readonly code: 'too-long' }
  | { readonly code: 'forbidden-key' }
  | { readonly code: 'not-an-entry'; readonly field: string }
  | { readonly code: 'bad-body'; readonly kind: string; readonly field: string };

export type ReadLine = { ok: true; entry: Entry } | { ok: false; problem: LineProblem };

/** SHA-256 of a line, as 64 hex digits. Synchronous, so that an IndexedDB transaction stays open around it. */
export function hashLine(line: string): string {
  return bytesToHex(sha256(utf8ToBytes(line)));
}

/** The line of an entry: JSON with the keys in this order. Never made anew from a stored entry: the stored line is kept. */
export function writeLine(entry: KnownEntry): string {
  const { id, subject, refs, kind, v, atMs, zone, writtenAtMs, by, device, seq, prev, strikes, body } = entry;
  return JSON.stringify({
    id,
    subject,
    refs,
    kind,
    v,
    atMs,
    zone,
    writtenAtMs,
    by,
    device,
    seq,
    prev,
    ...(strikes ? { strikes } : {}),
    body,
  });
}

/** Reads one line from anywhere: the store, a file, another phone. Nothing of it is used before every field was checked. */
export function readLine(line: string): ReadLine {
  if (tooLong(line)) return { ok: false, problem: { code: 'too-long' } };
  let raw: unknown;
  try {
    raw = JSON.parse(line);
  } catch {
    return { ok: false, problem: { code: 'not-json' } };
  }
  if (!plain(raw)) return { ok: false, problem: { code: 'forbidden-key' } };
  const parsed = lineSchema.safeParse(raw);
  if (!parsed.success) return { ok: false, problem: { code: 'not-an-entry', field: pathOf(parsed.error) } };
  const { kind, v, body, strikes, ...rest } = parsed.data;
  const envelope: Envelope = { ...rest, ...(strikes ? { strikes } : {}) };
  const schema = bodySchema(kind, v);
  if (!schema) return { ok: true, entry: { ...envelope, kind: null, named: kind, v } };
  const checked = schema.safeParse(body);
  if (!checked.success)
    return { ok: false, problem: { code: 'bad-body', kind, field: pathOf(checked.error) } };
  return { ok: true, entry: { ...envelope, kind, v, body: checked.data } as KnownEntry };
}

/** A character is one to three bytes for each unit of a string, so that most lines need no count. */
function tooLong(line: string): boolean {
  if (line.length * 3 <= MAX_LINE_BYTES) return false;
  return line.length > MAX_LINE_BYTES || utf8ToBytes(line).length > MAX_LINE_BYTES;
}

/** The first field that a check refused, as a dotted path; empty when the whole was refused. */
function pathOf(error: { issues: { path: PropertyKey[] }[] }): string {
  return error.issues[0]?.path.map(String).join('.') ?? '';
}

export type DraftProblem = { readonly field: string };

/** Checks a draft's body before it is written: what the log would refuse to read back is never appended. */
export function checkDraft(draft: Draft): DraftProblem | null {
  const checked = bodySchema(draft.kind, writtenVersion(draft.kind, draft.body))?.safeParse(draft.body);
  if (!checked) return { field: 'kind' };
  return checked.success ? null : { field: pathOf(checked.error) };
}
