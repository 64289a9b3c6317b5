import type { MassUnit } from '#core/units.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { joined } from '#words/format.ts';

/** `step` is one of the usual ones, `other`, or null while none is chosen. An empty name becomes the step's own. */
export type ScaleForm = {
  readonly step: string | null;
  readonly otherStep: string;
  readonly stepUnit: MassUnit;
  readonly most: string;
  readonly name: string;
};

export const NEW_SCALE: ScaleForm = { step: null, otherStep: '', stepUnit: 'g', most: '', name: '' };

/** Steps of scales at small benches (common practice). */
const USUAL: readonly { readonly text: string; readonly unit: 'g' | 'oz' }[] = [
  { text: '0.01', unit: 'g' },
  { text: '0.1', unit: 'g' },
  { text: '1', unit: 'g' },
  { text: '5', unit: 'g' },
  { text: '0.1', unit: 'oz' },
];
const LEAST_STEP_G = 0.0001;
const MOST_STEP_G = 1000;
const MOST_G = 1_000_000;

export function stepOptions(place: Place, words: Words): { value: string; label: string }[] {
  return [
    ...USUAL.filter(({ unit }) => unit === 'g' || place.mass === 'pounds').map(({ text, unit }) => ({
      value: `${text} ${unit}`,
      label: joined({ value: text.replace('.', place.decimal), unit }),
    })),
    { value: 'other', label: words.kit.scales.otherStep },
  ];
}

export type ReadScale =
  | { ok: true; body: BodyOf<'scale-added'> }
  | { ok: false; problems: { readonly step?: string; readonly otherStep?: string; readonly most?: string } };

export function readScale(form: ScaleForm, place: Place, words: Words): ReadScale {
  const say = words.kit.scales;
  const { decimal } = place;
  const [usualText = '', usualUnit] = form.step === null || form.step === 'other' ? [] : form.step.split(' ');
  const unit = form.step === 'other' ? form.stepUnit : usualUnit === 'oz' ? 'oz' : 'g';
  const text = form.step === 'other' ? form.otherStep : usualText.replace('.', decimal);
  const step = readQuantity({ text, unit, decimal, least: LEAST_STEP_G, most: MOST_STEP_G });
  const mostUnit = unit === 'oz' || unit === 'lb' ? unit : 'g';
  const most =
    form.most.trim() === ''
      ? null
      : readQuantity({ text: form.most, unit: mostUnit, decimal, least: LEAST_STEP_G, most: MOST_G });
  const bounds = { least: joined({ value: shown(LEAST_STEP_G, decimal), unit: 'g' }), most: '1000 g' };
  if (form.step === null) return { ok: false, problems: { step: say.stepNeeded } };
  if (!step.ok) return { ok: false, problems: { otherStep: words.fields.problem(step.problem, bounds) } };
  if (most && !most.ok)
    return {
      ok: false,
      problems: { most: words.fields.problem(most.problem, { ...bounds, most: '1000 kg' }) },
    };
  if (most && most.value < step.value) return { ok: false, problems: { most: say.stepAboveMost } };
  const stepText = joined({ value: step.typed.text, unit: step.typed.unit });
  return {
    ok: true,
    body: {
      name: form.name.trim() || say.nameOfScale(stepText),
      stepG: step.value,
      ...(most ? { mostG: most.value } : {}),
      typed: { stepG: step.typed, ...(most ? { mostG: most.typed } : {}) },
    },
  };
}

function shown(value: number, decimal: Place['decimal']): string {
  return String(value).replace('.', decimal);
}

/** The unit in which the most that a scale carries is typed: that of its step. */
export function mostUnitOf({ step, stepUnit }: ScaleForm): 'g' | 'oz' | 'lb' {
  if (step === 'other') return stepUnit === 'oz' || stepUnit === 'lb' ? stepUnit : 'g';
  return step?.endsWith('oz') ? 'oz' : 'g';
}
