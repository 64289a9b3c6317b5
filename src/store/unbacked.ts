import { lastBackUpMs, type Unbacked } from '#record/exposure.ts';
import { ofKind } from '#record/fold.ts';
import { PLACE } from '#record/subject.ts';
import { log } from './database.ts';
import { entriesOf } from './row.ts';
import { rowsTouching } from './rows.ts';

/** What was written since the last backup: by the ids, which begin with the time, and not by reading every entry. */
export async function unbackedNow(): Promise<Unbacked | null> {
  const notes = ofKind(entriesOf(await rowsTouching([PLACE])), 'backed-up');
  const from = firstIdAfter(lastBackUpMs(notes));
  const since = () => log.entries.where('id').aboveOrEqual(from);
  const count = await since().count();
  const rows = await since()
    .filter(({ kind }) => kind !== 'backed-up')
    .limit(1)
    .toArray();
  const [first] = entriesOf(rows);
  const entries = count - notes.filter(({ id }) => id >= from).length;
  return first ? { entries, sinceMs: first.writtenAtMs } : null;
}

/** The least id of an entry that is written after this instant. */
function firstIdAfter(atMs: number): string {
  const time = (atMs + 1).toString(16).padStart(12, '0');
  return `${time.slice(0, 8)}-${time.slice(8)}-7000-8000-000000000000`;
}
