/** What is being typed, kept across a kill. A database of its own, which may be thrown away; entries never stand in it. */
import { Dexie, type Table } from 'dexie';

type DraftRow = { readonly key: string; readonly text: string };

const drafts = new Dexie('greenweight-drafts', { cache: 'disabled' }) as Dexie & {
  readonly fields: Table<DraftRow, string>;
};
drafts.version(1).stores({ fields: 'key' });

/** A draft that cannot be kept costs nothing but itself, so none of these fails. */
export async function saveDraft(key: string, text: string): Promise<void> {
  await drafts.fields.put({ key, text }).catch(() => undefined);
}

export async function readDraft(key: string): Promise<string | undefined> {
  const row: DraftRow | undefined = await drafts.fields.get(key).catch(() => undefined);
  return row?.text;
}

export async function dropDraft(key: string): Promise<void> {
  await drafts.fields.delete(key).catch(() => undefined);
}
