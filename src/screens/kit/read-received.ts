import { TEMPERATURE_GATES } from '#core/ferment/temperature-gate.ts';
import { keepsLimit } from '#core/rules/rule.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { type QuantityUnit, type ReadQuantity, readQuantity } from '#ui/quantity-input.ts';
import { readWhen } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import { decimal as decimalText, joined, temperature } from '#words/format.ts';
import { cureQuestion } from './cure-question.ts';
import { cureQuestionText } from './cure-question-text.ts';
import { asksAnimal, asksPack, asksTemperature, type ReceivedForm } from './received-form.ts';

type Body = BodyOf<'received'>;
type Cure = NonNullable<Body['cure']>;
type Field =
  | 'what'
  | 'name'
  | 'when'
  | 'temp'
  | 'mass'
  | 'packed'
  | 'bestBefore'
  | 'opened'
  | 'nitrite'
  | 'nitrate'
  | 'reason';
export type Problems = Readonly<Partial<Record<Field, string>>>;

export type ReadReceived =
  | {
      readonly ok: true;
      /** What is unlikely about it; each is asked about once. `kept` goes into the body when the maker keeps the values. */
      readonly questions: readonly { readonly field: string; readonly text: string }[];
      readonly body: Body;
      readonly atMs: number | null;
    }
  | { readonly ok: false; readonly problems: Problems };

const MOST_G = 1_000_000;
const COLDEST_C = -60;
const WARMEST_C = 60;

/** The form as an entry's body, or what is wrong with each field. `correcting` asks for a reason. */
export function readReceived(
  form: ReceivedForm,
  { place, nowMs, correcting, words }: { place: Place; nowMs: number; correcting: boolean; words: Words },
): ReadReceived {
  const say = words.received.form;
  const { what } = form;
  const { decimal } = place;
  const number = (text: string, unit: QuantityUnit, least: number, most: number) =>
    text.trim() === '' ? null : readQuantity({ text, unit, decimal, least, most });
  const temp = asksTemperature(what) ? number(form.temp, place.temperature, COLDEST_C, WARMEST_C) : null;
  const mass = number(form.mass, form.massUnit, 0, MOST_G);
  const pct = (text: string) => readQuantity({ text, unit: '%', decimal, least: 0, most: 100 });
  const cure = what === 'cure' ? { nitrite: pct(form.nitrite), nitrate: pct(form.nitrate) } : null;
  const when = readWhen(form.when, nowMs);
  const packed = asksAnimal(what) ? dayOf(form.packed, nowMs) : null;
  const bestBefore = dayOf(form.bestBefore, Number.POSITIVE_INFINITY);
  const opened = asksPack(what) ? dayOf(form.opened, nowMs) : null;
  const together = cure?.nitrite.ok && cure.nitrate.ok ? cure.nitrite.value + cure.nitrate.value : 0;

  const problemOf = (read: ReadQuantity | null, least: string, most: string) =>
    read && !read.ok ? words.fields.problem(read.problem, { least, most }) : undefined;
  const degrees = (tempC: number) => joined(temperature(tempC, place, 0));
  const problems: Record<Field, string | undefined> = {
    what: what === null ? say.whatNeeded : undefined,
    name: form.name.trim() === '' ? say.nameNeeded : undefined,
    when: when.ok ? undefined : words.fields.whenProblem[when.problem],
    temp: problemOf(temp, degrees(COLDEST_C), degrees(WARMEST_C)),
    mass: problemOf(mass, '0', joined({ value: decimalText(MOST_G / 1000, 0, place), unit: 'kg' })),
    packed: packed && !packed.ok ? words.fields.whenProblem[packed.problem] : undefined,
    bestBefore: bestBefore && !bestBefore.ok ? words.fields.whenProblem[bestBefore.problem] : undefined,
    opened: opened && !opened.ok ? words.fields.whenProblem[opened.problem] : undefined,
    nitrite: problemOf(cure?.nitrite ?? null, '0', '100 %'),
    nitrate: together > 100 ? say.together : problemOf(cure?.nitrate ?? null, '0', '100 %'),
    reason: correcting && form.reason.trim() === '' ? say.reasonNeeded : undefined,
  };
  const wrong = Object.fromEntries(Object.entries(problems).filter(([, text]) => text !== undefined));
  if (Object.keys(wrong).length > 0 || what === null || !when.ok) return { ok: false, problems: wrong };

  const read = {
    ...(temp?.ok ? { tempC: temp } : {}),
    ...(mass?.ok ? { massG: mass } : {}),
    ...(cure?.nitrite.ok ? { nitritePct: cure.nitrite } : {}),
    ...(cure?.nitrate.ok ? { nitratePct: cure.nitrate } : {}),
  };
  const label: Cure | null =
    cure?.nitrite.ok && cure.nitrate.ok
      ? {
          nitritePct: cure.nitrite.value,
          nitratePct: cure.nitrate.value,
          nitriteSalt: form.nitriteSalt,
          nitrateSalt: form.nitrateSalt,
        }
      : null;
  const body: Body = {
    what,
    name: form.name.trim(),
    lot: form.lot.trim(),
    supplier: form.supplier.trim(),
    ...(asksAnimal(what) && form.species !== null ? { species: form.species } : {}),
    ...(mass?.ok ? { massG: mass.value } : {}),
    ...(temp?.ok ? { tempC: temp.value } : {}),
    ...(packed?.ok && packed.atMs !== null ? { packedOnMs: packed.atMs } : {}),
    ...(bestBefore?.ok && bestBefore.atMs !== null ? { bestBeforeMs: bestBefore.atMs } : {}),
    ...(opened?.ok && opened.atMs !== null ? { openedOnMs: opened.atMs } : {}),
    ...(asksPack(what) && form.storage !== null ? { storage: form.storage } : {}),
    ...(label ? { cure: label } : {}),
    ...(form.note.trim() ? { note: form.note.trim() } : {}),
    ...(Object.keys(read).length > 0
      ? { typed: Object.fromEntries(Object.entries(read).map(([field, { typed }]) => [field, typed])) }
      : {}),
  };
  const asked = label && cureQuestion(label);
  const questions = [
    ...(asked ? [{ field: 'nitritePct', text: cureQuestionText(asked, form, place, words) }] : []),
    ...(asksAnimal(what) && temp?.ok && !keepsLimit(temp.value, TEMPERATURE_GATES.received.stop)
      ? [{ field: 'tempC', text: words.received.question.warm(joined(temperature(temp.value, place))) }]
      : []),
  ];
  return { ok: true, body, atMs: when.atMs, questions };
}

/** A calendar day, kept as its noon where the maker stands, so that no zone turns it into the day before. */
function dayOf(text: string, latestMs: number) {
  return text === '' ? null : readWhen(`${text}T12:00`, latestMs + 12 * 3_600_000);
}
