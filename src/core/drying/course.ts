/**
 * How far a piece has grown towards the loss at which its air lets it rest. The course is the air that it had so far;
 * after it the planned air counts, whose final loss is the unit of growth.
 */

/** A stretch of unchanging air up to this day on the reference clock, and its final loss over that of the planned air. */
export type CourseStep = { readonly untilThetaDays: number; readonly finalRatio: number };

/** Growth at the end of the course, and the hazard used up by then. */
export type Grown = { readonly grown: number; readonly hazard: number };

/**
 * Part of the planned air's final loss that is lost on one day.
 *
 * dG/dt = h(theta) (ratio - G), h the hazard of a Weibull curve; in unchanging air 1 - exp(-(theta / tau)^shape). In
 * air wetter than the piece has become, it stands still.
 * Units: days on the reference clock; result 0..1 and above 1 where it dried beyond what the planned air asks.
 * Source: Page's thin layer model (Weibull form), let follow the air step by step (derived).
 * @throws RangeError if the day lies before the start.
 * @example growth({ course: [], lnTau: 0, shape: 1, thetaDays: 0, tailHazard: 1.5 }) // => 0
 */
export function growth({
  course,
  lnTau,
  shape,
  thetaDays,
  tailHazard,
}: {
  course: readonly CourseStep[];
  lnTau: number;
  shape: number;
  thetaDays: number;
  tailHazard: number;
}): number {
  if (!(thetaDays >= 0)) throw new RangeError(`growth: thetaDays requires 0 or more, got ${thetaDays}`);
  const hazardAt = (days: number) => hazardOf({ lnTau, shape, thetaDays: days, tailHazard });
  let state: Grown = { grown: 0, hazard: 0 };
  for (const { untilThetaDays, finalRatio } of course) {
    state = grow(state, hazardAt(Math.min(untilThetaDays, thetaDays)), finalRatio);
    if (untilThetaDays >= thetaDays) return state.grown;
  }
  return grow(state, hazardAt(thetaDays), 1).grown;
}

/**
 * Growth from one state on to a later hazard, towards the ratio of the air between; never back.
 *
 * Source: as `growth`.
 * @example grow({ grown: 0.5, hazard: 1 }, 1, 1) // => { grown: 0.5, hazard: 1 }
 */
export function grow({ grown, hazard }: Grown, laterHazard: number, finalRatio: number): Grown {
  const still = finalRatio + (grown - finalRatio) * Math.exp(hazard - laterHazard);
  return { grown: Math.max(grown, still), hazard: laterHazard };
}

/**
 * Hazard of the curve by one day: (theta / tau)^shape, and from a hazard of `tailHazard` on a straight line, since a
 * piece that has lost most of what it will lose comes to rest exponentially, whatever its start was like.
 *
 * Units: days on the reference clock.
 * Source: Weibull; the tail as the first term of the diffusion series, from where the radial model forecasts best
 * (computed on simulated makers). `Infinity`: no tail.
 * @example hazardOf({ lnTau: 0, shape: 1, thetaDays: 3, tailHazard: 1.5 }) // => 3
 */
export function hazardOf({
  lnTau,
  shape,
  thetaDays,
  tailHazard,
}: {
  lnTau: number;
  shape: number;
  thetaDays: number;
  tailHazard: number;
}): number {
  const early = Math.exp(shape * (Math.log(thetaDays) - lnTau));
  if (early <= tailHazard) return early;
  return tailHazard * (1 + shape * (thetaDays * Math.exp(-lnTau - Math.log(tailHazard) / shape) - 1));
}
