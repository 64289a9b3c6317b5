/** Pace against diameter: the signs, what they amount to, and what to do (long: one decision, read from top to bottom). */
import { dryingPace } from './clock.ts';
import { equilibriumLossPct } from './equilibrium.ts';
import { lossBand, lossChance } from './forecast.ts';
import { type DryingPosterior, type DryingWeighIn, dryingPosterior } from './posterior.ts';
import type { DryingPrior } from './prior.ts';
import { EARLY_DAYS, type EarlyWeighIn, mostPctPerDay, type SkinRate, skinRate } from './skin-rate.ts';
import { type MixFractions, mixAw } from './water-activity.ts';

/** Air no drier than this counts as expected: what is drier shows as haste, whether a sensor saw it or not. */
export const SOUND_AIR_PCT = 75;

/** A weighing with its days of drying, bags and other rests left out; `thetaDays` in air floored at `SOUND_AIR_PCT`. */
export type PaceWeighIn = DryingWeighIn & { readonly dryingDays: number };

export type PaceReason =
  | 'skin-gives-too-much'
  | 'skin-closes'
  | 'ahead-of-diameter'
  | 'behind-diameter'
  | 'air-far-below-piece'
  | 'slows-early'
  | 'tail';
export type PaceFinding = {
  readonly level: 'no-reading' | 'as-expected' | 'watch' | 'too-fast' | 'too-slow' | 'plateau';
  readonly reasons: readonly PaceReason[];
  /** Chance that a piece of this diameter in sound air would have lost as much by now. */
  readonly asMuchFraction: number | null;
  readonly expected: { readonly p10Pct: number; readonly p50Pct: number; readonly p90Pct: number } | null;
  /** How fast it lost when it was hung, and the most that it should; `null` where no early weighing says. */
  readonly skin: (SkinRate & { readonly mostPctPerDay: number }) | null;
  /** How far the air lies under the piece's own water activity, points; `null` where nothing was weighed. */
  readonly airUnderPiecePct: number | null;
  /** Air that brings it back to the expected, or on to its target; for so many days, then weigh again. */
  readonly dose: { readonly humidityPct: number; readonly days: number } | null;
};

/** The skin gives too much where that is as likely as four in five: one sd and a half of a bad weighing does not do. */
const SURE_SD = 0.8;
/** So long the first days speak; then what was done about them shows in the curve. */
const SKIN_DAYS = 2 * EARLY_DAYS;
const TOO_FAST_CHANCE = 0.05;
const WATCH_CHANCE = 0.1;
/** Haste among its own counts only where the diameter does not speak against it. */
const CORROBORATED_CHANCE = 0.2;
/** Too dry a skin is likely where the air lies this far under the piece (published: 3 to 5 points under; heuristic). */
const FAR_BELOW_POINTS = 20;
const TAIL_PCT_PER_DAY = 0.1;
const TAIL_LEAST_DAYS = 4;
const DOSE_LEAST_DAYS = 2;
const DOSE_MOST_DAYS = 10;
/** Drier air at most so much at a time (common practice), and looked at again after a week. */
const DRIER_POINTS = 5;
const DRIER_DAYS = 7;
/** No drier for a piece on its plateau (makers' practice, read: 60 to 65 %); it moves slowly, so look after two weeks. */
const PLATEAU_LEAST_PCT = 60;
const PLATEAU_DAYS = 14;
/** Within the weeks that matter a piece stays about this much short of rest, as in `prior.ts`. */
const SHORT_OF_REST_PCT = 2;
/** Damper air stops short of the piece's own water activity by this much (published: always 3 to 5 points under). */
const UNDER_PIECE_POINTS = 3;
/** Sooner after stuffing a drop on the scale weighs more than what can have dried. */
const LEAST_DAYS = 0.25;

/**
 * Whether a piece dries at a pace that its diameter can bear: losing water faster than it comes up from the core
 * leaves a hard rim and a soft centre. The wrong tool for saying that a rim is there: that shows under the thumb and
 * the knife. It says when to look, and what slows the piece down.
 *
 * Two signs of haste. The skin: how fast it lost when it was hung, against `mostPctPerDay` and against what its own
 * expected curve does there; or that it slows down at once as under a closed skin. The curve: the last weighing held against the band that the prior gives for sound air
 * (75 % and damper): too fast under a chance of 5 % (or of 5 % among its own and 20 % by diameter) where the first days
 * were not weighed, watched where they were and speak of no haste, and under 10 %. Too slow over 95 %; a plateau where
 * less than 0.1 % a day goes, short of target.
 * Dose: too fast, the humidity at which it dries as slowly as it should, until the expected curve has caught up; too
 * slow, the humidity at which it would have kept up, 5 points at a time and never under 75 %; on a plateau, the dampest
 * air down to 60 % in which it would come to rest past its target. `null` where no air does that.
 * Units: reference days, days, %, parts of green mass.
 * Source: the prior of `prior.ts`; thresholds chosen for at most one false alarm in twenty sound batches (computed on
 * simulated makers, seeds from 10,001 on); under 0.1 % a day and damper air for days, makers' practice (read).
 * @throws RangeError as `dryingPosterior`.
 * @example paceOf({ prior: { tauDays: 20, shape: 0.88, finalLossPct: 45, covariance: [[0.25, -0.06, 0], [-0.06, 0.04, 0], [0, 0, 16]], waterPct: 60 }, weighIns: [], mix: { waterFraction: 0.6, proteinFraction: 0.16, saltFraction: 0.027, sugarFraction: 0.005 }, air: { chamberC: 13, humidityPct: 80 }, diameterMm: 50, targetLossPct: 35 }).level // => 'no-reading'
 */
export function paceOf({
  prior,
  informed = prior,
  weighIns,
  onHanging = null,
  mix,
  air,
  diameterMm,
  targetLossPct,
}: {
  /** What the diameter alone lets expect, for a humidity of at least `SOUND_AIR_PCT`. */
  prior: DryingPrior;
  /** The same, sharpened by siblings and earlier batches: one odd sibling must not make the others odd. */
  informed?: DryingPrior;
  weighIns: readonly PaceWeighIn[];
  /** The weighing on hanging, or the green piece where it was hung on the day of stuffing. */
  onHanging?: PaceWeighIn | null;
  mix: MixFractions;
  air: { readonly chamberC: number; readonly humidityPct: number };
  diameterMm: number;
  targetLossPct: number;
}): PaceFinding {
  const last = weighIns.at(-1);
  if (last === undefined || last.thetaDays === 0 || last.dryingDays < LEAST_DAYS)
    return {
      level: 'no-reading',
      reasons: [],
      asMuchFraction: null,
      expected: null,
      skin: null,
      airUnderPiecePct: null,
      dose: null,
    };
  const expectation = dryingPosterior({ prior, weighIns: [] });
  const { thetaDays, lossPct } = last;
  const asMuchFraction = lossChance(expectation, { thetaDays, lossPct });
  const amongOwnFraction = lossChance(dryingPosterior({ prior: informed, weighIns: [] }), {
    thetaDays,
    lossPct,
  });
  const skin = skinOf({ weighIns, onHanging, diameterMm });
  const isEarly = onHanging !== null && last.dryingDays - onHanging.dryingDays <= SKIN_DAYS;
  const usualPctPerDay =
    skin && isEarly && skin.pctPerDay > skin.mostPctPerDay
      ? (usualSkin({ expectation, weighIns, onHanging })?.pctPerDay ?? 0)
      : 0;
  const mostPctPerDay = Math.max(skin?.mostPctPerDay ?? 0, usualPctPerDay);
  const gives = skin !== null && isEarly && skin.pctPerDay > mostPctPerDay;
  const closes = skin !== null && isEarly && skin.closes;
  const surely = closes || (gives && skin.pctPerDay - SURE_SD * skin.sdPctPerDay > mostPctPerDay);
  const rare =
    asMuchFraction < TOO_FAST_CHANCE ||
    (amongOwnFraction < TOO_FAST_CHANCE && asMuchFraction < CORROBORATED_CHANCE);
  const tooFast = surely || (rare && skin === null);
  const expected = lossBand(expectation, { thetaDays });
  const airUnderPiecePct = 100 * mixAw({ mix, lossPct }) - air.humidityPct;
  const found = { asMuchFraction, expected, skin, airUnderPiecePct };
  if (tooFast || gives || rare || asMuchFraction < WATCH_CHANCE) {
    const reasons: PaceReason[] = [];
    if (gives) reasons.push('skin-gives-too-much');
    if (closes) reasons.push('skin-closes');
    if (asMuchFraction < CORROBORATED_CHANCE || reasons.length === 0) reasons.push('ahead-of-diameter');
    if (airUnderPiecePct > FAR_BELOW_POINTS) reasons.push('air-far-below-piece');
    if (slowsEarly(prior, weighIns)) reasons.push('slows-early');
    const level = tooFast ? 'too-fast' : 'watch';
    return { ...found, level, reasons, dose: doseOf({ prior, last, mix, air }) };
  }
  if (inTail(weighIns) && lossPct < targetLossPct)
    return { ...found, level: 'plateau', reasons: ['tail'], dose: dryEnough({ mix, air, targetLossPct }) };
  if (Math.min(asMuchFraction, amongOwnFraction) > 1 - TOO_FAST_CHANCE)
    return {
      ...found,
      level: 'too-slow',
      reasons: ['behind-diameter'],
      dose: drierAir({ prior, last, mix, air }),
    };
  return { ...found, level: 'as-expected', reasons: [], dose: null };
}

function sinceHanging(weighIns: readonly PaceWeighIn[], onHanging: PaceWeighIn | null): EarlyWeighIn[] {
  if (onHanging === null) return [];
  return weighIns
    .filter(({ dryingDays }) => dryingDays > onHanging.dryingDays)
    .map(({ dryingDays, lossPct }) => ({
      days: dryingDays - onHanging.dryingDays,
      lossPct: lossPct - onHanging.lossPct,
    }));
}

function skinOf({
  weighIns,
  onHanging,
  diameterMm,
}: {
  weighIns: readonly PaceWeighIn[];
  onHanging: PaceWeighIn | null;
  diameterMm: number;
}): PaceFinding['skin'] {
  const rate = skinRate(sinceHanging(weighIns, onHanging));
  return rate && { ...rate, mostPctPerDay: mostPctPerDay({ diameterMm }) };
}

/** The same told of the expected curve, weighed on the same days: what the app itself forecasts is never too fast. */
function usualSkin({
  expectation,
  weighIns,
  onHanging,
}: {
  expectation: DryingPosterior;
  weighIns: readonly PaceWeighIn[];
  onHanging: PaceWeighIn;
}): SkinRate | null {
  const usual = (one: PaceWeighIn): PaceWeighIn => ({
    ...one,
    lossPct: lossBand(expectation, one).p50Pct,
  });
  const early = weighIns.filter(({ dryingDays }) => dryingDays <= onHanging.dryingDays + EARLY_DAYS);
  return skinRate(sinceHanging(early.map(usual), usual(onHanging)));
}

function inTail(weighIns: readonly PaceWeighIn[]): boolean {
  const last = weighIns.at(-1);
  const before =
    last && weighIns.findLast(({ dryingDays }) => last.dryingDays - dryingDays >= TAIL_LEAST_DAYS);
  if (last === undefined || before === undefined) return false;
  return (last.lossPct - before.lossPct) / (last.dryingDays - before.dryingDays) < TAIL_PCT_PER_DAY;
}

/** A curve that bends over sooner than the prior's by one sd: the sign of a skin that has begun to close. */
function slowsEarly(prior: DryingPrior, weighIns: readonly PaceWeighIn[]): boolean {
  if (weighIns.length < 3) return false;
  const { nodes } = dryingPosterior({ prior, weighIns });
  const shape = nodes.reduce((sum, node) => sum + node.share * node.shape, 0);
  const [, [, shapeVariance = 0] = []] = prior.covariance;
  return shape < prior.shape - Math.sqrt(shapeVariance);
}

function doseOf({
  prior,
  last,
  mix,
  air,
}: {
  prior: DryingPrior;
  last: PaceWeighIn;
  mix: MixFractions;
  air: { readonly chamberC: number; readonly humidityPct: number };
}): { humidityPct: number; days: number } | null {
  const { finalLossPct, tauDays, shape } = prior;
  if (last.lossPct >= finalLossPct) return null;
  const dueDays = tauDays * (-Math.log(1 - last.lossPct / finalLossPct)) ** (1 / shape);
  const startAw = mixAw({ mix, lossPct: 0 });
  const highestPct = 100 * mixAw({ mix, lossPct: last.lossPct }) - UNDER_PIECE_POINTS;
  const slowerBy = Math.min(1, last.thetaDays / dueDays);
  const floored = Math.max(air.humidityPct, SOUND_AIR_PCT) / 100;
  const humidityPct = Math.min(highestPct, 100 * (startAw - (startAw - floored) * slowerBy ** (1 / 0.74)));
  if (humidityPct <= air.humidityPct) return null;
  const soundPace = dryingPace({ startAw, humidityPct: SOUND_AIR_PCT, chamberC: air.chamberC });
  const days = (dueDays - last.thetaDays) / soundPace;
  return { humidityPct, days: Math.min(DOSE_MOST_DAYS, Math.max(DOSE_LEAST_DAYS, days)) };
}

function drierAir({
  prior: { finalLossPct, tauDays, shape },
  last,
  mix,
  air,
}: {
  prior: DryingPrior;
  last: PaceWeighIn;
  mix: MixFractions;
  air: { readonly chamberC: number; readonly humidityPct: number };
}): { humidityPct: number; days: number } | null {
  const lostPct = Math.min(Math.max(last.lossPct, 0.1), finalLossPct - 0.1);
  const dueDays = tauDays * (-Math.log(1 - lostPct / finalLossPct)) ** (1 / shape);
  const startAw = mixAw({ mix, lossPct: 0 });
  const drive = Math.max(0, startAw - air.humidityPct / 100) * (last.thetaDays / dueDays) ** (1 / 0.74);
  const humidityPct = Math.max(SOUND_AIR_PCT, air.humidityPct - DRIER_POINTS, 100 * (startAw - drive));
  return humidityPct < air.humidityPct ? { humidityPct, days: DRIER_DAYS } : null;
}

function dryEnough({
  mix,
  air,
  targetLossPct,
}: {
  mix: MixFractions;
  air: { readonly humidityPct: number };
  targetLossPct: number;
}): { humidityPct: number; days: number } | null {
  for (let humidityPct = Math.ceil(air.humidityPct) - 1; humidityPct >= PLATEAU_LEAST_PCT; humidityPct--)
    if (equilibriumLossPct({ mix, humidityPct }) >= targetLossPct + SHORT_OF_REST_PCT)
      return { humidityPct, days: PLATEAU_DAYS };
  return null;
}
