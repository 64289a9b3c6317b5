/** The fields of a plan: what stands in them at first, what is usual, what cannot be. */
import type { Formula } from '#core/formula/formula.ts';
import type { Plan } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { type QuantityProblem, type QuantityUnit, readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, type Quantity, temperature } from '#words/format.ts';

export type PlanField = keyof Plan;
export type PlanTexts = Readonly<Record<PlanField, string>>;

type Range = readonly [number, number];

/** Base units. `first` and `usual`: common practice of the trade for a dry sausage of the slow kind. `odd`: asked about beyond. */
const FIELDS: Readonly<
  Record<PlanField, { first: number; usual: Range; odd: Range; can: Range; places: number }>
> = {
  fermentC: { first: 22, usual: [18, 26], odd: [10, 40], can: [-10, 60], places: 1 },
  phLow: { first: 4.9, usual: [4.8, 5.2], odd: [4.4, 5.8], can: [3, 7], places: 2 },
  phHigh: { first: 5.2, usual: [5, 5.3], odd: [4.4, 5.8], can: [3, 7], places: 2 },
  dryC: { first: 13, usual: [10, 15], odd: [5, 20], can: [-10, 60], places: 1 },
  dryRhPct: { first: 80, usual: [75, 85], odd: [60, 95], can: [1, 100], places: 1 },
  diameterMm: { first: 50, usual: [32, 110], odd: [15, 160], can: [5, 300], places: 1 },
  targetLossPct: { first: 35, usual: [30, 45], odd: [20, 55], can: [1, 80], places: 1 },
};

export const PLAN_FIELDS: readonly PlanField[] = [
  'fermentC',
  'phLow',
  'phHigh',
  'dryC',
  'dryRhPct',
  'diameterMm',
  'targetLossPct',
];

const OF_A_FERMENT: readonly PlanField[] = ['fermentC', 'phLow', 'phHigh'];

/** A whole muscle is salted and hung: nothing is asked of a ferment that it does not have. */
export function fieldsOf({ kind }: Formula): readonly PlanField[] {
  return kind === 'comminuted' ? PLAN_FIELDS : PLAN_FIELDS.filter((field) => !OF_A_FERMENT.includes(field));
}

function unitOf(field: PlanField, place: Place): QuantityUnit {
  switch (field) {
    case 'fermentC':
    case 'dryC':
      return place.temperature;
    case 'diameterMm':
      return 'mm';
    case 'phLow':
    case 'phHigh':
      return 'pH';
    default:
      return '%';
  }
}

/** The unit beside the field; pH stands in the label already. */
export function unitText(field: PlanField, place: Place): string {
  const unit = unitOf(field, place);
  if (unit === 'C' || unit === 'F') return `°${unit}`;
  return unit === 'pH' ? '' : unit;
}

function shown(field: PlanField, value: number, place: Place, words: Words): Quantity {
  if (field === 'fermentC' || field === 'dryC') {
    const exact = temperature(value, place);
    return { ...exact, value: exact.value.replace(/[.,]0$/, '') };
  }
  const unit = unitText(field, place);
  return {
    value: unit === '' ? decimal(value, 1, place) : words.workings.exactly(value, place),
    unit,
  };
}

function said(field: PlanField, value: number, place: Place, words: Words): string {
  const quantity = shown(field, value, place, words);
  return quantity.unit === '' ? quantity.value : joined(quantity);
}

/** What the formula says of the piece, and common practice for the rest. */
export function firstPlan(formula: Formula, place: Place, words: Words): PlanTexts {
  const given: Partial<Record<PlanField, number | undefined>> = {
    diameterMm: formula.diameterMm,
    targetLossPct: formula.targetLossPct,
  };
  const texts = PLAN_FIELDS.map(
    (field) => [field, shown(field, given[field] ?? FIELDS[field].first, place, words).value] as const,
  );
  return Object.fromEntries(texts) as Record<PlanField, string>;
}

export function usualText(field: PlanField, place: Place, words: Words): string {
  const [from, to] = FIELDS[field].usual;
  return words.openBatch.usual(shown(field, from, place, words).value, said(field, to, place, words));
}

export type PlanRead =
  | {
      readonly ok: true;
      readonly plan: Plan;
      readonly typed: { readonly [Field in PlanField]?: { text: string; unit: string } };
    }
  | { readonly ok: false; readonly problems: { readonly [Field in PlanField]?: string } };

export function readPlan({
  fields,
  texts,
  place,
  words,
}: {
  fields: readonly PlanField[];
  texts: PlanTexts;
  place: Place;
  words: Words;
}): PlanRead {
  const problems: { [Field in PlanField]?: string } = {};
  const values: Partial<Record<PlanField, number>> = {};
  const typed: Partial<Record<PlanField, { text: string; unit: string }>> = {};
  for (const field of fields) {
    const [least, most] = FIELDS[field].can;
    const read = readQuantity({
      text: texts[field],
      unit: unitOf(field, place),
      decimal: place.decimal,
      least,
      most,
    });
    if (read.ok) {
      values[field] = read.value;
      typed[field] = read.typed;
    } else problems[field] = problemText(read.problem, field, place, words);
  }
  const { phLow, phHigh } = values;
  if (phLow !== undefined && phHigh !== undefined && phLow > phHigh)
    problems.phHigh = words.openBatch.phOrder;
  if (Object.keys(problems).length > 0) return { ok: false, problems };
  return { ok: true, plan: values as Plan, typed };
}

function problemText(problem: QuantityProblem, field: PlanField, place: Place, words: Words): string {
  const [least, most] = FIELDS[field].can;
  return words.fields.problem(problem, {
    least: said(field, least, place, words),
    most: said(field, most, place, words),
  });
}

/** `about`: a value of the plan, or the formula itself. */
export type Question = {
  readonly code: string;
  readonly about: 'plan' | 'formula';
  readonly text: string;
};

/** Values that are unlikely, not impossible: each is asked about once. */
export function planQuestions(plan: Plan, place: Place, words: Words): Question[] {
  const say = words.openBatch;
  return PLAN_FIELDS.flatMap((field) => {
    const value = plan[field];
    return value === undefined ? [] : [{ field, value }];
  }).flatMap(({ field, value }): Question[] => {
    const [oddFrom, oddTo] = FIELDS[field].odd;
    if (value >= oddFrom && value <= oddTo) return [];
    const [from, to] = FIELDS[field].usual;
    const label =
      field === 'phLow' || field === 'phHigh' ? `${say.group.ph} ${say.field[field]}` : say.field[field];
    const text = say.unlikely(
      label,
      said(field, value, place, words),
      shown(field, from, place, words).value,
      said(field, to, place, words),
    );
    return [{ code: field, about: 'plan', text }];
  });
}
