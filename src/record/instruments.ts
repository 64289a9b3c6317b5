/** Checks of instruments, and which of them bear on a batch's readings. Raw values stay as they were read. */
import { iceCheck, scaleCheck, wetSaltCheck } from '#core/ferment/instrument-check.ts';
import { type BufferReading, type MeterCheck, meterCheck } from '#core/ferment/meter-check.ts';
import type { Entry, EntryOf } from './entry.ts';
import { live } from './strikes.ts';
import { isSubject, type SubjectId } from './subject.ts';

export type CheckKind = 'meter-checked' | 'thermometer-checked' | 'hygrometer-checked' | 'scale-checked';
export type Check = { [K in CheckKind]: EntryOf<K> }[CheckKind];

/** What a check says of every reading of its instrument, before it and after it. */
export type CheckedAt = { readonly atMs: number; readonly hasFailed: boolean };

export function isCheck(entry: Entry): entry is Entry & Check {
  return (
    entry.kind === 'meter-checked' ||
    entry.kind === 'thermometer-checked' ||
    entry.kind === 'hygrometer-checked' ||
    entry.kind === 'scale-checked'
  );
}

export function checks(entries: readonly Entry[]): Check[] {
  return live(entries).filter(isCheck);
}

export function meterCheckOf({ atMs, body }: EntryOf<'meter-checked'>): MeterCheck {
  const reading = (
    buffer: BufferReading['buffer'] | undefined,
    bufferC: number | undefined,
    value: number | undefined,
  ): BufferReading[] =>
    buffer === undefined || bufferC === undefined || value === undefined
      ? []
      : [{ buffer, bufferC, value, unit: body.shownIn }];
  return meterCheck({
    atMs,
    readings: [
      ...reading(body.sevenBuffer, body.sevenC, body.sevenShown),
      ...reading(body.fourBuffer, body.fourC, body.fourShown),
    ],
  });
}

/** Null for a weight of nothing, which proves nothing. */
export function scaleCheckOf({ body }: EntryOf<'scale-checked'>): ReturnType<typeof scaleCheck> | null {
  return body.weightG > 0 ? scaleCheck(body) : null;
}

export function hasFailed(check: Check): boolean {
  switch (check.kind) {
    case 'meter-checked':
      return meterCheckOf(check).hasFailed;
    case 'thermometer-checked':
      return iceCheck(check.body).finding.verdict === 'deviation';
    case 'hygrometer-checked':
      return wetSaltCheck(check.body).finding.verdict === 'deviation';
    case 'scale-checked':
      return scaleCheckOf(check)?.finding.verdict === 'deviation';
  }
}

export function checksOf(all: readonly Check[], id: SubjectId | undefined): Check[] {
  return all.filter(({ subject }) => subject === id);
}

/** Of one kind of check: a hygrometer that is wrong over salt says nothing against the temperature it shows. */
export function checkedAt(all: readonly Check[], id: SubjectId | undefined, kind: CheckKind): CheckedAt[] {
  return checksOf(all, id)
    .filter((check) => check.kind === kind)
    .map((check) => ({ atMs: check.atMs, hasFailed: hasFailed(check) }));
}

/** What the last ice check before an instant says to add; 0 where there was none. */
export function thermometerOffsetC(all: readonly Check[], id: SubjectId | undefined, atMs: number): number {
  const last = checksOf(all, id).findLast(
    (check) => check.kind === 'thermometer-checked' && check.atMs <= atMs,
  );
  return last?.kind === 'thermometer-checked' ? iceCheck(last.body).offsetC : 0;
}

/** The last check before, or the next one after, failed: nobody knows from when on the instrument was wrong. */
export function isBetweenFailed(all: readonly CheckedAt[], atMs: number): boolean {
  const before = all.findLast((check) => check.atMs <= atMs);
  const after = all.find((check) => check.atMs > atMs);
  return before?.hasFailed === true || after?.hasFailed === true;
}

/**
 * A batch's own entries, and of the checks of each instrument that read it those from the last one before its first reading to
 * the first one after its last; with them what strikes them, and what this build cannot read.
 */
export function withChecks(own: readonly Entry[], ofInstruments: readonly Entry[]): Entry[] {
  const used = usedFromTo(own);
  const there = new Set(own.map(({ id }) => id));
  const standing = checks(ofInstruments);
  const bearing = [...used].flatMap(([id, { fromMs, toMs }]) => {
    const list = checksOf(standing, id);
    const first = list.findLastIndex(({ atMs }) => atMs <= fromMs);
    const last = list.findIndex(({ atMs }) => atMs > toMs);
    return list.slice(Math.max(0, first), last < 0 ? undefined : last + 1);
  });
  const unread = ofInstruments.filter((entry) => entry.kind === null && used.has(entry.subject));
  return [...own, ...[...bearing, ...unread].filter(({ id }) => !there.has(id))];
}

function usedFromTo(own: readonly Entry[]): Map<SubjectId, { fromMs: number; toMs: number }> {
  const used = new Map<SubjectId, { fromMs: number; toMs: number }>();
  for (const entry of own) {
    if (entry.kind === null) continue;
    for (const id of Object.values<unknown>(entry.body)) {
      if (typeof id !== 'string' || !isInstrument(id)) continue;
      const before = used.get(id);
      used.set(id, {
        fromMs: Math.min(entry.atMs, before?.fromMs ?? entry.atMs),
        toMs: Math.max(entry.atMs, before?.toMs ?? entry.atMs),
      });
    }
  }
  return used;
}

function isInstrument(id: string): id is SubjectId<'instrument'> {
  return isSubject(id as SubjectId, 'instrument');
}
