/** The published ferments one by one, beside the invented ones: what was read, what is forecast from its first readings, how near. */
import { readFileSync } from 'node:fs';
import type { RoomReading } from '#core/ferment/degree-hours.ts';
import { forecastPh, type PhWindow } from '#core/ferment/ph-forecast.ts';
import { fitPhLine, type PhShape } from '#core/ferment/ph-line.ts';
import type { CulturePace } from '#core/ferment/ph-prior.ts';
import { COUNTED_UNTIL_PH, type PhReading } from '#core/ferment/ph-reading.ts';
import { finalPh } from '#core/formula/final-ph.ts';

const HOUR_MS = 3_600_000;
const DAY_HOURS = 24;

type Cited = { readonly body: string; readonly title: string; readonly standing: string };
type Published = {
  readonly series: {
    readonly source: Cited;
    readonly fermentPoints: number;
    readonly rows: readonly { readonly hours: number; readonly ph: number; readonly roomC: number }[];
  };
  readonly fits: {
    readonly exponentialAfterLag: { readonly rmse: number };
    readonly logistic: { readonly rmse: number };
  };
  readonly dextrose: {
    readonly source: Cited;
    readonly rows: readonly { readonly dextrosePct: number; readonly finalPh: number }[];
  };
  readonly fastConcentrate: {
    readonly source: Cited;
    readonly hoursToPh: Readonly<Record<'5.5' | '4.6', readonly [number, number]>>;
  };
  readonly others: readonly {
    readonly id: string;
    readonly source: Cited;
    readonly culture: CulturePace;
    readonly days: readonly number[];
    readonly ph: Readonly<Record<string, readonly number[]>>;
  }[];
  readonly endByTemperature: {
    readonly source: Cited;
    readonly rows: readonly { readonly recipe: string; readonly roomC: number; readonly ph: number }[];
  };
};

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const cited = ({ body, title, standing }: Cited): string => `${body}, ${title} (${standing})`;
const two = (value: number): string => value.toFixed(2);
const inside = (value: number, low: number, high: number): string =>
  value >= low && value <= high ? 'inside' : 'outside';
const meter = (hours: number, ph: number): PhReading => ({
  atMs: hours * HOUR_MS,
  ph,
  method: 'meter',
  doubted: false,
});
const room = (hours: number, roomC: number): RoomReading => ({
  atMs: hours * HOUR_MS,
  roomC,
  source: 'hand',
});
const hoursOf = (atMs: number | null | undefined): string =>
  atMs == null ? 'beyond' : `${(atMs / HOUR_MS).toFixed(1)} h`;

/** A window that lies beyond what is looked ahead touches nothing that was read. */
function endsOf(window: PhWindow | undefined): { low: number; high: number } {
  return {
    low: (window?.earliestAtMs ?? Number.POSITIVE_INFINITY) / HOUR_MS,
    high: (window?.latestAtMs ?? Number.POSITIVE_INFINITY) / HOUR_MS,
  };
}

export function printPublishedFerments(): void {
  const published: Published = JSON.parse(readFileSync('fixtures/published/ferment-ph-curves.json', 'utf8'));
  say(
    'published series, one by one (where the sugar is not known, the spread of the end was set by these ends themselves):',
  );
  industrial(published);
  fast(published);
  for (const other of published.others) daily(other);
  ends(published);
}

/** Read beside its room: the line through it, and the window for 5.3 from each of its first readings on. */
function industrial({ series, fits }: Published): void {
  say(`- ${cited(series.source)}: room at 30 °C, not at 5.3 in 66 h, 5.06 at 88 h in a room of 21 °C`);
  const rows = series.rows.slice(0, series.fermentPoints);
  const readings = rows.map(({ hours, ph }) => ({ warmHours: hours, ph }));
  const shapes: readonly [PhShape, number | null][] = [
    ['exponential', fits.exponentialAfterLag.rmse],
    ['logistic', fits.logistic.rmse],
    ['steady', null],
  ];
  for (const [shape, rmse] of shapes)
    say(
      `  ${shape} line: RMSE ${fitPhLine({ shape, readings })?.rmsePh.toFixed(4)} pH${rmse === null ? '' : ` (computed elsewhere ${rmse.toFixed(4)})`}`,
    );
  for (let known = 2; known <= rows.length; known += 1) {
    const nowHours = rows[known - 1]?.hours ?? 0;
    const [window] =
      forecastPh(
        {
          phReadings: rows.slice(0, known).map(({ hours, ph }) => meter(hours, ph)),
          roomReadings: rows.slice(0, known).map(({ hours, roomC }) => room(hours, roomC)),
          stuffedAtMs: 0,
          nowMs: nowHours * HOUR_MS,
          culture: 'unknown',
        },
        [COUNTED_UNTIL_PH.value],
      )?.windows ?? [];
    const { low, high } = endsOf(window);
    const isTouched = low <= 88 && high >= 66;
    say(
      `  after ${known} readings (${nowHours} h): 5.3 likely ${hoursOf(window?.likelyAtMs)}, 8 in 10 from ${hoursOf(window?.earliestAtMs)} to ${hoursOf(window?.latestAtMs)}; read between 66 and 88 h: ${isTouched ? 'touched by the window' : 'missed'}`,
    );
  }
}

/** No room temperature in the abstract: 32 °C, which a summer sausage is held at, is assumed and said. */
function fast({ fastConcentrate }: Published): void {
  const { source, hoursToPh } = fastConcentrate;
  const [from, to] = hoursToPh['5.5'];
  const at = (from + to) / 2;
  const [window] =
    forecastPh(
      {
        phReadings: [meter(0, 5.9), meter(at, 5.5)],
        roomReadings: [room(0, 32), room(at, 32)],
        stuffedAtMs: 0,
        nowMs: at * HOUR_MS,
        culture: 'fast',
      },
      [4.6],
    )?.windows ?? [];
  const [least, most] = hoursToPh['4.6'];
  const { low, high } = endsOf(window);
  say(
    `- ${cited(source)}: from 5.9 and 5.5 at ${at} h (32 °C assumed), 4.6 likely ${hoursOf(window?.likelyAtMs)}, from ${hoursOf(window?.earliestAtMs)} to ${hoursOf(window?.latestAtMs)}; published ${least} to ${most} h: ${inside((least + most) / 2, low, high)}`,
  );
}

/** Read by the day, without the room: only the end can be held against it, from the first reading alone. */
function daily({ id, source, culture, days, ph }: Published['others'][number]): void {
  for (const [name, values] of Object.entries(ph)) {
    const lowest = Math.min(...values);
    const day = days[values.indexOf(lowest)] ?? 0;
    const end = forecastPh(
      {
        phReadings: [meter(0, values[0] ?? Number.NaN)],
        roomReadings: [room(0, 24)],
        stuffedAtMs: 0,
        nowMs: 0,
        culture,
      },
      [COUNTED_UNTIL_PH.value],
    )?.endPh;
    say(
      `- ${cited(source)}, ${id} ${name}: from ${two(values[0] ?? Number.NaN)} alone it ends at ${two(end?.midPh ?? Number.NaN)} (8 in 10: ${two(end?.lowPh ?? Number.NaN)} to ${two(end?.highPh ?? Number.NaN)}); lowest read ${two(lowest)} at ${day * DAY_HOURS} h: ${inside(lowest, end?.lowPh ?? Number.NaN, end?.highPh ?? Number.NaN)}`,
    );
  }
}

function ends({ dextrose, endByTemperature }: Published): void {
  for (const { dextrosePct, finalPh: read } of dextrose.rows) {
    const ph = finalPh({
      startPh: 5.65,
      dextroseGPerKg: 10 * dextrosePct,
      bufferMmolPerKg: 60,
      conversionFraction: 0.9,
    });
    say(`- ${cited(dextrose.source)}: ${dextrosePct} % dextrose ends at ~${two(ph)}, read ${two(read)}`);
  }
  for (const { recipe, roomC, ph } of endByTemperature.rows)
    say(
      `- ${cited(endByTemperature.source)}, ${recipe}, ${roomC} °C: read ${two(ph)}; its sugar and its start are not given, so nothing is forecast. The forecast lets no end rest on the temperature; here it does.`,
    );
}
