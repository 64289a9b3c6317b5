import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Draft } from '#record/entry.ts';
import { clockSubject } from '#record/put-right.ts';
import { inOrder } from '#record/strikes.ts';
import { BATCH, book, openBatch, setUp } from '../screens/book.ts';
import { freshDevice, openPage, type Page } from './fresh-store.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const START_MS = Date.UTC(2025, 4, 5, 8);
const ROOMS_C = [20, 21, 22, 23, 24];

beforeEach(() => {
  freshDevice();
  vi.useFakeTimers({ now: START_MS, toFake: ['Date'] });
  return () => vi.useRealTimers();
});

/** The room is read every hour; the second and third time the clock stands wrong. */
async function readings(page: Page, aheadMs: number) {
  const opened = openBatch(setUp(book())).entries.at(-1);
  if (opened?.kind !== 'batch-opened') throw new Error('no batch');
  const given = { zone: '+01:00', by: 'HK', subject: BATCH, refs: [] };
  const append = async (atMs: number, draft: Omit<Draft, 'atMs' | 'zone' | 'by' | 'subject'>) => {
    vi.setSystemTime(atMs);
    const appended = await page.append([{ ...given, atMs, ...draft } as Draft]);
    if (!appended.ok) throw new Error(JSON.stringify(appended.problem));
    return appended.entries[0];
  };
  await append(START_MS - HOUR_MS, { kind: 'batch-opened', body: opened.body });
  for (const [at, roomC] of ROOMS_C.entries()) {
    const wrongMs = at === 1 || at === 2 ? aheadMs : 0;
    await append(START_MS + at * HOUR_MS + wrongMs, { kind: 'room-read', body: { roomC } });
  }
}

async function fix(page: Page, aheadMs: number) {
  const device = (await page.allRows()).rows[0]?.device ?? '';
  const body = { device, fromSeq: 3, toSeq: 4, shiftMs: -aheadMs, reason: 'the date was wrong' };
  const subject = clockSubject(device);
  const given = { atMs: START_MS + 6 * HOUR_MS, zone: '+01:00', by: 'HK', subject, refs: [] };
  const fixed = await page.append([{ ...given, kind: 'clock-corrected', body }]);
  const strike = (reason: string) =>
    page.append([
      {
        ...given,
        kind: 'struck',
        body: {},
        strikes: { id: fixed.ok && fixed.entries[0]?.id, reason },
      } as Draft,
    ]);
  return { fixed, strike };
}

/** What a screen that reads one batch is given, in order. */
async function roomsOf(page: Page): Promise<(number | undefined)[]> {
  const { entriesNow } = await import('#store/entries.ts');
  const entries = (await entriesNow(await page.rowsTouching([BATCH]))).sort(inOrder);
  return entries.flatMap((entry) => (entry.kind === 'room-read' ? [entry.body.roomC] : []));
}

const summary = async (page: Page) => (await page.batchesNow())[0]?.room.map(({ body }) => body.roomC);

describe.each([400 * DAY_MS, -400 * DAY_MS])('a clock that stood %d ms ahead', (aheadMs) => {
  it('is flagged, put right by an entry, and wrong again when that is struck', async () => {
    const page = await openPage();
    await page.startCheck();
    await readings(page, aheadMs);
    const wrong = await roomsOf(page);
    expect(wrong).not.toEqual(ROOMS_C);
    expect(await summary(page)).toEqual(wrong);
    expect((await page.health()).clockSteps).toHaveLength(1);
    const before = (await page.allRows()).rows;

    const { fixed, strike } = await fix(page, aheadMs);
    expect(fixed.ok).toBe(true);
    expect(await roomsOf(page)).toEqual(ROOMS_C);
    expect(await summary(page)).toEqual(ROOMS_C);
    expect((await page.health()).clockSteps).toEqual([]);
    expect((await page.allRows()).rows.filter(({ subject }) => !subject.startsWith('device:'))).toEqual(
      before,
    );

    expect((await strike('it was right')).ok).toBe(true);
    expect(await roomsOf(page)).toEqual(wrong);
    expect(await summary(page)).toEqual(wrong);
    expect((await page.health()).clockSteps).toHaveLength(1);
  });

  it('is put right on another phone too, whichever part arrives there first', async () => {
    const page = await openPage();
    await page.startCheck();
    await readings(page, aheadMs);
    const early = (await page.exportLog()).text;
    await fix(page, aheadMs);
    const whole = (await page.exportLog()).text;
    for (const files of [
      [early, whole],
      [whole, early],
    ]) {
      freshDevice();
      const other = await openPage();
      await other.startCheck();
      for (const text of files) {
        const plan = await other.planImport(text);
        expect((await other.takeIn(plan)).ok).toBe(true);
      }
      expect(await roomsOf(other)).toEqual(ROOMS_C);
      expect(await summary(other)).toEqual(ROOMS_C);
    }
  });
});
