import { describe, expect, it } from 'vitest';
import { exposure } from '#record/exposure.ts';
import { readFile, writeFile } from '#record/file.ts';
import { planMerge } from '#record/merge.ts';
import { place } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import { importView } from '#screens/kit/import-view.ts';
import { keepingView, sizeText } from '#screens/kit/keeping-view.ts';
import type { ImportPlan } from '#store/backup.ts';
import type { Health } from '#store/health.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { deviceOf, HOUR_MS, START_MS, writer } from '../../record/make.ts';

const here = place([]);

function logOf(count: number) {
  const log = writer();
  for (let number = 1; number <= count; number++)
    log.write('noted', 'batch:a', { text: `invented note ${number}` });
  return log;
}

function healthOf(entries: ReturnType<typeof writer>['entries'], changed: Partial<Health> = {}): Health {
  return {
    start: { code: 'ready', first: false, told: [] },
    connection: 'ok',
    copies: 'both',
    room: 'kept',
    unsaved: [],
    secondCopy: true,
    copiesPending: 0,
    entries: entries.length,
    damaged: [],
    faults: [],
    clockSteps: [],
    notices: [],
    exposure: exposure(entries),
    persisted: true,
    usedBytes: 1_250_000,
    quotaBytes: 2_000_000_000,
    ...changed,
  };
}

const viewOf = (health: Health) =>
  keepingView({ health, place: here, nowMs: START_MS + 10 * HOUR_MS, zone: '+01:00', words: en });
const rowOf = (health: Health, label: string) => viewOf(health).rows.find((row) => row.label === label);

describe('how the log is kept', () => {
  it('says how many entries are on this phone only', () => {
    const log = logOf(3);
    expect(plainText(viewOf(healthOf(log.entries)).sentence)).toBe(
      'All 3 entries are on this phone only. A lost or broken phone takes them with it.',
    );
    log.write('backed-up', PLACE, { entries: 3, bytes: 900, hash: '', place: 'shared' });
    expect(plainText(viewOf(healthOf(log.entries)).sentence)).toBe(
      'Every entry is in the backup of 13:00 today.',
    );
    log.write('noted', 'batch:a', { text: 'one more' });
    expect(plainText(viewOf(healthOf(log.entries)).sentence)).toBe(
      'One entry is on this phone only. Last backed up 13:00 today.',
    );
  });

  it('offers no backup of nothing', () => {
    const view = viewOf(healthOf([]));
    expect([plainText(view.sentence), view.canBackUp]).toEqual(['There is nothing to back up yet.', false]);
  });

  it('never calls two copies on one phone a backup', () => {
    const row = rowOf(healthOf(logOf(1).entries), 'Copies on this phone');
    expect([row?.value, row?.note, row?.amiss]).toEqual([
      'two, and equal',
      'Both are on this phone, so neither is a backup.',
      false,
    ]);
  });

  it('says what is amiss, each in its row', () => {
    const { entries } = logOf(2);
    const bad = healthOf(entries, {
      secondCopy: false,
      persisted: false,
      damaged: ['x'],
      faults: [{ code: 'gap', device: deviceOf(1), fromSeq: 3, toSeq: 4 }],
    });
    expect(
      viewOf(bad)
        .rows.filter(({ amiss }) => amiss)
        .map(({ label }) => label),
    ).toEqual(['Copies on this phone', 'Will the browser keep it?', 'Entries that cannot be read', 'Chains']);
    expect(viewOf(bad).canAsk).toBe(true);
    expect(rowOf(healthOf(entries, { copiesPending: 2 }), 'Copies on this phone')?.value).toBe(
      'two; 2 entries wait for the second',
    );
  });

  it('asks the browser for a promise only where it can be asked and gave none', () => {
    expect([true, null].map((persisted) => viewOf(healthOf([], { persisted })).canAsk)).toEqual([
      false,
      false,
    ]);
  });

  it('lists what the checks found, the newest first', () => {
    const notices = [
      { n: 1, atMs: START_MS, code: 'restored', count: 3 },
      { n: 2, atMs: START_MS + HOUR_MS, code: 'taken-in', count: 5 },
    ] as const;
    expect(viewOf(healthOf([], { notices })).notices.map(({ text }) => text)).toEqual([
      '5 entries were taken in from a file.',
      '3 entries were restored from the second copy.',
    ]);
  });

  it('says a store that cannot be read, instead of a number', () => {
    expect(rowOf(healthOf([], { entries: null }), 'Entries')).toMatchObject({
      value: 'the store cannot be read',
      amiss: true,
    });
  });

  it('writes sizes as the maker writes numbers', () => {
    expect([900, 12_345, 1_250_000].map((bytes) => sizeText(bytes, { decimal: ',' }, en))).toEqual([
      '0,9\u00a0kB',
      '12\u00a0kB',
      '1,3\u00a0MB',
    ]);
  });
});

/** What the store would say of this text where the first `held` entries are here already. */
function planOf(text: string, held: number, recovering = false): ImportPlan {
  const file = readFile(text);
  const have = new Map(file.lines.slice(0, held).map(({ entry, hash }) => [entry.id, hash]));
  const { fresh, here: known, twins } = planMerge(have, file.lines);
  return {
    ok: recovering ? file.lines.length > 0 : file.problems.length === 0,
    header: file.header,
    lines: file.lines.length,
    fresh,
    here: known,
    twins: twins.map(({ entry }) => entry.id),
    unknown: 0,
    problems: file.problems,
    faults: file.faults,
  };
}

describe('taking in a file', () => {
  const made = { build: '0.1.0', madeAtMs: START_MS, device: deviceOf(1) };
  const { text } = writeFile(logOf(5).lines, made);
  const show = (plan: ImportPlan, recovering = false) =>
    importView(plan, { recovering, place: here, zone: '+01:00', words: en });

  it('says first what would be added, and by what file', () => {
    const view = show(planOf(text, 2));
    expect(view.from).toBe('Made 8 January 2024, 09:00, 5 entries, build 0.1.0.');
    expect(view.counts.map(({ label, value }) => [label, value])).toEqual([
      ['New here', '3'],
      ['Already here', '2'],
    ]);
    expect([view.act, view.nothing, view.canRecover]).toEqual(['Take in 3 entries', null, false]);
  });

  it('takes nothing where there is nothing new', () => {
    const view = show(planOf(text, 5));
    expect([view.act, view.nothing]).toEqual([null, 'Nothing new in this file.']);
  });

  it('refuses a file with one changed letter, names the line, and leads to the recovery', () => {
    const damaged = text.replace('invented note 3', 'invented note 8');
    const view = show(planOf(damaged, 0));
    expect(view.refused).toEqual(['Line 4: the line is not as it was written']);
    expect([view.act, view.canRecover]).toEqual([null, true]);
    const recovery = show(planOf(damaged, 0, true), true);
    expect(recovery.counts.map(({ label, value }) => [label, value])).toEqual([
      ['New here', '4'],
      ['Already here', '0'],
      ['Set aside', '1'],
    ]);
    expect([recovery.act, recovery.canRecover]).toEqual(['Take in 4 entries', false]);
    expect(recovery.faults).toContain('one gap or break');
  });

  it('says of a strange file that it is no backup, and offers no recovery of nothing', () => {
    const view = show(planOf('date;weight\n1;2\n', 0));
    expect(view.refused[0]).toBe('Line 1: This is no backup of this app.');
    expect([view.act, view.canRecover]).toEqual([null, false]);
  });

  it('says how many lines more were refused than it shows', () => {
    const damaged = writeFile(logOf(30).lines, made).text.replaceAll('invented', 'forged');
    const view = show(planOf(damaged, 0));
    expect(view.refused).toHaveLength(12);
    expect(view.more).toBe('and 18 lines more');
  });
});
