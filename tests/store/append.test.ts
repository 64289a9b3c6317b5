import { beforeEach, describe, expect, it } from 'vitest';
import type { Draft } from '#record/entry.ts';
import { PLACE } from '#record/subject.ts';
import { freshDevice, openPage } from './fresh-store.ts';

const note = (text: string, subject: Draft['subject'] = 'batch:a'): Draft => ({
  kind: 'noted',
  subject,
  atMs: 1_700_000_000_000,
  zone: '+01:00',
  by: 'AB',
  body: { text },
});

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
    const appended = await page.append([note('one'), note('two'), note('three', PLACE)]);
    expect(appended.ok && appended.copies).toBe('one');
    const rows = await page.log.entries.orderBy('[device+seq]').toArray();
    expect(rows.map((row) => row.seq)).toEqual([1, 2, 3]);
    const lines = rows.map((row) => page.lineOf(row));
    expect(lines.map((line) => line?.entry.prev)).toEqual(['', rows[0]?.hash, rows[1]?.hash]);
  });
});
