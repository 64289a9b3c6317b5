/** A phone whose clock may stand wrong: what it writes while it does. Readings here are invented. */
import type { Entry, EntryId, KnownEntry } from '#record/entry.ts';
import { writeLine } from '#record/entry.ts';
import { type BodyOf, type Kind, writtenVersion } from '#record/kinds.ts';
import type { Line } from '#record/line.ts';
import type { SubjectId } from '#record/subject.ts';
import { deviceOf, HOUR_MS, idOf, lineOf, START_MS } from './make.ts';

export const DAY_MS = 24 * HOUR_MS;

type More = {
  /** How far its clock stands ahead of the true time. */
  readonly aheadMs?: number;
  /** How long before writing it was true, as the maker set it by hand. */
  readonly earlierMs?: number;
  readonly strikes?: EntryId;
  readonly zone?: string;
  readonly by?: string;
};

export type Phone = {
  readonly device: string;
  readonly lines: readonly Line[];
  readonly entries: readonly KnownEntry[];
  /** Writes so many hours of true time after the start. */
  readonly write: <K extends Kind>(
    atHours: number,
    kind: K,
    subject: SubjectId,
    body: BodyOf<K>,
    more?: More,
  ) => KnownEntry;
  readonly note: (atHours: number, text: string, more?: More) => KnownEntry;
};

export function phone(number = 1): Phone {
  const device = deviceOf(number);
  const lines: Line[] = [];
  const write: Phone['write'] = (atHours, kind, subject, body, more = {}) => {
    const { aheadMs = 0, earlierMs = 0, strikes, zone = '+01:00', by = 'AB' } = more;
    const writtenAtMs = START_MS + atHours * HOUR_MS + aheadMs;
    const line = lineOf(
      writeLine({
        id: idOf(number * 1_000_000 + lines.length + 1),
        subject,
        refs: [],
        kind,
        v: writtenVersion(kind, body),
        atMs: writtenAtMs - earlierMs,
        zone,
        writtenAtMs,
        by,
        device,
        seq: lines.length + 1,
        prev: lines.at(-1)?.hash ?? '',
        ...(strikes ? { strikes: { id: strikes, reason: 'wrong' } } : {}),
        body,
      } as KnownEntry),
    );
    lines.push(line);
    return line.entry as KnownEntry;
  };
  return {
    device,
    lines,
    get entries() {
      return lines.map(({ entry }) => entry as KnownEntry);
    },
    write,
    note: (atHours, text, more) => write(atHours, 'noted', 'batch:a', { text }, more),
  };
}

export function correction(
  of: Phone,
  range: { fromSeq: number; toSeq: number; shiftMs: number; zones?: { fromSeq: number; zone: string }[] },
): BodyOf<'clock-corrected'> {
  return { device: of.device, reason: 'the date was set wrong', ...range };
}

export const times = (entries: readonly Entry[]) => entries.map(({ atMs }) => (atMs - START_MS) / HOUR_MS);
