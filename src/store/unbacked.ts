import { exposure, lastBackUpMs, type Unbacked } from '#record/exposure.ts';
import { ofKind } from '#record/fold.ts';
import { PLACE } from '#record/subject.ts';
import { now } from './clock.ts';
import { log } from './database.ts';
import { entriesNow } from './entries.ts';
import { entriesOf, lineOf } from './row.ts';
import { rowsTouching } from './rows.ts';

/** What was written since the last backup: by the ids, which begin with the time, and not by reading every entry. */
export async function unbackedNow(): Promise<Unbacked | null> {
  const notes = ofKind(await entriesNow(await rowsTouching([PLACE])), 'backed-up');
  const { nowMs } = now();
  // A note from a clock that ran ahead would hide whatever is written until then.
  const lastMs = lastBackUpMs(notes.filter(({ writtenAtMs }) => writtenAtMs <= nowMs));
  const from = firstIdAfter(lastMs);
  const since = () => log.entries.where('id').aboveOrEqual(from);
  const count = await since().count();
  const rows = await since()
    // An id never goes back within a page, though the clock may.
    .filter((row) => row.kind !== 'backed-up' && !(Number(lineOf(row)?.entry.writtenAtMs) <= lastMs))
    .limit(1)
    .toArray();
  const [first] = entriesOf(rows);
  const entries = count - notes.filter(({ id }) => id >= from).length;
  if (first) return { entries, sinceMs: first.writtenAtMs };
  // What a clock that was behind wrote since has the ids of an earlier time: the count knows of it.
  const left = exposure(notes, await log.entries.count()).entries;
  return left > 0 ? { entries: left, sinceMs: lastMs } : null;
}

/** The least id of an entry that is written after this instant. */
function firstIdAfter(atMs: number): string {
  const time = (atMs + 1).toString(16).padStart(12, '0');
  return `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-000000000000`;
}
