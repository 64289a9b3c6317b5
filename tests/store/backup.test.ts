import { beforeEach, describe, expect, it } from 'vitest';
import type { Draft } from '#record/entry.ts';
import { freshDevice, openPage, type Page } from './fresh-store.ts';

const note = (text: string): Draft => ({
  kind: 'noted',
  subject: 'batch:a',
  atMs: 1_700_000_000_000,
  zone: '+01:00',
  by: 'AB',
  body: { text },
});

async function phone(...texts: string[]): Promise<Page> {
  freshDevice();
  const page = await openPage();
  await page.startCheck();
  for (const text of texts) await page.append([note(text)]);
  return page;
}

const linesOf = async (page: Page) => new Set((await page.log.entries.toArray()).map(({ line }) => line));

beforeEach(freshDevice);

describe('a backup', () => {
  it('taken into an empty phone gives the same log, and the same file again', async () => {
    const one = await phone('ü 🐖', 'two', 'three');
    const lines = await linesOf(one);
    const { text, entries } = await one.exportLog('test');
    expect(entries).toBe(3);
    const two = await phone();
    const plan = await two.planImport(text);
    expect(plan).toMatchObject({
      ok: true,
      lines: 3,
      here: 0,
      twins: [],
      unknown: 0,
      problems: [],
      faults: [],
    });
    expect(await two.log.entries.count()).toBe(0);
    expect(await two.takeIn(plan)).toEqual({ ok: true, added: 3, copies: 'one' });
    expect(await linesOf(two)).toEqual(lines);
    const again = await two.exportLog('test');
    expect(again.text.split('\n').slice(1, -2)).toEqual(text.split('\n').slice(1, -2));
  });

  it('taken in twice changes nothing', async () => {
    const { text } = await (await phone('one', 'two')).exportLog();
    const two = await phone('three');
    await two.takeIn(await two.planImport(text));
    const plan = await two.planImport(text);
    expect(plan).toMatchObject({ ok: true, here: 2, fresh: [] });
    expect(await two.takeIn(plan)).toMatchObject({ ok: true, added: 0 });
    expect(await two.log.entries.count()).toBe(3);
  });

  it('of two phones merges to one log, whichever takes in the other', async () => {
    const one = await phone('a', 'b');
    const first = await one.exportLog();
    const two = await phone('c');
    const second = await two.exportLog();
    await two.takeIn(await two.planImport(first.text));
    const merged = await linesOf(two);
    const three = await phone();
    await three.takeIn(await three.planImport(second.text));
    await three.takeIn(await three.planImport(first.text));
    expect(await linesOf(three)).toEqual(merged);
    expect((await three.health()).faults).toEqual([]);
  });

  it('is refused whole when one byte is wrong, and gives its untouched lines when asked to recover', async () => {
    const { text } = await (await phone('one', 'two', 'three')).exportLog();
    const changed = text.replace('"two"', '"twu"');
    const two = await phone();
    const plan = await two.planImport(changed);
    expect(plan).toMatchObject({ ok: false, problems: [{ line: 3, code: 'damaged' }] });
    expect(await two.takeIn(plan)).toMatchObject({ ok: false });
    expect(await two.log.entries.count()).toBe(0);
    const recovery = await two.planRecovery(changed);
    expect(recovery).toMatchObject({ ok: true, lines: 2, faults: [{ code: 'gap', fromSeq: 2, toSeq: 2 }] });
    expect(await two.takeIn(recovery)).toMatchObject({ ok: true, added: 2 });
  });

  it('brings back a log that was lost', async () => {
    const one = await phone('one', 'two');
    const { text } = await one.exportLog();
    const witness = localStorage.getItem('greenweight-sentinel') ?? '';
    freshDevice();
    localStorage.setItem('greenweight-sentinel', witness);
    const page = await openPage();
    expect(await page.startCheck()).toEqual({ code: 'lost', missing: 2 });
    expect(await page.takeIn(await page.planImport(text))).toMatchObject({ ok: true, added: 2 });
    expect(page.storeState().start).toMatchObject({ code: 'ready' });
    expect((await page.append([{ ...note('after') }])).ok).toBe(true);
    expect((await page.health()).faults).toEqual([]);
  });

  it('of an older state, gone on with, is a fork: both branches are kept, and a new chain begun', async () => {
    const one = await phone('one');
    const { text: old } = await one.exportLog();
    await one.append([note('two')]);
    const { text: whole } = await one.exportLog();
    const device = (await one.log.devices.toArray()).at(-1)?.device ?? '';
    // Another phone that was set up from the old state, with the device id of the first.
    freshDevice();
    const copy = await openPage();
    await copy.log.devices.add({ device, sinceMs: 0 });
    await copy.startCheck();
    await copy.takeIn({ ...(await copy.planImport(old)) });
    await copy.log.devices.add({ device, sinceMs: 0 });
    await copy.append([note('two, told otherwise')]);
    await copy.takeIn(await copy.planImport(whole));
    const { entries, faults } = await copy.health();
    expect(entries).toBe(3);
    expect(faults).toMatchObject([{ code: 'fork', device, seq: 2, lines: 2 }]);
    await copy.append([note('after')]);
    const last = (await copy.log.entries.toArray()).find(({ line }) => line.includes('"after"'));
    expect(last?.device).not.toBe(device);
  });
});
