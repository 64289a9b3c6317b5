/** Reads rows; where the browser cannot read one of many, the others are read one by one. */
import { type Collection, Dexie } from 'dexie';
import type { SubjectId } from '#record/subject.ts';
import { log, type Row } from './database.ts';

export type AllRows = { readonly rows: readonly Row[]; readonly unreadable: readonly string[] };

export async function allRows(): Promise<AllRows> {
  try {
    return { rows: await log.entries.toArray(), unreadable: [] };
  } catch {
    return oneByOne((await log.entries.toCollection().primaryKeys()) as string[]);
  }
}

/** All rows, so many at a time, in the order of their ids. What is added meanwhile may be missed. */
export async function eachPage(size: number, work: (page: AllRows) => Promise<void>): Promise<void> {
  for (let after = ''; ; ) {
    const here = log.entries.where('id').above(after).limit(size);
    const ids = (await here.primaryKeys()) as string[];
    const last = ids.at(-1);
    if (last === undefined) return;
    const rows = await here.toArray().catch(() => null);
    await work(rows ? { rows, unreadable: [] } : await oneByOne(ids));
    after = last;
  }
}

export function rowsTouching(subjects: readonly SubjectId[]): Promise<Row[]> {
  return readable(
    log.entries
      .where('touches')
      .anyOf([...subjects])
      .distinct(),
  );
}

/** Rows whose own subject is of this type, such as all lots. */
export function rowsAbout(type: string): Promise<Row[]> {
  return readable(
    log.entries.where('[subject+atMs]').between([`${type}:`, Dexie.minKey], [`${type};`, Dexie.minKey]),
  );
}

async function readable(found: Collection<Row, string>): Promise<Row[]> {
  try {
    return await found.toArray();
  } catch {
    const { rows } = await oneByOne((await found.primaryKeys()) as string[]);
    return [...rows];
  }
}

async function oneByOne(ids: readonly string[]): Promise<AllRows> {
  const rows: Row[] = [];
  const unreadable: string[] = [];
  for (const id of ids) {
    try {
      const row = await log.entries.get(id);
      if (row) rows.push(row);
    } catch {
      unreadable.push(id);
    }
  }
  return { rows, unreadable };
}
