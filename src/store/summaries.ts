/**
 * Every batch as it stands, without reading every entry each time. The log only grows, so that a batch which as many entries
 * touch as before is as it was before: it is remembered in the page, and a finished one in a database that may be thrown away
 * at any time. A summary that does not prove itself by its sum is none.
 */
import { Dexie, type Table } from 'dexie';
import { type Batch, batch } from '#record/batch.ts';
import { type Entry, hashLine } from '#record/entry.ts';
import { withChecks } from '#record/instruments.ts';
import { inOrder } from '#record/strikes.ts';
import { isSubject, type SubjectId } from '#record/subject.ts';
import { BUILD } from './build.ts';
import { log } from './database.ts';
import { currentDevice } from './device.ts';
import { entriesNow } from './entries.ts';
import { allRows, rowsAbout, rowsTouching } from './rows.ts';

type Summary = { readonly key: string; readonly batch: Batch | null };
type SummaryRow = {
  readonly id: SubjectId;
  readonly key: string;
  readonly text: string;
  readonly sum: string;
};
type AsText = Omit<Batch, 'weighedOut'> & { readonly weighedOut: readonly (readonly [string, unknown])[] };

/** So many batches at once are read with the whole log: one reading is quicker than many. */
const MANY = 10;

const summaries = new Dexie('greenweight-summaries', { cache: 'disabled' }) as Dexie & {
  readonly batches: Table<SummaryRow, SubjectId>;
};
summaries.version(1).stores({ batches: 'id' });

let held: Promise<Map<SubjectId, Summary>> | null = null;

/** Every batch as it stands, the last opened first. */
export async function batchesNow(): Promise<Batch[]> {
  held ??= outside(load).catch(() => new Map());
  const known = await held;
  const keys = await keysNow();
  const stale = [...keys].filter(([id, key]) => known.get(id)?.key !== key).map(([id]) => id);
  if (stale.length > 0) {
    const rows =
      stale.length > MANY
        ? (await allRows()).rows
        : [...(await rowsTouching(stale)), ...(await rowsAbout('instrument'))];
    const folded = fold(stale, await entriesNow(rows));
    for (const id of stale) known.set(id, { key: keys.get(id) ?? '', batch: folded.get(id) ?? null });
    void outside(() => keep(stale, known)).catch(() => undefined);
  }
  return [...keys.keys()]
    .map((id) => known.get(id)?.batch ?? null)
    .filter((each) => each !== null)
    .sort((a, b) => inOrder(b.opened, a.opened));
}

/**
 * What the summary of each batch rests on: how many rows touch it, how many are about instruments and about clocks that were
 * wrong, whose store, which build.
 */
async function keysNow(): Promise<Map<SubjectId, string>> {
  return log.transaction('r', log.entries, log.devices, async () => {
    const device = await currentDevice();
    const about = (type: string) =>
      log.entries
        .where('[subject+atMs]')
        .between([`${type}:`, Dexie.minKey], [`${type};`, Dexie.minKey])
        .count();
    const checks = await about('instrument');
    const clocks = await about('device');
    const ids = (await log.entries.where('touches').between('batch:', 'batch;').uniqueKeys()) as SubjectId[];
    const counts = await Promise.all(ids.map((id) => log.entries.where('touches').equals(id).count()));
    return new Map(
      ids.map((id, at) => [id, `${counts[at]} ${checks} ${clocks} ${log.name} ${device} ${BUILD}`]),
    );
  });
}

function fold(ids: readonly SubjectId[], entries: readonly Entry[]): Map<SubjectId, Batch | null> {
  const touching = new Map<SubjectId, Entry[]>(ids.map((id) => [id, []]));
  for (const entry of entries)
    for (const subject of new Set([entry.subject, ...entry.refs])) touching.get(subject)?.push(entry);
  const ofInstruments = entries.filter(({ subject }) => isSubject(subject, 'instrument'));
  return new Map([...touching].map(([id, own]) => [id, batch(id, withChecks(own, ofInstruments))]));
}

async function load(): Promise<Map<SubjectId, Summary>> {
  const rows = await summaries.batches.toArray();
  return new Map(
    rows
      .filter(({ id, key, text, sum }) => hashLine(`${id} ${key} ${text}`) === sum)
      .map(({ id, key, text }) => [id, { key, batch: fromText(text) }]),
  );
}

async function keep(ids: readonly SubjectId[], known: ReadonlyMap<SubjectId, Summary>): Promise<void> {
  const rows = ids.flatMap((id): SummaryRow[] => {
    const summary = known.get(id);
    if (summary?.batch?.stage !== 'finished') return [];
    const text = toText(summary.batch);
    return [{ id, key: summary.key, text, sum: hashLine(`${id} ${summary.key} ${text}`) }];
  });
  await summaries.batches.bulkPut(rows);
}

function toText(whole: Batch): string {
  const asText: AsText = { ...whole, weighedOut: [...whole.weighedOut] };
  return JSON.stringify(asText);
}

function fromText(text: string): Batch {
  const asText: AsText = JSON.parse(text);
  return { ...asText, weighedOut: new Map(asText.weighedOut) as Batch['weighedOut'] };
}

/** Outside of a live query, which may not write and should not wake for what is written here. */
function outside<T>(work: () => PromiseLike<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    setTimeout(() => Promise.resolve(work()).then(resolve, reject));
  });
}
