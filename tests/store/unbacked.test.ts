import { beforeEach, describe, expect, it, vi } from 'vitest';
import { unbacked } from '#record/exposure.ts';
import { PLACE } from '#record/subject.ts';
import { freshDevice, openPage } from './fresh-store.ts';

const DAY_MS = 24 * 3_600_000;
const START_MS = Date.UTC(2025, 4, 5, 8);

const given = { atMs: START_MS, zone: '+01:00', by: 'HK', refs: [] };

beforeEach(() => {
  freshDevice();
  vi.useFakeTimers({ now: START_MS, toFake: ['Date'] });
  return () => vi.useRealTimers();
});

async function written() {
  const page = await openPage();
  const { unbackedNow } = await import('#store/unbacked.ts');
  await page.startCheck();
  const note = (text: string) => page.append([{ ...given, kind: 'noted', subject: PLACE, body: { text } }]);
  const backUp = async () => {
    const body = { entries: (await page.allRows()).rows.length, bytes: 1, hash: '', place: 'shared' };
    return page.append([{ ...given, kind: 'backed-up', subject: PLACE, body }]);
  };
  const all = async () => page.entriesOf((await page.allRows()).rows);
  const later = (days: number) => vi.setSystemTime(START_MS + days * DAY_MS);
  return { note, backUp, all, later, unbackedNow };
}

describe('what no backup holds, found by the ids', () => {
  it('is what reading every entry gives', async () => {
    const { note, backUp, all, later, unbackedNow } = await written();
    const same = async () => {
      const found = await unbackedNow();
      expect(found).toEqual(unbacked(await all()));
      return found;
    };
    expect(await same()).toBe(null);
    await note('first');
    later(1);
    await note('second');
    expect(await same()).toEqual({ entries: 2, sinceMs: START_MS });
    later(2);
    await backUp();
    expect(await same()).toBe(null);
    later(3);
    await note('third');
    later(4);
    await note('fourth');
    expect(await same()).toEqual({ entries: 2, sinceMs: START_MS + 3 * DAY_MS });
  });

  it('is told again soon after a backup was noted under a clock that ran ahead', async () => {
    const { note, backUp, later, unbackedNow } = await written();
    await note('first');
    later(400);
    await backUp();
    expect(await unbackedNow()).toBe(null);
    later(1);
    await note('the clock is right again');
    expect(await unbackedNow()).toMatchObject({ sinceMs: START_MS });
    await backUp();
    later(2);
    expect(await unbackedNow()).toBe(null);
  });

  it('is told too of what was written under a clock that was behind', async () => {
    const { note, backUp, later, unbackedNow } = await written();
    await note('first');
    later(1);
    await backUp();
    later(-400);
    await note('behind');
    await note('and behind');
    later(2);
    expect(await unbackedNow()).toEqual({ entries: 2, sinceMs: START_MS + DAY_MS });
  });
});
