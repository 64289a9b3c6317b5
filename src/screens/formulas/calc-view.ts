/** A small sum on a sheet: its fields, and what comes of them. */
import type { Place } from '#record/place.ts';
import { type QuantityUnit, readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { plainNumber } from './line-draft.ts';

export type CalcField<K extends string> = {
  readonly key: K;
  readonly label: string;
  readonly unit: QuantityUnit;
  readonly least: number;
  readonly most: number;
  /** What stands there at first. */
  readonly first: string;
  readonly hint?: string;
};

export type CalcFieldView = {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly text: string;
  readonly hint: string | null;
  readonly problem: string | null;
};

export type CalcResult = { readonly label: string; readonly value: string };

export type CalcView = {
  readonly fields: readonly CalcFieldView[];
  readonly results: readonly CalcResult[];
  readonly notes: readonly string[];
};

export type Texts = Readonly<Record<string, string>>;

/** Fields as shown, and their values once every one of them can be read. */
export function readFields<K extends string>(
  fields: readonly CalcField<K>[],
  texts: Texts,
  place: Place,
  words: Words,
): { views: CalcFieldView[]; values: Readonly<Record<K, number>> | null } {
  const values: Partial<Record<K, number>> = {};
  const views = fields.map(({ key, label, unit, least, most, first, hint }): CalcFieldView => {
    const text = texts[key] ?? first;
    const read = readQuantity({ text, unit, decimal: place.decimal, least, most });
    if (read.ok) values[key] = read.value;
    const bounds = { least: plainNumber(least, place, words), most: plainNumber(most, place, words) };
    return {
      key,
      label,
      unit: unit === 'pH' ? '' : unit,
      text,
      hint: hint ?? null,
      problem: read.ok || read.problem === 'empty' ? null : words.fields.problem(read.problem, bounds),
    };
  });
  const whole = fields.every(({ key }) => values[key] !== undefined);
  return { views, values: whole ? (values as Readonly<Record<K, number>>) : null };
}
