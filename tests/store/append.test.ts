import { Dexie } from 'dexie';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Draft } from '#record/entry.ts';
import { PLACE } from '#record/subject.ts';
import { book, openBatch, setUp } from '../screens/book.ts';
import { freshDevice, openPage, type Page } from './fresh-store.ts';

const note = (text: string, more: Partial<Draft> = {}): Draft =>
  ({
    kind: 'noted',
    subject: 'batch:a',
    atMs: 1_700_000_000_000,
    zone: '+01:00',
    by: 'AB',
    body: { text },
    ...more,
  }) as Draft;

async function started(): Promise<Page> {
  const page = await openPage();
  await page.startCheck();
  return page;
}

beforeEach(freshDevice);

describe('append', () => {
  it('refuses before the check at the start has passed', async () => {
    const page = await openPage();
    expect(await page.append([note('x')])).toEqual({ ok: false, problem: { code: 'not-checked-yet' } });
    expect(await page.log.entries.count()).toBe(0);
  });

  it('stores all drafts of one call, each following the line before', async () => {
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'ready', first: true, told: [] });
    const appended = await page.append([note('one'), note('two'), note('three', { subject: PLACE })]);
    // Node has no origin private file system, and the store says so.
    expect(appended.ok && appended.copies).toBe('one');
    const rows = await page.log.entries.orderBy('[device+seq]').toArray();
    expect(rows.map((row) => row.seq)).toEqual([1, 2, 3]);
    const lines = rows.map((row) => page.lineOf(row));
    expect(lines.map((line) => line?.entry.prev)).toEqual(['', rows[0]?.hash, rows[1]?.hash]);
    expect(appended.ok && appended.entries).toEqual(lines.map((line) => line?.entry));
  });

  it('stores none of the drafts when one of them is refused, and names the field', async () => {
    const page = await started();
    const refused = async (bad: Draft) => {
      const appended = await page.append([note('good'), bad]);
      return appended.ok ? null : appended.problem;
    };
    expect(await refused(note('x', { zone: 'CET' }))).toEqual({ code: 'bad-draft', field: 'zone' });
    expect(await refused(note('x'.repeat(2001)))).toEqual({ code: 'bad-draft', field: 'text' });
    expect(await refused(note('x', { atMs: Number.NaN }))).toEqual({ code: 'bad-draft', field: 'atMs' });
    expect(await refused(note('x', { subject: 'batch:a b' }))).toEqual({
      code: 'bad-draft',
      field: 'subject',
    });
    expect(await page.log.entries.count()).toBe(0);
  });

  it('files a strike under what it strikes, and under all that this touched', async () => {
    const page = await started();
    const weighed: Draft = {
      ...note(''),
      kind: 'weighed',
      subject: 'piece:b',
      refs: ['batch:a'],
      body: { grossG: 4120, stage: 'round' },
    };
    const first = await page.append([weighed]);
    const id = first.ok ? first.entries[0]?.id : undefined;
    if (!id) throw new Error('nothing was stored');
    const struck = (subject: Draft['subject'], struckId = id): Draft => ({
      ...note(''),
      kind: 'struck',
      subject,
      body: {},
      strikes: { id: struckId, reason: 'misread' },
    });
    const missing = `${id.slice(0, -4)}0000` as typeof id;
    expect(await page.append([struck('batch:a')])).toMatchObject({ problem: { field: 'subject' } });
    expect(await page.append([struck('piece:b', missing)])).toMatchObject({
      problem: { field: 'strikes.id' },
    });
    expect(await page.append([struck('piece:b')])).toMatchObject({
      ok: true,
      entries: [{ refs: ['batch:a'] }],
    });
    const touching = page.entriesOf(await page.rowsTouching(['batch:a']));
    expect(touching.map((entry) => entry.kind).sort((a, b) => String(a).localeCompare(String(b)))).toEqual([
      'struck',
      'weighed',
    ]);
  });

  it('keeps one chain when two pages append at once', async () => {
    const pages = [await started(), await started()];
    const appended = await Promise.all(
      pages.flatMap((page) =>
        Array.from({ length: 20 }, (_, number) => page.append([note(`a ${number}`), note('b')])),
      ),
    );
    expect(appended.every(({ ok }) => ok)).toBe(true);
    const third = await started();
    const { entries, faults } = await third.health();
    expect([entries, faults]).toEqual([80, []]);
  });

  it('records through a clock that is wrong, and flags the step', async () => {
    const page = await started();
    await page.append([note('today')]);
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() - 400 * 86_400_000 });
    expect((await page.append([note('400 days ago')])).ok).toBe(true);
    vi.useRealTimers();
    const { clockSteps } = await page.health();
    expect(clockSteps.map(({ backMs }) => Math.round(backMs / 86_400_000))).toEqual([400]);
  });
});

describe('the table of entries', () => {
  it('takes add only, below every API', async () => {
    const page = await started();
    await page.append([note('one')]);
    const { entries, devices, notices } = page.log;
    const [row] = await entries.toArray();
    if (!row) throw new Error('nothing was stored');
    const changed = { ...row, line: '{}' };
    for (const change of [
      () => entries.put(changed),
      () => entries.bulkPut([changed]),
      () => entries.update(row.id, { line: '{}' }),
      () => entries.upsert(row.id, { line: '{}' }),
      () => entries.bulkUpdate([{ key: row.id, changes: { line: '{}' } }]),
      () => entries.delete(row.id),
      () => entries.bulkDelete([row.id]),
      () => entries.clear(),
      () => entries.where('id').equals(row.id).modify({ line: '{}' }),
      () => entries.where('id').equals(row.id).delete(),
      () => entries.toCollection().delete(),
      () => devices.clear(),
      () => notices.clear(),
      () => entries.add(row),
      () => entries.add({ ...row, id: 'another' }),
    ]) {
      await expect(change(), String(change)).rejects.toThrow();
    }
    expect(await entries.toArray()).toEqual([row]);
  });

  it('is written with strict durability, and not through a cache', async () => {
    const { log } = await started();
    const durability = await log.transaction('rw', log.entries, () => {
      const { idbtrans } = Dexie.currentTransaction as unknown as { idbtrans: IDBTransaction };
      return idbtrans.durability;
    });
    expect(durability).toBe('strict');
  });
});

describe('the question whether the browser keeps the store', () => {
  it('is put once, when the first batch was opened', async () => {
    const persist = vi.fn(async () => true);
    vi.stubGlobal('navigator', { storage: { persist } });
    const page = await openPage();
    await page.startCheck();
    const of = openBatch(setUp(book()));
    const opened = of.entries.at(-1);
    if (opened?.kind !== 'batch-opened') throw new Error('no batch');
    const { subject, atMs, zone, by, body } = opened;
    await page.append([
      { kind: 'noted', subject: 'batch:a', atMs, zone, by, body: { text: 'before any batch' } },
    ]);
    expect(persist).toHaveBeenCalledTimes(0);
    for (let batch = 0; batch < 2; batch++)
      expect((await page.append([{ kind: 'batch-opened', subject, atMs, zone, by, body }])).ok).toBe(true);
    expect(persist).toHaveBeenCalledTimes(1);
    vi.unstubAllGlobals();
  });
});
