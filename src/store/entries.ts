import type { Entry } from '#record/entry.ts';
import type { Row } from './database.ts';
import { entriesOf } from './row.ts';
import { rowsAbout } from './rows.ts';

/**
 * Rows as folds and screens may read them: with the times of a wrong clock put right. What puts them right is about the phone,
 * so it is read beside whatever was asked for; most books hold none, and then nothing more is loaded.
 */
export async function entriesNow(rows: readonly Row[]): Promise<Entry[]> {
  const about = await rowsAbout('device');
  const entries = entriesOf(rows);
  if (about.length === 0) return entries;
  const { putRight } = await import('#record/put-right.ts');
  return putRight(entries, entriesOf(about));
}
