/** Which columns are read: those that their names give or the maker chose; a question where the names leave it open. */
import type { TemperatureUnit } from '#core/units.ts';
import type { Layout, LoggerColumn } from './logger-layout.ts';
import type { Columns } from './logger-row.ts';

export type ColumnChoices = {
  readonly timeColumn?: number | undefined;
  readonly temperatureColumn?: number | undefined;
  /** Null for none. */
  readonly humidityColumn?: number | null | undefined;
};

export type ColumnQuestion =
  | { readonly code: 'time-column' | 'temperature-column'; readonly options: readonly number[] }
  | { readonly code: 'humidity-column'; readonly options: readonly (number | null)[] };

export type ChosenColumns =
  | { state: 'known'; columns: Columns }
  | { state: 'asked'; questions: readonly ColumnQuestion[] }
  | { state: 'no-such-column' };

export function chooseColumns({ columns, timeColumns }: Layout, choices: ColumnChoices): ChosenColumns {
  const all = columns.map(({ index }) => index);
  const named = indexes(
    columns,
    (name) => TEMPERATURE.test(name) && !HUMIDITY.test(name) && !DERIVED.test(name),
  );
  const humid = indexes(columns, (name) => HUMIDITY.test(name) && !DERIVED.test(name));
  const nameless = columns.length > 1 && columns.every(({ name }) => name === '');
  const time = choices.timeColumn ?? single(timeColumns);
  const temperature = choices.temperatureColumn ?? single(named);
  const noHumidity = humid.length === 0 && !nameless;
  const humidity =
    choices.humidityColumn === undefined ? (noHumidity ? null : single(humid)) : choices.humidityColumn;
  if (time === undefined || temperature === undefined || humidity === undefined) {
    const questions: (ColumnQuestion | false)[] = [
      time === undefined && { code: 'time-column', options: timeColumns },
      temperature === undefined && { code: 'temperature-column', options: named.length > 0 ? named : all },
      humidity === undefined && {
        code: 'humidity-column',
        options: [...(humid.length > 0 ? humid : all), null],
      },
    ];
    return { state: 'asked', questions: questions.filter((question) => question !== false) };
  }
  const exist =
    timeColumns.includes(time) && [temperature, humidity].every((at) => at === null || all.includes(at));
  return exist ? { state: 'known', columns: { time, temperature, humidity } } : { state: 'no-such-column' };
}

function indexes(columns: readonly LoggerColumn[], fits: (name: string) => boolean): number[] {
  return columns.filter(({ name }) => fits(name)).map(({ index }) => index);
}

function single(found: readonly number[]): number | undefined {
  return found.length === 1 ? found[0] : undefined;
}

/** Worked out or set, not read by the sensor. */
const DERIVED =
  /dew|taupunkt|ros[ée]e|roc[ií]o|rugiada|wet.?bulb|heat.?index|alarm|limit|set.?p|\b(min|max|avg|mean|mittel)|diff|delta|abs|g\/m|batt|signal|rssi/i;
const TEMPERATURE = /temp|celsius|fahrenheit|[°º˚\ufffd] ?[cf]\b|℃|℉|^t$|^t[ _\d/([]/i;
const HUMIDITY =
  /humid|humed|umidit|hygro|feucht|vocht|fukt|wilgot|%[ (]*r\.? ?[hf]\b|\br\.? ?[hf]\.?(?![a-z])/i;

const unitLetter = (letter: string) =>
  String.raw`(?:[°º˚\ufffd]|\bdeg(?:rees?)?\.?) ?${letter}(?!\p{L})|[([/,_] ?${letter} ?(?:[)\],;]|$)|temp\S* ${letter}$`;
const UNIT = {
  C: new RegExp(`celsius|℃|${unitLetter('C')}`, 'iu'),
  F: new RegExp(`fahrenheit|℉|${unitLetter('F')}`, 'iu'),
};

/** The unit that a name gives, if it gives just one. A bare letter may be the name of a probe. */
export function unitIn(name: string): TemperatureUnit | null {
  const [celsius, fahrenheit] = [UNIT.C.test(name), UNIT.F.test(name)];
  return celsius === fahrenheit ? null : celsius ? 'C' : 'F';
}

/** What a name says the whole column is ahead of UTC, such as `Time, GMT+01:00`; null when it says nothing. */
export function offsetIn(name: string): number | null {
  const found = /\b(?:utc|gmt)\b(?: ?([+-]) ?(\d{1,2})(?::?([0-5]\d))?)?/i.exec(name);
  if (!found) return null;
  const [, sign, hours = '0', minutes = '0'] = found;
  const aheadMs = (Number(hours) * 60 + Number(minutes)) * 60_000;
  return sign === '-' ? -aheadMs : aheadMs;
}
