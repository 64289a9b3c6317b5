import { saturationPressurePa } from '#core/air/psychro.ts';
import { freshRings, stepRings } from './radial-cells.ts';
import { type MixFractions, mixAw, requireMix } from './water-activity.ts';

/** Air from this day on, until the next entry. `airMPerS`: where it moves at another speed than the run's own. */
export type AirStep = {
  readonly fromDay: number;
  readonly chamberC: number;
  readonly humidityPct: number;
  readonly airMPerS?: number;
};

/** A piece as the model knows it on one day. */
export type RadialDay = {
  readonly day: number;
  readonly lossPct: number;
  readonly diameterMm: number;
  readonly meanAw: number;
  readonly skinAw: number;
  readonly centreAw: number;
  /** kg water per kg of solids from the centre out, rings of equal solids, with the outer radius of each. */
  readonly waterKgPerKg: readonly number[];
  readonly radiusMm: readonly number[];
};

const ZERO_C_K = 273.15;
const GAS_J_PER_MOL_K = 8.314462618;
const VAPOUR_J_PER_KG_K = 461.522;
const EVAPORATION_J_PER_KG = 2.4694e6;
/** Heat that the chamber's walls radiate to the piece, W/(m² K). */
const RADIATION_W_PER_M2K = 4.8;
/** Air at 13 °C (from memory, high confidence). */
const AIR = { viscosityM2PerS: 1.4425e-5, prandtl: 0.7122, schmidt: 0.6244, conductivityWPerMK: 0.02513 };
const VAPOUR_M2_PER_S = AIR.viscosityM2PerS / AIR.schmidt;

/**
 * Heat and vapour that air moving across a cylinder carries, W/(m² K) and m/s.
 *
 * Sh = C Re^m Sc^(1/3), Nu likewise with Pr; C and m by Hilpert's ranges of Re.
 * Units: mm, m/s.
 * Valid: Re 4 to 40,000, that is 0.002 to 10 m/s at 60 mm.
 * Source: Hilpert, R., Forsch. Ing.-Wes. 4 (1933) 215, constants from memory, high confidence.
 * @throws RangeError outside the valid range.
 * @example Math.round(skinTransfer({ diameterMm: 60, airMPerS: 0.2 }).heatWPerM2K * 100) // => 586
 */
export function skinTransfer({ diameterMm, airMPerS }: { diameterMm: number; airMPerS: number }): {
  heatWPerM2K: number;
  vapourMPerS: number;
} {
  const diameterM = diameterMm / 1000;
  const reynolds = (airMPerS * diameterM) / AIR.viscosityM2PerS;
  if (!(reynolds >= 4 && reynolds <= 40_000))
    throw new RangeError(
      `skinTransfer: airMPerS requires Re within 4..40000, got ${airMPerS} at ${diameterMm} mm`,
    );
  const [factor, power] = reynolds < 40 ? [0.911, 0.385] : reynolds < 4000 ? [0.683, 0.466] : [0.193, 0.618];
  const cross = factor * reynolds ** power;
  return {
    heatWPerM2K: (cross * Math.cbrt(AIR.prandtl) * AIR.conductivityWPerMK) / diameterM,
    vapourMPerS: (cross * Math.cbrt(AIR.schmidt) * VAPOUR_M2_PER_S) / diameterM,
  };
}

/**
 * How a piece dries from the skin in: a rehearsal, and the picture of the slice. The wrong tool for a date: it is off
 * by 5 to 6 points of loss on real pieces whose air speed nobody measured. Weighings put that right, `radial-fit.ts`.
 *
 * Rings of equal solids; D = D13 exp(-Ea/R (1/T - 1/286.15)) (X/X0)^m; at the skin
 * j = h_m (aw es(Ts)/(Rv Ts) - RH es(Ta)/(Rv Ta)) with (h + h_r)(Ta - Ts) = lambda j: evaporation cools the skin.
 * Units: mm, parts of green mass, m/s, days, m²/s, °C, %.
 * Valid: 30 to 110 mm, 0 to 30 °C, 55 to 100 %; long pieces (over 6 diameters).
 * Source: Crank (1975) ch. 5; water activity as `mixAw`; D13 8e-11 m²/s and m = 1 the best of three pairs on 7 records,
 * Ea 30 kJ/mol (read: 32 across the fibre); against a run of the same equations made elsewhere within 0.15 points.
 * @throws RangeError if an argument cannot be.
 * @example dryRadially({ diameterMm: 55, mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, air: [{ fromDay: 0, chamberC: 13, humidityPct: 80 }], airMPerS: 0.2, days: [0] }).map((day) => day.lossPct) // => [0]
 */
export function dryRadially({
  diameterMm,
  mix,
  air,
  airMPerS,
  days,
  diffusivity13M2PerS = 8e-11,
  drynessPower = 1,
  shrinks = true,
  rings = 30,
  stepHours = 1,
}: {
  diameterMm: number;
  mix: MixFractions;
  air: readonly AirStep[];
  airMPerS: number;
  /** Days to report, ascending. */
  days: readonly number[];
  diffusivity13M2PerS?: number;
  drynessPower?: number;
  shrinks?: boolean;
  rings?: number;
  stepHours?: number;
}): RadialDay[] {
  requireMix('dryRadially', mix);
  if (!(diffusivity13M2PerS > 0 && stepHours > 0))
    throw new RangeError(
      `dryRadially: diffusivity13M2PerS and stepHours require values above 0, got ${diffusivity13M2PerS}, ${stepHours}`,
    );
  const solidsFraction = 1 - mix.waterFraction;
  const piece = freshRings({ diameterMm, waterFraction: mix.waterFraction, rings, shrinks });
  const freshWater = mix.waterFraction / solidsFraction;
  const awAt = (waterKgPerKg: number) =>
    waterKgPerKg > 0 ? mixAw({ mix, lossPct: 100 * (mix.waterFraction - waterKgPerKg * solidsFraction) }) : 0;
  const report = (day: number, skinKgPerKg: number): RadialDay => {
    const waters = [...piece.waterKgPerKg];
    const meanWater = waters.reduce((sum, water) => sum + water, 0) / waters.length;
    return {
      day,
      lossPct: 100 * (mix.waterFraction - meanWater * solidsFraction),
      diameterMm: 2000 * (piece.radiusM[rings - 1] ?? 0),
      meanAw: awAt(meanWater),
      skinAw: awAt(skinKgPerKg),
      centreAw: awAt(waters[0] ?? 0),
      waterKgPerKg: waters,
      radiusMm: Array.from(piece.radiusM, (radiusM) => 1000 * radiusM),
    };
  };
  const reports: RadialDay[] = [];
  let hours = 0;
  let skinKgPerKg = freshWater;
  for (const day of days) {
    while (hours < day * 24 - 1e-9) {
      const seconds = 3600 * Math.min(stepHours, day * 24 - hours);
      const { chamberC, humidityPct, airMPerS: stepMPerS = airMPerS } = airOn(air, hours / 24);
      const skin = skinLaw({
        diameterMm: 2000 * (piece.radiusM[rings - 1] ?? 0),
        airMPerS: stepMPerS,
        chamberC,
        humidityPct,
      });
      const warmth = Math.exp((-30_000 / GAS_J_PER_MOL_K) * (1 / (chamberC + ZERO_C_K) - 1 / 286.15));
      skinKgPerKg = stepRings(piece, {
        seconds,
        diffusivityM2PerS: (water) => diffusivity13M2PerS * warmth * (water / freshWater) ** drynessPower,
        skinKgPerM2S: (water, outflow) => skin(awAt(water), outflow),
      }).skinWaterKgPerKg;
      hours += seconds / 3600;
    }
    reports.push(report(day, skinKgPerKg));
  }
  return reports;
}

/** Vapour that the skin gives off at its water activity, cooled by what already leaves. */
function skinLaw({
  diameterMm,
  airMPerS,
  chamberC,
  humidityPct,
}: {
  diameterMm: number;
  airMPerS: number;
  chamberC: number;
  humidityPct: number;
}): (aw: number, outflowKgPerM2S: number) => number {
  const { heatWPerM2K, vapourMPerS } = skinTransfer({ diameterMm, airMPerS });
  const saturated = (tempC: number) =>
    saturationPressurePa({ tempC }) / (VAPOUR_J_PER_KG_K * (tempC + ZERO_C_K));
  const inAir = (humidityPct / 100) * saturated(chamberC);
  const coolingC = EVAPORATION_J_PER_KG / (heatWPerM2K + RADIATION_W_PER_M2K);
  return (aw, outflow) => vapourMPerS * (aw * saturated(chamberC - coolingC * outflow) - inAir);
}

function airOn(air: readonly AirStep[], day: number): AirStep {
  const step = air.findLast(({ fromDay }) => fromDay <= day + 1e-9) ?? air[0];
  if (step === undefined) throw new RangeError('dryRadially: air requires at least one step, got none');
  return step;
}
