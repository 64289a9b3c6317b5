import { likelihoodOf } from './belief.ts';
import { equilibriumLossPct } from './equilibrium.ts';
import { batchEvidence, type DryingEvidence } from './evidence.ts';
import { plus } from './matrix.ts';
import { type DryingPrior, PIECE_COVARIANCE } from './prior.ts';
import { type MixFractions, mixAw } from './water-activity.ts';

/** The humidity that the pieces' own weights speak for. An estimate. */
export type ImpliedHumidity = {
  readonly p10Pct: number;
  readonly p50Pct: number;
  readonly p90Pct: number;
  /** Chance that the true humidity lies more than 8 points under the dial, or that moving air makes it as if. */
  readonly drierFraction: number;
  readonly wetterFraction: number;
  /** Sensor or airflow want checking. */
  readonly suspect: boolean;
};

/** Points by which a dial may lie off before it is worth a check: a cheap sensor is good to 3 to 5 (read). */
const WORTH_A_CHECK_PCT = 8;
/** How far a dial, or a reading by hand, is off: one sd (as above). */
export const DIAL_SD_PCT = 5;
/** How often a dial is simply wrong (common practice: a household hygrometer is not to be believed unchecked). */
const WRONG_DIAL_SHARE = 0.15;
const LOWEST_PCT = 40;
/** At this chance one sound chamber in ten is suspected too, and two in three of the dry ones (computed, 200 simulated each). */
const SUSPECT_FRACTION = 0.3;

/**
 * The pieces as a hygrometer: how dry the air must be for them to dry as they do. The wrong tool for setting a
 * humidity: a fan on the pieces looks the same. It says that the sensor or the air wants checking.
 *
 * Bayes' rule over the humidity: the dial is off by N(0, 5), or in 15 of 100 cases anywhere from 40 % up; humidity h
 * moves ln tau by -0.74 ln((aw0 - h) / (aw0 - dial)) and the final loss to that of h.
 * Units: %, parts of green mass 0..1; result %.
 * Valid: one humidity on the dial over the time weighed, below the pieces' own water activity.
 * Source: pace as `dryingPace`, final loss as `equilibriumLossPct`; the doubt of the dial is common practice.
 * @throws RangeError if the dial is not below the pieces' own water activity.
 * @example impliedHumidity({ prior: { tauDays: 20, shape: 0.88, finalLossPct: 45, covariance: [[0.25, -0.06, 0], [-0.06, 0.04, 0], [0, 0, 16]], waterPct: 60 }, pieces: [], mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, dialPct: 78 }).p50Pct // => 78
 */
export function impliedHumidity({
  prior,
  pieces,
  mix,
  dialPct,
}: {
  prior: DryingPrior;
  /** `pieceEvidence` of pieces of one calibre, each against a prior for the humidity on the dial. */
  pieces: readonly DryingEvidence[];
  mix: MixFractions;
  dialPct: number;
}): ImpliedHumidity {
  const startPct = 100 * mixAw({ mix, lossPct: 0 });
  if (!(dialPct >= LOWEST_PCT && dialPct < startPct - 1))
    throw new RangeError(`impliedHumidity: dialPct requires ${LOWEST_PCT}..${startPct - 1}, got ${dialPct}`);
  const likelihood = likelihoodOf(batchEvidence(pieces), plus(prior.covariance, PIECE_COVARIANCE, -1));
  const dialFinalPct = equilibriumLossPct({ mix, humidityPct: dialPct });
  const grid = Array.from({ length: Math.floor(startPct - LOWEST_PCT) }, (_, i) => LOWEST_PCT + i);
  const belief = grid.map((humidityPct) => {
    const shift = [
      -0.74 * Math.log((startPct - humidityPct) / (startPct - dialPct)),
      0,
      equilibriumLossPct({ mix, humidityPct }) - dialFinalPct,
    ];
    const off = (humidityPct - dialPct) / DIAL_SD_PCT;
    const dial =
      ((1 - WRONG_DIAL_SHARE) * Math.exp(-(off ** 2) / 2)) / (DIAL_SD_PCT * Math.sqrt(2 * Math.PI)) +
      WRONG_DIAL_SHARE / grid.length;
    return dial * Math.exp(likelihood(shift));
  });
  const total = belief.reduce((sum, weight) => sum + weight, 0);
  const chanceBelow = (level: number) =>
    belief.reduce((sum, weight, i) => ((grid[i] ?? 0) < level ? sum + weight : sum), 0) / total;
  const quantile = (chance: number) => {
    let below = 0;
    for (const [i, weight] of belief.entries()) {
      below += weight / total;
      if (below >= chance) return grid[i] ?? dialPct;
    }
    return startPct;
  };
  const drierFraction = chanceBelow(dialPct - WORTH_A_CHECK_PCT);
  const wetterFraction = 1 - chanceBelow(dialPct + WORTH_A_CHECK_PCT);
  return {
    p10Pct: quantile(0.1),
    p50Pct: quantile(0.5),
    p90Pct: quantile(0.9),
    drierFraction,
    wetterFraction,
    suspect: Math.max(drierFraction, wetterFraction) > SUSPECT_FRACTION,
  };
}
