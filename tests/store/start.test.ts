import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Draft } from '#record/entry.ts';
import { freshDevice, memoryStorage, openPage } from './fresh-store.ts';

const note = (text: string): Draft => ({
  kind: 'noted',
  subject: 'batch:a',
  atMs: 1_700_000_000_000,
  zone: '+01:00',
  by: 'AB',
  body: { text },
});

async function used(count: number): Promise<void> {
  const page = await openPage();
  await page.startCheck();
  for (let number = 0; number < count; number++) await page.append([note(`${number}`)]);
  page.log.close();
}

/** Writes past the store, as a fault of the disk would: the store's own table takes no change. */
async function behindTheStore(change: (entries: IDBObjectStore) => void): Promise<void> {
  const open = indexedDB.open('greenweight');
  await new Promise((resolve) => open.addEventListener('success', resolve));
  const transaction = open.result.transaction('entries', 'readwrite');
  change(transaction.objectStore('entries'));
  await new Promise((resolve) => transaction.addEventListener('complete', resolve));
  open.result.close();
}

async function rowsOf() {
  const page = await openPage();
  await page.log.open();
  const rows = await page.log.entries.orderBy('[device+seq]').toArray();
  page.log.close();
  return rows;
}

beforeEach(freshDevice);

describe('the check at the start', () => {
  it('finds a sound log sound, and goes on with its device', async () => {
    await used(3);
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'ready', first: false, told: [] });
    await page.append([note('more')]);
    const rows = await page.log.entries.orderBy('[device+seq]').toArray();
    expect(new Set(rows.map(({ device }) => device)).size).toBe(1);
    expect(rows.map(({ seq }) => seq)).toEqual([1, 2, 3, 4]);
  });

  it('never calls an emptied store a first start', async () => {
    await used(3);
    vi.stubGlobal('indexedDB', new IDBFactory());
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'lost', missing: 3 });
    expect(await page.append([note('x')])).toEqual({ ok: false, problem: { code: 'not-checked-yet' } });
    expect(await page.beginAnew()).toEqual({ code: 'ready', first: true, told: [] });
    expect((await page.append([note('new')])).ok).toBe(true);
    const { notices } = await page.health();
    expect(notices.map(({ code, count }) => [code, count])).toEqual([['began-anew', 3]]);
  });

  it('tells how many are missing at the end, and begins a new chain', async () => {
    await used(5);
    const [last, ...rest] = (await rowsOf()).reverse();
    await behindTheStore((entries) => entries.delete(last?.id ?? ''));
    const page = await openPage();
    expect(await page.startCheck()).toMatchObject({ code: 'ready', told: [{ code: 'missing', count: 1 }] });
    await page.append([note('after')]);
    const devices = new Set((await page.log.entries.toArray()).map(({ device }) => device));
    expect(devices.size).toBe(2);
    expect((await page.health()).entries).toBe(rest.length + 1);
    page.log.close();
    expect(await (await openPage()).startCheck()).toMatchObject({ code: 'ready', told: [] });
  });

  it('tells a gap in the middle', async () => {
    await used(5);
    const rows = await rowsOf();
    await behindTheStore((entries) => entries.delete(rows[2]?.id ?? ''));
    const page = await openPage();
    const start = await page.startCheck();
    expect(start).toMatchObject({ code: 'ready', told: [{ code: 'missing' }, { code: 'gap', count: 1 }] });
  });

  it('reads all others when a row was damaged, exports them, and turns what it touched to unknown', async () => {
    await used(5);
    const [first] = await rowsOf();
    if (!first) throw new Error('no row');
    await behindTheStore((entries) => entries.put({ ...first, line: first.line.replace('"AB"', '"XY"') }));
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'ready', first: false, told: [] });
    expect(await page.lookThrough()).toMatchObject({
      code: 'ready',
      told: [
        { code: 'missing', count: 1 },
        { code: 'damaged', count: 1 },
        { code: 'gap', count: 1 },
      ],
    });
    const { entries, damaged } = await page.health();
    expect([entries, damaged]).toEqual([4, [first.id]]);
    const exported = await page.exportLog();
    expect([exported.entries, exported.left]).toEqual([4, [first.id]]);
    const touching = page.entriesOf(await page.rowsTouching(['batch:a']));
    expect(touching.filter(({ kind }) => kind === null)).toMatchObject([
      { named: 'unreadable', id: first.id },
    ]);
  });

  it('heals a damaged row from a backup, beside the damaged one', async () => {
    await used(5);
    const before = await openPage();
    await before.startCheck();
    const { text } = await before.exportLog();
    before.log.close();
    const [first] = await rowsOf();
    if (!first) throw new Error('no row');
    await behindTheStore((entries) => entries.put({ ...first, line: first.line.replace('"AB"', '"XY"') }));
    const page = await openPage();
    await page.startCheck();
    expect(await page.takeIn(await page.planImport(text))).toMatchObject({ ok: true, added: 1 });
    const { entries, damaged, faults } = await page.health();
    expect([entries, damaged, faults]).toEqual([5, [], []]);
    expect((await page.exportLog()).entries).toBe(5);
  });

  it('works without a local storage', async () => {
    const forbidden = memoryStorage();
    forbidden.getItem = forbidden.setItem = () => {
      throw new DOMException('denied', 'SecurityError');
    };
    vi.stubGlobal('localStorage', forbidden);
    await used(2);
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'ready', first: false, told: [] });
  });

  it('does not write to a log that a newer build has opened', async () => {
    await used(2);
    const newer = indexedDB.open('greenweight', 20);
    newer.onupgradeneeded = () => newer.result.createObjectStore('later');
    await new Promise((resolve) => newer.addEventListener('success', resolve));
    newer.result.close();
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'newer-open' });
    expect((await page.append([note('x')])).ok).toBe(false);
  });

  it('stops writing when a newer build wants the log while the page is open', async () => {
    const page = await openPage();
    await page.startCheck();
    await page.append([note('x')]);
    const newer = indexedDB.open('greenweight', 20);
    await new Promise((resolve) => newer.addEventListener('success', resolve));
    newer.result.close();
    expect(page.storeState().start).toEqual({ code: 'newer-open' });
    expect((await page.append([note('y')])).ok).toBe(false);
  });

  it('reads no old line before it lets the maker write', async () => {
    await used(30);
    const page = await openPage();
    const read = vi.spyOn(JSON, 'parse');
    await page.startCheck();
    // The witness and the last line; thirty lines when all are looked through.
    expect(read.mock.calls.length).toBeLessThan(5);
    await page.lookThrough();
    expect(read.mock.calls.length).toBeGreaterThan(30);
    read.mockRestore();
  });

  it('takes a witness that lags behind for what it is, and brings it up', async () => {
    await used(3);
    const lagging = localStorage.getItem('greenweight-sentinel') ?? '';
    await used(2);
    localStorage.setItem('greenweight-sentinel', lagging);
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'ready', first: false, told: [] });
    expect(JSON.parse(localStorage.getItem('greenweight-sentinel') ?? '')).toMatchObject({
      lastSeq: 5,
      count: 5,
    });
    expect(await page.lookThrough()).toEqual({ code: 'ready', first: false, told: [] });
  });

  it('finds a last line that went bad before anything follows it', async () => {
    await used(3);
    const [last] = (await rowsOf()).reverse();
    if (!last) throw new Error('no row');
    await behindTheStore((entries) => entries.put({ ...last, line: last.line.replace('"AB"', '"XY"') }));
    const page = await openPage();
    expect(await page.startCheck()).toMatchObject({
      code: 'ready',
      told: [
        { code: 'missing', count: 1 },
        { code: 'damaged', count: 1 },
      ],
    });
  });

  it('looks through old lines while the maker writes, and takes nothing of it for a fault', async () => {
    await used(40);
    const page = await openPage();
    await page.startCheck();
    const looking = page.lookThrough();
    for (let number = 0; number < 20; number++) await page.append([note(`meanwhile ${number}`)]);
    expect(await looking).toEqual({ code: 'ready', first: false, told: [] });
    page.log.close();
    expect(await (await openPage()).startCheck()).toEqual({ code: 'ready', first: false, told: [] });
  });
});
