import { describe, expect, it } from 'vitest';
import { clockSteps } from '#record/clock-steps.ts';
import { exposure } from '#record/exposure.ts';
import { PLACE } from '#record/subject.ts';
import { deviceOf, lineOf, writer } from './make.ts';

const backedUp = (entries: number) => ({ entries, bytes: 1, hash: '', place: 'shared' });

describe('what exists on this device only', () => {
  it('is everything before the first backup, and what came after the last', () => {
    const book = writer();
    for (let number = 0; number < 5; number++) book.write('noted', 'batch:a', { text: `${number}` });
    expect(exposure(book.entries)).toMatchObject({ last: null, entries: 5 });
    const backup = book.write('backed-up', PLACE, backedUp(5));
    expect(exposure(book.entries)).toMatchObject({ last: { id: backup.id }, entries: 0 });
    book.write('noted', 'batch:a', { text: 'after' });
    expect(exposure(book.entries).entries).toBe(1);
    book.write('backed-up', PLACE, backedUp(7));
    expect(exposure(book.entries).entries).toBe(0);
    book.write('noted', 'batch:a', { text: 'after' });
    book.write('noted', 'batch:a', { text: 'after' });
    expect(exposure(book.entries).entries).toBe(2);
  });
});

describe('a clock that steps back', () => {
  it('is flagged where it stepped, on its own device only, and not for two minutes', () => {
    const book = writer();
    for (let number = 0; number < 6; number++) {
      book.write('noted', 'batch:a', { text: `${number}` }, { device: deviceOf(number % 2) });
    }
    expect(clockSteps(book.entries)).toEqual([]);
    const late = (index: number, byMs: number) =>
      book.lines.map((line, at) => {
        if (at !== index) return line.entry;
        const { writtenAtMs } = line.entry;
        return lineOf(
          line.line.replace(`"writtenAtMs":${writtenAtMs}`, `"writtenAtMs":${writtenAtMs + byMs}`),
        ).entry;
      });
    const twoHoursMs = 2 * 3_600_000;
    expect(clockSteps(late(2, twoHoursMs + 120_000))).toEqual([]);
    expect(clockSteps(late(2, twoHoursMs + 120_001)).map(({ entry, backMs }) => [entry.id, backMs])).toEqual([
      [book.entries[4]?.id, 120_001],
    ]);
  });
});
