import { describe, expect, it } from 'vitest';
import { clockDoubts } from '#record/clock-steps.ts';
import type { Entry } from '#record/entry.ts';
import { place } from '#record/place.ts';
import { clockSubject, putRight } from '#record/put-right.ts';
import { type CorrectionDraft, proposed, readCorrection } from '#screens/record/clock-input.ts';
import { clockView } from '#screens/record/clock-view.ts';
import { zoneAt } from '#store/clock.ts';
import { localText } from '#ui/when-input.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { HOUR_MS, START_MS } from '../record/make.ts';
import { correction, DAY_MS, type Phone, phone } from '../record/wrong-clock.ts';

const WRONG_MS = 400 * DAY_MS;
const nowMs = START_MS + 30 * HOUR_MS;

/** Eight notes an hour apart, the third to the fifth with a clock that stood wrong. */
function wrongBook(aheadMs = WRONG_MS): Phone {
  const one = phone();
  for (let hours = 1; hours <= 8; hours++) {
    const wrongMs = hours >= 3 && hours <= 5 ? aheadMs : 0;
    one.note(hours, `true at ${hours}`, {
      aheadMs: wrongMs,
      zone: zoneAt(START_MS + hours * HOUR_MS + wrongMs),
    });
  }
  return one;
}

const viewOf = (of: Phone, entries: readonly Entry[] = of.entries) =>
  clockView({ entries: putRight(entries, entries), device: of.device, nowMs, words });

function read(of: Phone, changed: Partial<CorrectionDraft> = {}) {
  const entries = putRight(of.entries, of.entries);
  const [doubt] = clockDoubts(entries, nowMs);
  const begun: CorrectionDraft = doubt
    ? proposed(doubt.sides[0])
    : { device: of.device, from: '', to: '', known: 'first', truth: '', reason: '' };
  return readCorrection(
    { ...begun, reason: 'the date was wrong', ...changed },
    { entries, nowMs, zoneAt, place: place([]), words },
  );
}

describe('the clock of a phone', () => {
  it('is not said to be right for all time where no step is seen', () => {
    const one = wrongBook(0);
    expect(plainText(viewOf(one).sentence)).toBe(
      'No clock went back that is not put right. A clock that still runs ahead shows only when it comes back.',
    );
    expect(viewOf(one).doubts).toEqual([]);
  });

  it('shows each step with the entries on either side of it, the likelier first', () => {
    const view = viewOf(wrongBook());
    expect(plainText(view.sentence)).toBe(
      '3 entries may stand at a wrong time. A clock went back once. Nothing is moved until you say when one of them truly was.',
    );
    expect(view.doubts.map(({ text }) => text)).toEqual([
      'On this phone the clock went back by about 400 days.',
    ]);
    expect(view.doubts[0]?.sides.map(({ title }) => title)).toEqual([
      '3 entries before it, if the clock ran about 400 days ahead then (likely)',
      '3 entries after it, if the clock was behind then',
    ]);
    expect(view.doubts[0]?.sides[0]?.note).toMatch(/^Entries 3 to 5, shown as 11 February 2025, \d\d:00 to /);
  });

  it('names the phone at hand first, and any other by the end of its id', () => {
    const one = wrongBook();
    const other = phone(2);
    other.note(1, 'elsewhere');
    const view = viewOf(one, [...other.entries, ...one.entries]);
    expect(view.phones.map(({ label }) => label)).toEqual(['this phone', 'phone …0002']);
  });

  it('lists what was put right, a struck one too, and says which of two counts', () => {
    const one = wrongBook();
    const body = correction(one, { fromSeq: 3, toSeq: 5, shiftMs: -WRONG_MS });
    const fix = one.write(9, 'clock-corrected', clockSubject(one.device), body, { by: 'HK' });
    expect(viewOf(one).corrections).toMatchObject([
      { title: 'this phone, entries 3 to 5: back by 400 days', struck: false },
    ]);
    expect(viewOf(one).doubts).toEqual([]);
    one.write(10, 'clock-corrected', fix.subject, { ...body, shiftMs: -WRONG_MS - 90 * 60_000 });
    const rows = viewOf(one).corrections;
    expect(rows.map(({ title }) => title)).toEqual([
      'this phone, entries 3 to 5: back by 400 days 1 h 30 min',
      'this phone, entries 3 to 5: back by 400 days',
    ]);
    expect(rows.map(({ note }) => note.includes(words.clock.rival))).toEqual([false, true]);
    one.write(11, 'struck', fix.subject, {}, { strikes: fix.id });
    expect(viewOf(one).corrections[1]).toMatchObject({ struck: true });
    expect(viewOf(one).corrections[1]?.note).toMatch(/the date was set wrong\nstruck .* by AB: wrong$/);
  });
});

describe('what puts a clock right', () => {
  it.each([WRONG_MS, -WRONG_MS])(
    'is proposed from a step of %d ms, and says before it is saved what would move',
    (aheadMs) => {
      const one = wrongBook(aheadMs);
      const found = read(one);
      expect(found.problems).toEqual({});
      expect(found.body).toMatchObject({ device: one.device, fromSeq: 3, toSeq: 5, shiftMs: -aheadMs });
      expect(found.preview && plainText(found.preview)).toMatch(
        aheadMs > 0
          ? /^3 entries move back by 400 days\. The first becomes 8 January 2024, /
          : /^3 entries move forward by 400 days\. The first becomes 8 January 2024, /,
      );
      expect(found.notes).toEqual([]);
      expect(found.rows.map(({ title }) => title)).toEqual([
        'note: true at 3',
        'note: true at 4',
        'note: true at 5',
      ]);
      const { body } = found;
      if (!body) throw new Error('nothing to save');
      one.write(9, 'clock-corrected', clockSubject(one.device), body);
      const right = putRight(one.entries, one.entries);
      expect(right.map(({ atMs }) => atMs)).toEqual(right.map(({ writtenAtMs }) => writtenAtMs));
      expect(right.map(({ atMs }) => (atMs - START_MS) / HOUR_MS)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
      expect(right.map(({ atMs, zone }) => zone === zoneAt(atMs)).slice(2, 5)).toEqual([true, true, true]);
    },
  );

  it('takes the true time of the last entry as well', () => {
    const one = wrongBook();
    const last = START_MS + 5 * HOUR_MS;
    const truth = localText(last + 7 * 60_000);
    expect(read(one, { known: 'last', truth }).body).toMatchObject({ shiftMs: 7 * 60_000 - WRONG_MS });
  });

  it('asks for what is missing, beside its field', () => {
    const say = words.clock.problem;
    const one = wrongBook();
    expect(read(one, { from: '', to: 'x' }).problems).toEqual({ from: say.number, to: say.number });
    expect(read(one, { from: '5', to: '3' }).problems).toEqual({ to: say.order });
    expect(read(one, { from: '90', to: '99' }).problems).toEqual({ from: say.nothing });
    expect(read(one, { truth: '' }).problems).toEqual({ truth: say.time });
    expect(read(one, { reason: ' ' }).problems).toEqual({ reason: say.reason });
    for (const changed of [{ from: '' }, { from: '5', to: '3' }, { truth: '' }, { reason: '' }])
      expect(read(one, changed).body).toBe(null);
  });

  it('is refused where it would move nothing, or anything past now or before all time', () => {
    const say = words.clock.problem;
    const one = wrongBook();
    const shown = START_MS + 3 * HOUR_MS + WRONG_MS;
    expect(read(one, { truth: localText(shown) }).problems).toEqual({ truth: say.same });
    expect(read(one, { truth: localText(nowMs - HOUR_MS) }).problems).toEqual({ truth: say.ahead });
    expect(read(one, { truth: localText(nowMs - 3 * HOUR_MS) }).problems).toEqual({});
    expect(read(one, { truth: '0100-01-01T00:00' }).problems).toEqual({ truth: say.impossible });
  });

  it('is refused for what was put right before, so that nothing moves twice', () => {
    const one = wrongBook();
    const body = correction(one, { fromSeq: 5, toSeq: 5, shiftMs: -WRONG_MS });
    const fix = one.write(9, 'clock-corrected', clockSubject(one.device), body);
    expect(read(one, { from: '3', to: '5' }).problems).toEqual({ from: words.clock.problem.twice });
    expect(read(one).problems).toEqual({});
    one.write(10, 'struck', fix.subject, {}, { strikes: fix.id });
    expect(read(one, { from: '3', to: '5' }).problems).toEqual({});
  });

  it('says what stays of times that were set by hand, and where the order would still be wrong', () => {
    const one = phone();
    one.note(1, 'before');
    one.note(3, 'an hour ago', { aheadMs: WRONG_MS, earlierMs: HOUR_MS });
    one.note(4, 'set right by hand', { aheadMs: WRONG_MS, earlierMs: WRONG_MS });
    one.note(5, 'after');
    const found = read(one);
    expect(found.notes).toEqual(['One entry with a time set by hand: it stays, since it fits the true day.']);
    const truth = localText(START_MS + 4 * HOUR_MS);
    const half = read(one, { from: '3', to: '3', truth });
    expect(half.problems).toEqual({});
    expect(half.notes.at(-1)).toBe(words.clock.outOfOrder);
  });
});
