import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendar, type DueEvent } from '#files/icalendar.ts';

const MADE_MS = Date.UTC(2026, 0, 5, 9, 30);
const EVENT: DueEvent = {
  uid: 'batch-018cdc00-0000-7000-8000-000000000001.ph',
  sequence: 3,
  title: 'Read the pH of batch 12',
  atMs: Date.UTC(2026, 0, 6, 3, 10),
  alarmMinutesBefore: 30,
};

const made = (more: Partial<DueEvent> = {}) =>
  calendar({ events: [{ ...EVENT, ...more }], madeAtMs: MADE_MS });
/** Section 3.1: lines end in CRLF, and a line that begins with a space goes on where the last one ended. */
const unfolded = (text: string) =>
  text
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .slice(0, -1);
const octets = (text: string) => new TextEncoder().encode(text).length;
/** Section 3.3.11, read backwards. */
const unescaped = (text: string) =>
  text.replace(/\\([\\;,nN])/g, (_, sign: string) => (/n/i.test(sign) ? '\n' : sign));
const value = (text: string, name: string) =>
  unfolded(text)
    .find((line) => line.startsWith(`${name}:`))
    ?.slice(name.length + 1);

describe('a due time as a calendar file (RFC 5545)', () => {
  it('is this file, line for line', () => {
    expect(made({ note: 'Two places' }).split('\r\n')).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Greenweight//Batch book//EN',
      'CALSCALE:GREGORIAN',
      'METHOD:PUBLISH',
      'BEGIN:VEVENT',
      'UID:batch-018cdc00-0000-7000-8000-000000000001.ph',
      'SEQUENCE:3',
      'DTSTAMP:20260105T093000Z',
      'DTSTART:20260106T031000Z',
      'DURATION:PT15M',
      'SUMMARY:Read the pH of batch 12',
      'DESCRIPTION:Two places',
      'TRANSP:TRANSPARENT',
      'STATUS:CONFIRMED',
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      'TRIGGER:-PT30M',
      'DESCRIPTION:Read the pH of batch 12',
      'END:VALARM',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ]);
  });

  it('rings at the time itself when nothing is to go before it', () => {
    expect(value(made({ alarmMinutesBefore: 0 }), 'TRIGGER')).toBe('PT0M');
  });

  it('that was moved is the same event, told apart by its sequence', () => {
    const [before, after] = [made(), made({ sequence: 4, atMs: EVENT.atMs + 3_600_000 })];
    expect(value(after, 'UID')).toBe(value(before, 'UID'));
    expect(Number(value(after, 'SEQUENCE'))).toBeGreaterThan(Number(value(before, 'SEQUENCE')));
  });

  it('that was taken back says so and rings no more', () => {
    const text = made({ cancelled: true });
    expect(value(text, 'STATUS')).toBe('CANCELLED');
    expect(text).not.toContain('VALARM');
  });

  it('holds many events in one file, each closed before the next begins', () => {
    const events = Array.from({ length: 40 }, (_, at) => ({ ...EVENT, uid: `event-${at}` }));
    const text = calendar({ events, madeAtMs: MADE_MS });
    const frame = unfolded(text).filter((line) => /^(BEGIN|END):V(EVENT|CALENDAR)$/.test(line));
    expect(frame).toHaveLength(82);
    expect(
      frame.slice(1, -1).every((line, at) => line === (at % 2 === 0 ? 'BEGIN:VEVENT' : 'END:VEVENT')),
    ).toBe(true);
    expect(new Set(unfolded(text).filter((line) => line.startsWith('UID:'))).size).toBe(40);
  });

  it('opens with nothing due', () => {
    expect(unfolded(calendar({ events: [], madeAtMs: MADE_MS }))).toHaveLength(6);
  });
});

describe('the text of a calendar file', () => {
  it('escapes what parts values, and keeps a colon as it is', () => {
    expect(value(made({ title: 'a;b,c\\d: "e"\r\nf\ng' }), 'SUMMARY')).toBe('a\\;b\\,c\\\\d: "e"\\nf\\ng');
  });

  it('folds at 75 octets and not at 75 characters', () => {
    const title = 'Kühlkammer 溫度計 \u{1F321} '.repeat(12);
    const text = made({ title });
    expect(text.split('\r\n').every((line) => octets(line) <= 75)).toBe(true);
    expect(text.split('\r\n').some((line) => octets(line) > 71)).toBe(true);
    expect(value(text, 'SUMMARY')).toBe(title);
  });

  it('lets nothing in a title become a line of its own', () => {
    const text = made({ title: 'x\r\nEND:VEVENT\r\nBEGIN:VEVENT\u0000\u2028' });
    expect(text.match(/^BEGIN:VEVENT/gm)).toHaveLength(1);
    expect(unfolded(text).every((line) => /^[A-Z-]+:/.test(line))).toBe(true);
  });

  it('is well formed and says the title again, whatever the title is', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 120 }),
        fc.string({ maxLength: 200 }),
        (title, note) => {
          const text = made({ title, note });
          for (const line of text.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75);
          expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
          expect(unfolded(text).every((line) => /^[A-Z-]+:/.test(line))).toBe(true);
          const plain = title
            .replace(/\r\n?/g, '\n')
            .replace(/\p{Cc}/gu, (sign) => (sign === '\n' || sign > '\x7f' ? sign : ' '));
          expect(unescaped(value(text, 'SUMMARY') ?? '')).toBe(plain);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('an event that no calendar would read', () => {
  const wrong: readonly Partial<DueEvent>[] = [
    { uid: '' },
    { uid: 'a b' },
    { uid: 'a\r\nX:y' },
    { sequence: -1 },
    { sequence: 1.5 },
    { alarmMinutesBefore: -5 },
    { alarmMinutesBefore: Number.NaN },
    { atMs: Number.NaN },
    { atMs: -1 },
    { atMs: 8.64e15 },
  ];
  it.each(wrong)('is not written: %o', (more) => {
    expect(() => made(more)).toThrow(RangeError);
  });
});
