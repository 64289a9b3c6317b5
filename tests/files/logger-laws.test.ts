import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LoggerChoices, readLogger } from '#files/logger-csv.ts';
import { loggerText, MOST_LOGGER_BYTES } from '#files/logger-text.ts';
import { whenIn } from '#files/logger-when.ts';
import { offsetChanges, offsetOf } from '#files/zone-offset.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const bytesOf = (text: string) => new TextEncoder().encode(text);

/** `2026-01-05 12:00:00`, of a time taken as if it were UTC. */
const written = (wallMs: number) => new Date(wallMs).toISOString().slice(0, 19).replace('T', ' ');

async function readText(
  text: string,
  zone: string | ((atMs: number) => number) = 'UTC',
  choices: LoggerChoices = {},
) {
  const result = await readLogger({ bytes: bytesOf(text), zone, choices });
  if (result.state !== 'read') throw new Error(JSON.stringify(result));
  return result;
}

describe('a month of readings every minute', () => {
  const startMs = Date.UTC(2026, 0, 1);
  const rows = Array.from({ length: 43_200 }, (_, at) => {
    const tenths = 120 + (at % 37);
    return `${written(startMs + at * MINUTE_MS)};${Math.floor(tenths / 10)},${tenths % 10};${70 + (at % 20)}`;
  });
  const bytes = bytesOf(['Time;Temp °C;RH %', ...rows].join('\r\n'));

  it('is read whole, tells how far it is, and lets the page do other things meanwhile', async () => {
    const done: number[] = [];
    let turns = 0;
    const timer = setInterval(() => {
      turns += 1;
    });
    const result = await readLogger({
      bytes,
      zone: 'UTC',
      onProgress: (doneFraction) => done.push(doneFraction),
    });
    if (result.state !== 'read') throw new Error(JSON.stringify(result));
    const { atMs, roomC, rhPct, periodMs, gaps } = result.series;
    expect([atMs.length, roomC.length, rhPct.length]).toEqual([43_200, 43_200, 43_200]);
    expect([periodMs, gaps]).toEqual([MINUTE_MS, []]);
    expect(atMs.every((each, at) => each === startMs + at * MINUTE_MS)).toBe(true);
    expect(roomC.every((each, at) => each === (120 + (at % 37)) / 10)).toBe(true);
    expect(rhPct.every((each, at) => each === 70 + (at % 20))).toBe(true);
    expect(done.length).toBeGreaterThan(5);
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(done.at(-1)).toBe(1);
    clearInterval(timer);
    expect(turns).toBeGreaterThan(3);
  });

  it('is given up when asked to, soon and without a result', async () => {
    const stop = new AbortController();
    const done: number[] = [];
    const onProgress = (doneFraction: number) => {
      done.push(doneFraction);
      if (done.length === 2) stop.abort();
    };
    expect(await readLogger({ bytes, zone: 'UTC', signal: stop.signal, onProgress })).toEqual({
      state: 'cancelled',
    });
    expect(done).toHaveLength(2);
  });

  it('says the row of a fault near its end', async () => {
    const faulty = rows.map((row, at) => (at === 43_000 ? row.replace(/;.*/, ';twelve;80') : row));
    const result = await readLogger({
      bytes: bytesOf(['Time;Temp °C;RH %', ...faulty].join('\n')),
      zone: 'UTC',
    });
    expect(result).toMatchObject({
      state: 'refused',
      refusal: { row: 43_002, code: 'not-a-number', text: 'twelve' },
    });
  });
});

describe('a file made to keep a reader busy', () => {
  it('with a quotation mark that never closes before two million characters is refused at its row', async () => {
    const text = `Time,Temp °C\n2026-01-05 12:00,1\n2026-01-05 12:10,"${'1,2,3,4,5\n'.repeat(200_000)}`;
    const result = await readLogger({ bytes: bytesOf(text), zone: 'UTC' });
    expect(result).toMatchObject({ state: 'refused', refusal: { row: 3, code: 'open-quote' } });
  });

  it('with one cell of two hundred thousand characters is refused at its row', async () => {
    const blanks = ' '.repeat(200_000);
    for (const cell of [
      '9'.repeat(200_000),
      blanks,
      `${blanks}x`,
      `${'1'.repeat(100_000)}${'.'.repeat(100_000)}`,
    ]) {
      const text = `Time,Temp °C\n2026-01-05 12:00,1\n2026-01-05 12:10,2\n2026-01-05 12:20,${cell}\n`;
      const result = await readLogger({ bytes: bytesOf(text), zone: 'UTC' });
      expect(result).toMatchObject({ state: 'refused', refusal: { row: 4, code: 'not-a-number' } });
    }
  });

  it('with more rows than anybody logs is refused', async () => {
    const row = '2026-01-05 12:00,1\n';
    const result = await readLogger({ bytes: bytesOf(`Time,Temp °C\n${row.repeat(250_001)}`), zone: 'UTC' });
    expect(result).toMatchObject({ state: 'refused', refusal: { row: 250_001, code: 'too-many-rows' } });
  });

  it('that is too large is refused before it is decoded', () => {
    expect(loggerText(new Uint8Array(MOST_LOGGER_BYTES + 1))).toEqual({ ok: false, code: 'too-large' });
  });

  it('of any bytes, or any mixture of what tables are made of, throws nothing', async () => {
    const pieces = [
      '2026-01-05 12:00',
      '05/01/2026',
      '12:10 PM',
      '12.5',
      '1,5',
      '"',
      ';',
      ',',
      '\t',
      '\n',
      ' ',
      '°C',
      'Temp',
      '-',
      '=1',
      '80 %',
    ];
    const made = fc
      .array(fc.constantFrom(...pieces), { maxLength: 60 })
      .map((parts) => bytesOf(parts.join('')));
    await fc.assert(
      fc.asyncProperty(fc.oneof(made, fc.uint8Array({ maxLength: 300 })), async (bytes) => {
        const { state } = await readLogger({ bytes, zone: 'Europe/Rome' });
        expect(['read', 'asked', 'refused']).toContain(state);
      }),
      { numRuns: 300 },
    );
  });
});

describe('the same readings', () => {
  const reading = fc.record({
    tenths: fc.integer({ min: -300, max: 600 }),
    halves: fc.integer({ min: 0, max: 200 }),
  });
  const series = fc.array(reading, { minLength: 2, maxLength: 30 });
  const startMs = Date.UTC(2026, 0, 31, 22, 50);

  it('read the same whatever separates them, whatever the decimal mark, however dates are written and rows ordered', async () => {
    const style = fc.record({
      separator: fc.constantFrom(';', '\t', '|', '^', '~'),
      mark: fc.constantFrom('.', ','),
      end: fc.constantFrom('\n', '\r\n', '\r'),
      quote: fc.boolean(),
      newestFirst: fc.boolean(),
      date: fc.constantFrom('iso', 'german', 'american'),
    });
    await fc.assert(
      fc.asyncProperty(series, style, async (values, { separator, mark, end, quote, newestFirst, date }) => {
        const cell = (text: string) => (quote ? `"${text}"` : text);
        const when = (atMs: number) => {
          const [day = '', time = ''] = written(atMs).split(' ');
          const [year, month, dayOfMonth] = day.split('-');
          if (date === 'iso') return `${day}T${time}`;
          if (date === 'german') return `${dayOfMonth}.${month}.${year} ${time.slice(0, 5)}`;
          const hour = Number(time.slice(0, 2));
          return `${month}/${dayOfMonth}/${year} ${hour % 12 || 12}:${time.slice(3)} ${hour < 12 ? 'AM' : 'PM'}`;
        };
        const rows = values.map(({ tenths, halves }, at) =>
          [
            when(startMs + at * 10 * MINUTE_MS),
            (tenths / 10).toFixed(1).replace('.', mark),
            String(halves / 2).replace('.', mark),
          ]
            .map(cell)
            .join(separator),
        );
        const head = ['When', 'Temp °C', 'RH %'].map(cell).join(separator);
        const text = [head, ...(newestFirst ? rows.reverse() : rows)].join(end);
        const { series: read } = await readText(text);
        expect(read.atMs).toEqual(values.map((_, at) => startMs + at * 10 * MINUTE_MS));
        expect(read.valuesDeg).toEqual(values.map(({ tenths }) => Number((tenths / 10).toFixed(1))));
        expect(read.rhPct).toEqual(values.map(({ halves }) => halves / 2));
      }),
      { numRuns: 100 },
    );
  });
});

describe('a clock that was put forward or back', () => {
  const ZONES = [
    'Europe/Rome',
    'America/New_York',
    'America/Sao_Paulo',
    'Australia/Lord_Howe',
    'Asia/Kathmandu',
    'Africa/Casablanca',
  ];

  it('gives back every instant, when the logger followed it and left nothing out', async () => {
    const zones = fc.constantFrom(...ZONES);
    const minutes = fc.constantFrom(5, 10, 15, 20, 30);
    const hoursBefore = fc.integer({ min: 0, max: 30 });
    await fc.assert(
      fc.asyncProperty(zones, fc.nat(1), hoursBefore, minutes, async (zone, which, hours, step) => {
        const offsetAt = offsetOf(zone);
        const changes = offsetChanges(offsetAt, { fromMs: Date.UTC(2026, 0, 1), toMs: Date.UTC(2027, 0, 1) });
        const startMs = (changes[which]?.atMs ?? Date.UTC(2026, 5, 1)) - hours * HOUR_MS;
        const atMs = Array.from({ length: 80 }, (_, at) => startMs + at * step * MINUTE_MS);
        const rows = atMs.map((each, at) => `${written(each + offsetAt(each))},${at}`);
        const result = await readLogger({ bytes: bytesOf(['Time,Temp °C', ...rows].join('\n')), zone });
        // Where a log begins or ends at a change there is nothing to tell by, and it is asked.
        if (result.state === 'asked') expect(edge(atMs, offsetAt)).toBe(true);
        else expect(result.state === 'read' && result.series.atMs).toEqual(atMs);
      }),
      { numRuns: 100 },
    );
  });

  /** Whether a log begins or ends within three hours of a change. */
  function edge(atMs: readonly number[], offsetAt: (atMs: number) => number): boolean {
    return [atMs[0] ?? 0, atMs.at(-1) ?? 0].some(
      (each) => offsetAt(each - 3 * HOUR_MS) !== offsetAt(each + 3 * HOUR_MS),
    );
  }

  it('gives every instant through the changes of 2026 themselves', async () => {
    for (const zone of ['Europe/Rome', 'America/New_York', 'Australia/Lord_Howe', 'Africa/Casablanca']) {
      const offsetAt = offsetOf(zone);
      const changes = offsetChanges(offsetAt, { fromMs: Date.UTC(2026, 0, 1), toMs: Date.UTC(2027, 0, 1) });
      expect(changes, zone).toHaveLength(2);
      for (const change of changes) {
        const atMs = Array.from({ length: 60 }, (_, at) => change.atMs - 5 * HOUR_MS + at * 10 * MINUTE_MS);
        const rows = atMs.map((each, at) => `${written(each + offsetAt(each))},${at}`);
        const { series, found } = await readText(['Time,Temp °C', ...rows].join('\n'), zone);
        expect(series.atMs, zone).toEqual(atMs);
        expect(found.clock).toBe('follows');
      }
    }
  });

  it('may be a clock of which only the offset is known', async () => {
    const text = 'Time,Temp °C\n2026-01-05 12:00,1\n2026-01-05 12:10,2\n';
    const { series } = await readText(text, () => -3.5 * HOUR_MS);
    expect(series.startMs).toBe(Date.UTC(2026, 0, 5, 15, 30));
  });

  it('of a place that does not exist is a fault of the caller', async () => {
    await expect(readLogger({ bytes: bytesOf('x'), zone: 'Europe/Nowhere' })).rejects.toThrow(RangeError);
  });
});

describe('the offset of a place', () => {
  /** Directive 2000/84/EC, articles 2 and 3: last Sunday of March and of October, 1.00 a.m. GMT (from memory, high confidence). */
  it('changes in Rome when the directive says', () => {
    const changes = offsetChanges(offsetOf('Europe/Rome'), {
      fromMs: Date.UTC(2026, 0, 1),
      toMs: Date.UTC(2027, 0, 1),
    });
    expect(changes).toEqual([
      { atMs: Date.UTC(2026, 2, 29, 1), beforeMs: HOUR_MS, afterMs: 2 * HOUR_MS },
      { atMs: Date.UTC(2026, 9, 25, 1), beforeMs: 2 * HOUR_MS, afterMs: HOUR_MS },
    ]);
  });

  /** Energy Policy Act of 2005, section 110: second Sunday of March, first Sunday of November, 2 a.m. local (from memory, high confidence). */
  it('changes in New York when the act says', () => {
    const changes = offsetChanges(offsetOf('America/New_York'), {
      fromMs: Date.UTC(2026, 0, 1),
      toMs: Date.UTC(2027, 0, 1),
    });
    expect(changes.map(({ atMs }) => atMs)).toEqual([Date.UTC(2026, 2, 8, 7), Date.UTC(2026, 10, 1, 6)]);
  });
});

describe('a cell that tells a time', () => {
  const day = Date.UTC(2026, 0, 5);
  it('gives every day that it may mean', () => {
    expect(whenIn('05/01/2026')?.days).toEqual({ dmy: day, mdy: Date.UTC(2026, 4, 1) });
    expect(whenIn('26-01-05')?.days).toEqual({ ymd: day, dmy: Date.UTC(2005, 0, 26) });
    expect(whenIn('2026.1.5')?.days).toEqual({ ymd: day });
    expect(whenIn('31/31/2026')?.days).toEqual({});
  });
  it.each([
    '',
    '12',
    '12.5',
    '1.5.',
    '12:60',
    '24:01',
    '12:00:61',
    '13:00 pm',
    '0:30 pm',
    '5 Foo 2026',
    '2026-01-05 noon',
    '2026-01-05 12:00 x',
    '12:00 CET',
    '123-1-1',
    '1-1-123',
  ])('is none: %s', (cell) => expect(whenIn(cell)).toBeNull());
  it('that is a number of another kind is no instant', () => {
    for (const cell of ['0000000001', '9999999999999', '12345678901', '99991231'])
      expect(whenIn(cell)?.days ?? {}).toEqual({});
  });
});
