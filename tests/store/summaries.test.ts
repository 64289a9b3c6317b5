import { beforeEach, describe, expect, it } from 'vitest';
import type { SubjectId } from '#record/subject.ts';
import {
  BATCH,
  type Book,
  batchOf,
  book,
  ferment,
  fileOf,
  openBatch,
  pieceId,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';
import { freshDevice, openPage } from './fresh-store.ts';

const RUNNING: SubjectId = 'batch:018cdc00-0000-7000-a000-0000000000ff';
const DAY_HOURS = 24;

/** One batch that is taken down and one that was only opened. */
function twoBatches(): Book {
  const of = weighRound(
    ferment(stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))))),
    33.5,
    [800, 790, 795, 810],
    { stage: 'to-drying' },
  );
  for (const number of [1, 2, 3, 4])
    of.put(40 * DAY_HOURS, 'taken-down', pieceId(number), { why: 'at-target' }, { refs: [BATCH] });
  return openBatch(of, { id: RUNNING, atHours: 41 * DAY_HOURS });
}

async function withBook(of: Book) {
  const page = await openPage();
  await page.startCheck();
  await page.takeIn(await page.planImport(fileOf(of)));
  return page;
}

/** Reads of whole rows of the log while work runs. */
async function rowsRead(
  page: Awaited<ReturnType<typeof openPage>>,
  work: () => Promise<unknown>,
): Promise<number> {
  let rows = 0;
  page.log.entries.hook('reading', (row) => {
    rows += 1;
    return row;
  });
  await work();
  return rows;
}

const kept = () => new Promise((resolve) => setTimeout(resolve, 100));

beforeEach(freshDevice);

describe('batches as they stand', () => {
  const of = twoBatches();
  const fresh = [batchOf(of, RUNNING), batchOf(of)];

  it('are what the log says, at first and in a page that finds summaries of another', async () => {
    const page = await withBook(of);
    expect(await page.batchesNow()).toEqual(fresh);
    await kept();
    page.log.close();
    const next = await openPage();
    await next.startCheck();
    const rows = await rowsRead(next, async () => expect(await next.batchesNow()).toEqual(fresh));
    expect(rows).toBeLessThan(of.entries.length / 2);
  });

  it('are what the log says when all summaries were thrown away', async () => {
    const page = await withBook(of);
    await page.batchesNow();
    await kept();
    page.log.close();
    indexedDB.deleteDatabase('greenweight-summaries');
    const next = await openPage();
    await next.startCheck();
    expect(await next.batchesNow()).toEqual(fresh);
  });

  it('are what the log says when a summary was changed behind the store', async () => {
    const page = await withBook(of);
    await page.batchesNow();
    await kept();
    page.log.close();
    const open = indexedDB.open('greenweight-summaries');
    await new Promise((resolve) => open.addEventListener('success', resolve));
    const table = open.result.transaction('batches', 'readwrite').objectStore('batches');
    const rows = await new Promise<{ text: string }[]>((resolve) => {
      const asked = table.getAll();
      asked.addEventListener('success', () => resolve(asked.result));
    });
    expect(rows).toHaveLength(1);
    for (const row of rows) table.put({ ...row, text: row.text.replace('Invented', 'Changed') });
    await new Promise((resolve) => table.transaction.addEventListener('complete', resolve));
    open.result.close();
    const next = await openPage();
    await next.startCheck();
    expect(await next.batchesNow()).toEqual(fresh);
  });

  it('follow what is written to a finished batch later', async () => {
    const page = await withBook(of);
    await page.batchesNow();
    await kept();
    await page.append([
      { kind: 'noted', subject: BATCH, atMs: Date.now(), zone: '+00:00', by: 'HK', body: { text: 'later' } },
    ]);
    const [, finished] = await page.batchesNow();
    expect(finished?.notes.map(({ body }) => body.text)).toEqual(['later']);
  });
});
