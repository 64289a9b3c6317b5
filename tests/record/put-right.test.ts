import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batch } from '#record/batch.ts';
import { type Entry, hashLine } from '#record/entry.ts';
import { isLate } from '#record/gaps.ts';
import { asWritten, clockSubject, putRight, zonesBy } from '#record/put-right.ts';
import { inOrder, live } from '#record/strikes.ts';
import { BATCH, book, openBatch, setUp, touching } from '../screens/book.ts';
import { HOUR_MS, START_MS } from './make.ts';
import { correction, DAY_MS, phone, times } from './wrong-clock.ts';

const WRONG_MS = 400 * DAY_MS;

/** Five notes an hour apart; the third and fourth with a clock that stands wrong; then the correction. */
function putRightBook(aheadMs: number) {
  const one = phone();
  for (const hours of [1, 2]) one.note(hours, `true at ${hours}`);
  for (const hours of [3, 4]) one.note(hours, `true at ${hours}`, { aheadMs });
  one.note(5, 'true at 5');
  const fix = one.write(
    6,
    'clock-corrected',
    clockSubject(one.device),
    correction(one, { fromSeq: 3, toSeq: 4, shiftMs: -aheadMs }),
  );
  return { one, fix };
}

const inTime = (entries: readonly Entry[]) => times([...entries].sort(inOrder));

describe('a clock put right', () => {
  it.each([WRONG_MS, -WRONG_MS])('puts what was written %d ms wrong back into its order', (aheadMs) => {
    const { one } = putRightBook(aheadMs);
    expect(inTime(one.entries)).not.toEqual([1, 2, 3, 4, 5, 6]);
    const right = putRight(one.entries, one.entries);
    expect(inTime(right)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(times(right)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('keeps what the line says beside the true time, and the line as it was', () => {
    const { one, fix } = putRightBook(WRONG_MS);
    const third = putRight(one.entries, one.entries)[2];
    const written = one.lines[2];
    expect(third?.clock).toEqual({
      atMs: START_MS + 3 * HOUR_MS + WRONG_MS,
      zone: '+01:00',
      writtenAtMs: START_MS + 3 * HOUR_MS + WRONG_MS,
      corrections: [fix],
      disputed: false,
    });
    expect(third && isLate(third)).toBe(false);
    expect(third && asWritten(third)).toEqual(written?.entry);
    expect(written && hashLine(written.line)).toBe(written?.hash);
  });

  it('hands back itself what no correction reaches', () => {
    const { one } = putRightBook(WRONG_MS);
    const right = putRight(one.entries, one.entries);
    for (const at of [0, 1, 4, 5]) expect(right[at]).toBe(one.entries[at]);
  });

  it('leaves another phone alone, and a correction that is filed under another phone without effect', () => {
    const { one, fix } = putRightBook(WRONG_MS);
    const other = phone(2);
    for (const hours of [1, 2, 3, 4]) other.note(hours, 'the other');
    expect(putRight(other.entries, one.entries)).toEqual(other.entries);
    const astray = { ...fix, subject: clockSubject(other.device) } as Entry;
    expect(putRight(one.entries, [astray])).toEqual(one.entries);
  });

  it('is undone by a strike, and done again when the strike is struck', () => {
    const { one, fix } = putRightBook(WRONG_MS);
    const strike = one.write(7, 'struck', fix.subject, {}, { strikes: fix.id });
    expect(putRight(one.entries, one.entries)).toEqual(one.entries);
    one.write(8, 'struck', fix.subject, {}, { strikes: strike.id });
    expect(times(putRight(one.entries, one.entries)).slice(0, 6)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('is the same whatever order the entries arrive in, twice over, and entry by entry', () => {
    const { one } = putRightBook(-WRONG_MS);
    const all = one.entries;
    const expected = new Map(putRight(all, all).map((entry) => [entry.id, entry]));
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...all], { minLength: all.length }),
        fc.shuffledSubarray([...all], { minLength: all.length }),
        fc.subarray([...all]),
        (entries, about, some) => {
          const right = putRight(entries, about);
          for (const entry of right) expect(entry).toEqual(expected.get(entry.id));
          expect(putRight(right, right)).toEqual(right);
          expect(putRight(some, about)).toEqual(some.map(({ id }) => expected.get(id)));
        },
      ),
    );
  });

  it('of two corrections counts the one written last, shows both, and says whether they agree', () => {
    const { one, fix } = putRightBook(WRONG_MS);
    const other = phone(2);
    const body = correction(one, { fromSeq: 4, toSeq: 4, shiftMs: -WRONG_MS });
    other.write(7, 'clock-corrected', fix.subject, body);
    const agreed = putRight(one.entries, [...other.entries, ...one.entries]);
    expect(times(agreed)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(agreed[3]?.clock).toMatchObject({ disputed: false, corrections: [fix, other.entries[0]] });
    other.write(8, 'clock-corrected', fix.subject, { ...body, shiftMs: HOUR_MS - WRONG_MS });
    for (const about of [
      [...other.entries, ...one.entries],
      [...one.entries, ...other.entries],
    ]) {
      const disputed = putRight(one.entries, about);
      expect(times(disputed)).toEqual([1, 2, 3, 5, 5, 6]);
      expect(disputed.map(({ clock }) => clock?.disputed ?? null)).toEqual([
        null,
        null,
        false,
        true,
        null,
        null,
      ]);
    }
  });

  it('moves a time set by hand by whole days, keeps its hour on the wall, and leaves one that was set right', () => {
    const one = phone();
    const aheadMs = WRONG_MS + 3.3 * HOUR_MS;
    one.note(1, 'from the clock', { aheadMs, zone: '+02:00' });
    one.note(5, 'an hour before, on the day that the phone gave', { aheadMs, earlierMs: 4.3 * HOUR_MS });
    one.note(5, 'day and hour set by hand', { aheadMs, earlierMs: aheadMs + HOUR_MS });
    const zones = [
      { fromSeq: 1, zone: '+01:00' },
      { fromSeq: 2, zone: '+02:00' },
    ];
    const body = correction(one, { fromSeq: 1, toSeq: 3, shiftMs: -aheadMs, zones });
    one.write(6, 'clock-corrected', clockSubject(one.device), body);
    const right = putRight(one.entries, one.entries);
    expect(one.entries.at(-1)?.v).toBe(2);
    expect(right.map(({ zone }) => zone)).toEqual(['+01:00', '+02:00', '+01:00', '+01:00']);
    // The second was set while the phone reckoned with +01:00: 05:00 there is 05:00 with +02:00, an hour sooner.
    expect(times(right)).toEqual([1, 3, 4, 6]);
    for (const { writtenAtMs } of right.slice(0, 3)) expect((writtenAtMs - START_MS) % HOUR_MS).toBe(0);
  });

  it('takes the offset of the true time from the phone at hand, where that agrees with the entry', () => {
    const one = phone();
    const summerMs = START_MS + 200 * DAY_MS;
    const zoneAt = (atMs: number) => (atMs < summerMs ? '+01:00' : '+02:00');
    for (const hours of [1, 2]) one.note(hours, 'winter');
    const shiftMs = summerMs - START_MS - 1.5 * HOUR_MS;
    const zones = [
      { fromSeq: 1, zone: '+01:00' },
      { fromSeq: 2, zone: '+02:00' },
    ];
    expect(zonesBy(one.entries, { shiftMs, zoneAt })).toEqual(zones);
    expect(zonesBy(one.entries, { shiftMs: DAY_MS, zoneAt })).toBe(undefined);
    const away = one.entries.map((entry) => ({ ...entry, zone: '-05:00' }));
    expect(zonesBy(away, { shiftMs, zoneAt })).toBe(undefined);
  });

  it('leaves a time set by hand where the clock was wrong by hours only', () => {
    const one = phone();
    one.note(9, 'by the watch', { aheadMs: -2 * HOUR_MS, earlierMs: HOUR_MS });
    const body = correction(one, { fromSeq: 1, toSeq: 1, shiftMs: 2 * HOUR_MS });
    one.write(10, 'clock-corrected', clockSubject(one.device), body);
    const [right] = putRight(one.entries, one.entries);
    expect(right && times([right])).toEqual([6]);
    expect(right?.writtenAtMs).toBe(START_MS + 9 * HOUR_MS);
  });

  it('moves nothing to a time that cannot be, whatever a file says', () => {
    const one = phone();
    one.note(1, 'here');
    for (const shiftMs of [-START_MS - DAY_MS, 8.64e15, Number.MAX_SAFE_INTEGER])
      one.write(2, 'clock-corrected', clockSubject(one.device), {
        ...correction(one, { fromSeq: 1, toSeq: 1, shiftMs }),
      });
    expect(putRight(one.entries, one.entries)).toEqual(one.entries);
  });

  it('orders a batch by what was true: the last plan is the one that was made last', () => {
    const of = openBatch(setUp(book()));
    const opened = of.entries.find(({ kind }) => kind === 'batch-opened');
    const wrong = of.put(1 + 400 * 24, 'plan-changed', BATCH, {
      plan: { dryC: 14, dryRhPct: 80, diameterMm: 50, targetLossPct: 30 },
      reason: 'with the wrong clock',
    });
    of.put(2, 'plan-changed', BATCH, {
      plan: { dryC: 12, dryRhPct: 80, diameterMm: 50, targetLossPct: 35 },
      reason: 'with the clock put right',
    });
    const device = clockSubject(wrong.device);
    const body = { device: wrong.device, fromSeq: wrong.seq, toSeq: wrong.seq, reason: 'date' };
    const fix = of.put(3, 'clock-corrected', device, { ...body, shiftMs: -WRONG_MS });
    expect(opened).toBeDefined();
    expect(batch(BATCH, touching(of, BATCH))?.plan.targetLossPct).toBe(30);
    expect(batch(BATCH, putRight(touching(of, BATCH), [fix]))?.plan.targetLossPct).toBe(35);
    const rival = { ...fix, id: wrong.id, body: { ...body, shiftMs: -DAY_MS }, writtenAtMs: 0 } as Entry;
    expect(batch(BATCH, putRight(touching(of, BATCH), [fix, rival]))?.rivals).toHaveLength(1);
    expect(live(of.entries)).toHaveLength(of.entries.length);
  });

  it('takes no longer than a moment for a book of 20,000 entries and 100 corrections', () => {
    const one = phone();
    const [note] = [one.note(1, 'many')];
    const entries = Array.from({ length: 20_000 }, (_, at) => ({ ...note, seq: at + 1 }) as Entry);
    const fix = one.write(
      2,
      'clock-corrected',
      clockSubject(one.device),
      correction(one, { fromSeq: 1, toSeq: 20_000, shiftMs: HOUR_MS }),
    );
    const about = Array.from({ length: 100 }, () => fix);
    const fromMs = performance.now();
    expect(putRight(entries, about).every(({ clock }) => clock !== undefined)).toBe(true);
    expect(performance.now() - fromMs).toBeLessThan(3000);
  });
});
