import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { type ReadQuantity, readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';
import { humidityText, tempText } from './air.ts';

type Body = Omit<BodyOf<'air-read'>, 'instrument' | 'kept'>;

export type ReadAir =
  | { readonly ok: true; readonly body: Body }
  | { readonly ok: false; readonly problems: { readonly temp?: string; readonly rh?: string } };

const COLDEST_C = -40;
const WARMEST_C = 80;

/** A thermometer's and a hygrometer's reading as typed; humidity may be left out. */
export function readAir(typed: { temp: string; rh: string }, place: Place, words: Words): ReadAir {
  const { decimal } = place;
  const temp = readQuantity({
    text: typed.temp,
    unit: place.temperature,
    decimal,
    least: COLDEST_C,
    most: WARMEST_C,
  });
  const rh =
    typed.rh.trim() === '' ? null : readQuantity({ text: typed.rh, unit: '%', decimal, least: 0, most: 100 });
  if (temp.ok && (rh === null || rh.ok))
    return {
      ok: true,
      body: {
        airC: temp.value,
        ...(rh ? { rhPct: rh.value } : {}),
        typed: { airC: temp.typed, ...(rh ? { rhPct: rh.typed } : {}) },
      },
    };
  const problem = (read: ReadQuantity | null, least: string, most: string) =>
    read && !read.ok ? words.fields.problem(read.problem, { least, most }) : null;
  const edge = (tempC: number) => joined(temperature(tempC, place, 0));
  const ofTemp = problem(temp, edge(COLDEST_C), edge(WARMEST_C));
  const ofRh = problem(rh, humidityText(0, place), humidityText(100, place));
  return { ok: false, problems: { ...(ofTemp ? { temp: ofTemp } : {}), ...(ofRh ? { rh: ofRh } : {}) } };
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
