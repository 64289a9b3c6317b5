/** Which scale weighs a line, and the grams that it can show. */

/** `capacityG` null: large enough for anything on this bench. */
export type BenchScale = { readonly id: string; readonly stepG: number; readonly capacityG: number | null };

export type Rounding = 'nearest' | 'down' | 'up';

/** `portions` is more than 1 when no scale carries the amount at once. */
export type ChosenScale = { readonly scale: BenchScale; readonly portions: number };

/** Slack in steps, for what binary fractions do to 8.03 / 0.01; a millionth of a step is no gram anybody can see. */
const SLACK_STEPS = 1e-6;

/**
 * Grams that a scale with this step can show.
 *
 * Formula: whole steps, to the nearest, down or up.
 * Units: g.
 * @throws RangeError if the step is not above zero or the mass is below zero.
 * @example roundToStep({ massG: 8.0375, stepG: 0.01, rounding: 'down' }) // => 8.03
 * @example roundToStep({ massG: 90.02, stepG: 0.1, rounding: 'nearest' }) // => 90
 */
export function roundToStep({
  massG,
  stepG,
  rounding,
}: {
  massG: number;
  stepG: number;
  rounding: Rounding;
}): number {
  if (!(stepG > 0)) throw new RangeError(`roundToStep: stepG requires a step above 0, got ${stepG}`);
  if (!(massG >= 0)) throw new RangeError(`roundToStep: massG requires 0 or more, got ${massG}`);
  const exactSteps = massG / stepG;
  const steps =
    rounding === 'down'
      ? Math.floor(exactSteps + SLACK_STEPS)
      : rounding === 'up'
        ? Math.ceil(exactSteps - SLACK_STEPS)
        : Math.round(exactSteps);
  return Number((steps * stepG).toPrecision(12));
}

/**
 * The finest scale that carries the amount; where none does, the one that carries most, in portions.
 *
 * Units: g.
 * @throws RangeError if there is no scale.
 * @example chooseScale({ massG: 90, scales: [{ id: 'a', stepG: 1, capacityG: null }, { id: 'b', stepG: 0.01, capacityG: 50 }] }).scale.id // => 'a'
 */
export function chooseScale({
  massG,
  scales,
}: {
  massG: number;
  scales: readonly BenchScale[];
}): ChosenScale {
  const able = scales.filter(({ capacityG }) => capacityG === null || capacityG >= massG);
  const first = scales[0];
  if (!first) throw new RangeError('chooseScale: scales requires at least one scale, got none');
  const finest = able.reduce((best, scale) => (scale.stepG < best.stepG ? scale : best), able[0] ?? first);
  if (able.length > 0) return { scale: finest, portions: 1 };
  const largest = scales.reduce(
    (best, scale) => ((scale.capacityG ?? 0) > (best.capacityG ?? 0) ? scale : best),
    first,
  );
  return { scale: largest, portions: Math.ceil(massG / (largest.capacityG ?? massG)) };
}
