import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';
import { humidityText, tempText } from './air.ts';

type Body = Omit<BodyOf<'air-read'>, 'instrument' | 'kept'>;

export type ReadAir =
  | { readonly ok: true; readonly body: Body }
  | { readonly ok: false; readonly problems: AirProblems };

export type AirTyped = {
  readonly temp: string;
  readonly rh: string;
  readonly low?: string;
  readonly high?: string;
  readonly lowRh?: string;
  readonly highRh?: string;
};
export type AirProblems = Partial<Record<keyof AirTyped, string>>;

const COLDEST_C = -40;
const WARMEST_C = 80;

/** The field of the body that each typed text goes into, and the fields that it must lie between. */
const FIELDS = {
  temp: { field: 'airC', isHumidity: false },
  low: { field: 'lowC', isHumidity: false },
  high: { field: 'highC', isHumidity: false },
  rh: { field: 'rhPct', isHumidity: true },
  lowRh: { field: 'lowRhPct', isHumidity: true },
  highRh: { field: 'highRhPct', isHumidity: true },
} as const;
const NAMES = Object.keys(FIELDS) as (keyof typeof FIELDS)[];

/** A thermometer's and a hygrometer's reading as typed; all but the temperature may be left out. */
export function readAir(typed: AirTyped, place: Place, words: Words): ReadAir {
  const { decimal } = place;
  const problems: AirProblems = {};
  const values: Partial<Record<(typeof FIELDS)[keyof typeof FIELDS]['field'], number>> = {};
  const asTyped: NonNullable<Body['typed']> = {};
  for (const name of NAMES) {
    const text = typed[name] ?? '';
    const { field, isHumidity } = FIELDS[name];
    if (name !== 'temp' && text.trim() === '') continue;
    const read = isHumidity
      ? readQuantity({ text, unit: '%', decimal, least: 0, most: 100 })
      : readQuantity({ text, unit: place.temperature, decimal, least: COLDEST_C, most: WARMEST_C });
    if (read.ok) {
      values[field] = read.value;
      asTyped[field] = read.typed;
    } else
      problems[name] = words.fields.problem(
        read.problem,
        isHumidity
          ? { least: humidityText(0, place), most: humidityText(100, place) }
          : { least: edge(COLDEST_C, place), most: edge(WARMEST_C, place) },
      );
  }
  for (const [name, text] of outOfOrder(values, words)) problems[name] ??= text;
  const { airC } = values;
  return airC === undefined || Object.keys(problems).length > 0
    ? { ok: false, problems }
    : { ok: true, body: { ...values, airC, typed: asTyped } };
}

function edge(tempC: number, place: Place): string {
  return joined(temperature(tempC, place, 0));
}

/** The least lies under what is read now, the most above it. */
function outOfOrder(
  { airC, lowC, highC, rhPct, lowRhPct, highRhPct }: Partial<Body>,
  words: Words,
): [keyof AirTyped, string][] {
  const { notLower, notHigher } = words.chambers.one;
  const above = (one: number | undefined, other: number | undefined) =>
    one !== undefined && other !== undefined && one > other;
  return [
    ...(above(lowC, airC) ? [['low', notLower] as [keyof AirTyped, string]] : []),
    ...(above(airC, highC) ? [['high', notHigher] as [keyof AirTyped, string]] : []),
    ...(above(lowRhPct, rhPct) ? [['lowRh', notLower] as [keyof AirTyped, string]] : []),
    ...(above(rhPct, highRhPct) ? [['highRh', notHigher] as [keyof AirTyped, string]] : []),
  ];
}

/** Drying rooms are kept at 8 to 18 °C and 65 to 95 % (common practice): far beyond it is asked about once. */
const HOT_C = 30;
const COLD_C = 0;
const DRY_PCT = 40;
const JUMP_C = 8;
const DAY_MS = 24 * 3_600_000;

/** What is unlikely about a reading, in words; null where nothing is. */
export function airQuestion(
  { airC, rhPct }: { airC: number; rhPct?: number | undefined },
  before: { readonly airC: number; readonly atMs: number } | null,
  { place, nowMs, words }: { place: Place; nowMs: number; words: Words },
): string | null {
  const say = words.chambers.question;
  const temp = tempText(airC, place);
  const rh = rhPct === undefined ? null : humidityText(rhPct, place);
  if (rh !== null && rhPct !== undefined && airC > HOT_C && rhPct < DRY_PCT) return say.swapped(temp, rh);
  if (airC > HOT_C) return say.hot(temp);
  if (airC < COLD_C) return say.cold(temp);
  if (rh !== null && rhPct !== undefined && rhPct < DRY_PCT) return say.dry(rh);
  if (before && nowMs - before.atMs < DAY_MS && Math.abs(airC - before.airC) > JUMP_C)
    return say.jump(temp, tempText(before.airC, place), words.dates.ago(before.atMs, nowMs));
  return null;
}
