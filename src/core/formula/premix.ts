import { roundToStep } from './scale.ts';
import { readingErrorG, weighingErrorG } from './scale-error.ts';

/** A way out for a scale that is too coarse: dilute the small thing in the large thing, and weigh the dilution. */

export type Premix = {
  /** What to mix once, weighed on this scale: the share is exact, the batch of premix may be larger than needed. */
  readonly makePartG: number;
  readonly makeCarrierG: number;
  /** What to weigh of it. */
  readonly useG: number;
  /** What is left to weigh of the carrier by itself. */
  readonly restG: number;
  readonly cutCarrierG: number;
  /** In whole steps of the scale: the premix down, the carrier to the nearest so that its total stays. */
  readonly useRoundedG: number;
  readonly restRoundedG: number;
  /** Half a step at each reading, in percent of the small part, when mixing and when weighing; as `lineError`. */
  readonly readingPct: number;
  readonly weighingPct: number;
};

/** A tenth, a twentieth, a fiftieth: shares that can be said aloud at a bench. */
export const PREMIX_PCT = [10, 5, 2] as const;

/**
 * The premix that carries the same grams of the small part, and the carrier cut by what comes with it. Null if there
 * is less carrier in the formula than the premix brings.
 *
 * Wrong tool: without thorough mixing; a premix is only as even as it was stirred. It is never a way to weigh pure nitrite.
 *
 * Formula: use = part / share; rest = carrier - (use - part). Sums are kept: use + rest = part + carrier.
 * Units: g, percent.
 * Source: mass balance (derived).
 * @throws RangeError if the part, the step or the share cannot be.
 * @example premix({ partG: 2.5, carrierG: 28, premixPct: 10, stepG: 1, makePartG: 10 })?.useG // => 25
 * @example premix({ partG: 2.5, carrierG: 28, premixPct: 10, stepG: 1, makePartG: 10 })?.cutCarrierG // => 22.5
 */
export function premix({
  partG,
  carrierG,
  premixPct,
  stepG,
  makePartG,
}: {
  partG: number;
  carrierG: number;
  premixPct: number;
  stepG: number;
  makePartG: number;
}): Premix | null {
  if (!(partG > 0 && makePartG > 0))
    throw new RangeError(`premix: partG and makePartG require more than 0 g, got ${partG} and ${makePartG}`);
  if (!(premixPct > 0 && premixPct < 100))
    throw new RangeError(`premix: premixPct requires a share between 0 and 100 %, got ${premixPct}`);
  const share = premixPct / 100;
  const useG = partG / share;
  const cutCarrierG = useG - partG;
  if (cutCarrierG > carrierG) return null;
  const useRoundedG = roundToStep({ massG: useG, stepG, rounding: 'down' });
  const restAfterRoundingG = Math.max(0, carrierG - useRoundedG * (1 - share));
  const pct = (errorG: number) => 100 * errorG * (1 / makePartG + 1 / useG);
  return {
    makePartG,
    makeCarrierG: makePartG / share - makePartG,
    useG,
    restG: carrierG - cutCarrierG,
    cutCarrierG,
    useRoundedG,
    restRoundedG: roundToStep({ massG: restAfterRoundingG, stepG, rounding: 'nearest' }),
    readingPct: pct(readingErrorG({ stepG, portions: 1 })),
    weighingPct: pct(weighingErrorG({ stepG, portions: 1 })),
  };
}

/**
 * The strongest premix that brings the readings of a line within its tolerance on this scale, made of enough to be weighed well. Null
 * if none does with the carrier there is.
 *
 * Units: g, percent of the small part.
 * Source: interval arithmetic (derived).
 * @example premixWithin({ partG: 2.5, carrierG: 28, stepG: 1, tolerancePct: 5 })?.useG // => 25
 */
export function premixWithin({
  partG,
  carrierG,
  stepG,
  tolerancePct,
  makePartG = Math.ceil(400 / tolerancePct) * stepG,
}: {
  partG: number;
  carrierG: number;
  stepG: number;
  tolerancePct: number;
  /** Where so much of it is at hand and no more: a pack of culture. */
  makePartG?: number;
}): Premix | null {
  const made = PREMIX_PCT.map((premixPct) => premix({ partG, carrierG, premixPct, stepG, makePartG }));
  return made.find((one) => one !== null && one.readingPct <= tolerancePct) ?? null;
}
