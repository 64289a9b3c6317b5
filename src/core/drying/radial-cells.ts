import { risingRoot } from './normal.ts';

/** Water moving through a round piece: rings of equal solids, and what leaves through the skin. Per metre of length. */

export type Rings = {
  /** Water in each ring, centre first, kg per kg of solids. */
  readonly waterKgPerKg: Float64Array;
  /** Solids in each ring and the room that solids and water take. */
  readonly solidsKgPerM: number;
  readonly solidsM3PerKg: number;
  readonly waterM3PerKg: number;
  /** Outer radius of each ring as of the last step. */
  readonly radiusM: Float64Array;
  /** Room for a step's own sums, so that none is made for each of thousands. */
  readonly sweep: { readonly carried: Float64Array; readonly passed: Float64Array };
};

/**
 * A fresh piece in rings of equal solids, the water spread evenly.
 *
 * Units: mm, parts of green mass 0..1, kg/m³; per metre of length.
 * Source: mass balance; density of the mix 1050 kg/m³, of water 1000 kg/m³ (from memory, high confidence).
 * @throws RangeError if the diameter, water or count of rings cannot be.
 * @example freshRings({ diameterMm: 50, waterFraction: 0.6, rings: 2 }).waterKgPerKg.length // => 2
 */
export function freshRings({
  diameterMm,
  waterFraction,
  rings = 30,
  shrinks = true,
}: {
  diameterMm: number;
  waterFraction: number;
  rings?: number;
  shrinks?: boolean;
}): Rings {
  if (!(diameterMm > 0 && diameterMm < Infinity))
    throw new RangeError(`freshRings: diameterMm requires a length above 0, got ${diameterMm}`);
  if (!(waterFraction > 0 && waterFraction < 1))
    throw new RangeError(`freshRings: waterFraction requires 0 < water < 1, got ${waterFraction}`);
  if (!(Number.isInteger(rings) && rings >= 2))
    throw new RangeError(`freshRings: rings requires a whole number from 2 up, got ${rings}`);
  const areaM2 = Math.PI * (diameterMm / 2000) ** 2;
  const massKgPerM = 1050 * areaM2;
  const solidsKg = massKgPerM * (1 - waterFraction);
  const waterM3 = shrinks ? (massKgPerM * waterFraction) / 1000 : 0;
  const fresh: Rings = {
    waterKgPerKg: new Float64Array(rings).fill(waterFraction / (1 - waterFraction)),
    solidsKgPerM: solidsKg / rings,
    solidsM3PerKg: (areaM2 - waterM3) / solidsKg,
    waterM3PerKg: shrinks ? 0.001 : 0,
    radiusM: new Float64Array(rings),
    sweep: { carried: new Float64Array(rings), passed: new Float64Array(rings) },
  };
  measureRings(fresh);
  return fresh;
}

/**
 * Radii that the water and solids of each ring now take, in place.
 *
 * Source: mass balance.
 * @example measureRings(freshRings({ diameterMm: 50, waterFraction: 0.6 })) // => undefined
 */
export function measureRings({
  waterKgPerKg,
  solidsKgPerM,
  solidsM3PerKg,
  waterM3PerKg,
  radiusM,
}: Rings): void {
  let areaM2 = 0;
  for (let i = 0; i < radiusM.length; i++) {
    areaM2 += solidsKgPerM * (solidsM3PerKg + waterM3PerKg * (waterKgPerKg[i] ?? 0));
    radiusM[i] = Math.sqrt(areaM2 / Math.PI);
  }
}

/**
 * One step of time, in place: rings exchange water, and the skin gives off what `skinKgPerM2S` says at its own water.
 * Returns what left, and the water at the skin. Water is conserved to rounding whatever the step.
 *
 * solids · dX/dt = G (X' - X) between neighbours, G = 2 pi r / (resistance of the two half rings); backward in time,
 * swept from the centre so that only one unknown, the outflow, is left to the skin's own law.
 * Units: s, m²/s; result kg per metre and second, kg/kg.
 * Source: finite volumes on solids (Crank, J., The Mathematics of Diffusion, 2nd ed. 1975, ch. 5 and 10); held in the
 * tests against the series solution.
 * @example stepRings(freshRings({ diameterMm: 50, waterFraction: 0.6 }), { seconds: 60, diffusivityM2PerS: () => 5e-11, skinKgPerM2S: () => 0 }).outflowKgPerMS // => 0
 */
export function stepRings(
  rings: Rings,
  {
    seconds,
    diffusivityM2PerS,
    skinKgPerM2S,
  }: {
    seconds: number;
    diffusivityM2PerS: (waterKgPerKg: number) => number;
    /** Must not fall as the skin gets wetter. */
    skinKgPerM2S: (waterKgPerKg: number, outflowKgPerM2S: number) => number;
  },
): { outflowKgPerMS: number; skinWaterKgPerKg: number } {
  const { waterKgPerKg: water, solidsKgPerM, solidsM3PerKg, waterM3PerKg, radiusM } = rings;
  const last = water.length - 1;
  const rate = solidsKgPerM / seconds;
  const { carried, passed } = rings.sweep;
  let innerM = 0;
  let innerHalf = 0;
  let link = 0;
  for (let i = 0; i <= last; i++) {
    const x = water[i] ?? 0;
    const outerM = radiusM[i] ?? 0;
    const half = ((outerM - innerM) / 2) * ((solidsM3PerKg + waterM3PerKg * x) / diffusivityM2PerS(x));
    if (i > 0) {
      // The link between ring i - 1 and ring i; then ring i - 1 is written in terms of ring i.
      const linkOut = (2 * Math.PI * innerM) / (innerHalf + half);
      const before = i > 1 ? link * (1 - (passed[i - 2] ?? 0)) : 0;
      const source = rate * (water[i - 1] ?? 0) + (i > 1 ? link * (carried[i - 2] ?? 0) : 0);
      const weight = rate + before + linkOut;
      carried[i - 1] = source / weight;
      passed[i - 1] = linkOut / weight;
      link = linkOut;
    }
    innerM = outerM;
    innerHalf = half;
  }
  const source = rate * (water[last] ?? 0) + link * (carried[last - 1] ?? 0);
  const weight = rate + link * (1 - (passed[last - 1] ?? 0));
  const girthM = 2 * Math.PI * innerM;
  // Water at the skin falls with the outflow in a straight line; where it meets the skin's law is the answer.
  const freeWater = source / weight;
  const fallPerFlux = girthM / weight + innerHalf;
  const fluxKgPerM2S = meet((flux) => skinKgPerM2S(freeWater - fallPerFlux * flux, flux));
  const outflowKgPerMS = fluxKgPerM2S * girthM;
  let outer = (source - outflowKgPerMS) / weight;
  water[last] = outer;
  for (let i = last - 1; i >= 0; i--) {
    outer = (carried[i] ?? 0) + (passed[i] ?? 0) * outer;
    water[i] = outer;
  }
  measureRings(rings);
  return { outflowKgPerMS, skinWaterKgPerKg: freeWater - fallPerFlux * fluxKgPerM2S };
}

/** The flux that its own law gives back: between none and what the skin would give if it stayed as wet as without any. */
function meet(law: (fluxKgPerM2S: number) => number): number {
  const most = law(0);
  const rising = (share: number) => share * most - law(share * most);
  const signed = most < 0 ? (share: number) => -rising(share) : rising;
  return most === 0 ? 0 : most * (risingRoot(signed, { level: 0, low: 0, high: 1, tolerance: 1e-10 }) ?? 1);
}
