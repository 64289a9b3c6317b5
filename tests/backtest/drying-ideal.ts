import { diagonal, lowerRoot, type Matrix } from '#core/drying/matrix.ts';
import { radialFit, radialLosses } from '#core/drying/radial-fit.ts';
import { type Care, type Dice, dice, type SimulatedPiece, simulateMaker } from './drying-makers.ts';
import { lossOf, told, windowOn } from './drying-run.ts';

/**
 * How near anybody could come after three weighings of one piece: a forecaster who knows how the makers were made up, with
 * every spread, and only not the numbers rolled. Each maker's unknowns are drawn many times around the app's own fit, run
 * through the app's model (as the one that made the makers, in coarser steps), and weighted by their chance and by the weighings
 * (importance sampling). The middle of what is left is about the best guess there is. What humidity wandered unread before the
 * weighings counts as their error, every scale as one of a gram, and a day after the last one told as never.
 * Usage: node --import tsx tests/backtest/drying-ideal.ts [makers] [first seed] [draws]
 */

const WEIGHINGS = 3;
const LAST_DAY = 150;
/** Wider than the fit, so that nothing likely is left out. */
const REACH = 1.5;
const SMUDGE_PCT = 0.25;
const ROUNDING_G = 0.5;
/** What the wandering of the makers' humidity does to a loss: 0.6 to 1.5 points on days 4 to 30, by the app's model at 45 to 80 mm. */
const WANDERED_PCT = 1;
/** As `drying-makers.ts` rolls them: a piece's unknowns, all sources together, as `radialLosses` counts them; the power evenly. */
const ROLLED = {
  log: {
    mean: [0, 0, Math.log(0.75), 0, 0, 0],
    sd: [0.72, 0, 0.54, 1.5, 0.035, 0.01],
    power: 0.5,
    biasC: 0.3,
  },
  dial: {
    mean: [0, 0, Math.log(0.75), 0, 0, 0],
    sd: [0.72, 0, 0.54, 4, 0.035, 0.03],
    power: 1,
    biasC: 0.7,
  },
} as const;
const POWER = 1;

/** ln of the chance that a maker is so, up to a constant. */
function lnChance(unknowns: readonly number[], care: 'log' | 'dial'): number {
  const { mean, sd, power } = ROLLED[care];
  if (Math.abs(unknowns[POWER] ?? 0) > power) return -Infinity;
  return unknowns.reduce(
    (sum, one, i) => (i === POWER ? sum : sum - ((one - (mean[i] ?? 0)) / (sd[i] ?? 1)) ** 2 / 2),
    0,
  );
}

type Draw = { readonly lnWeight: number; readonly reached: number };

function draw(
  roll: Dice,
  {
    care,
    seen,
    fit,
    root,
    targetLossPct,
    nowDay,
    greenG,
  }: {
    care: 'log' | 'dial';
    seen: ReturnType<typeof told>;
    fit: ReturnType<typeof radialFit>;
    root: Matrix;
    targetLossPct: number;
    nowDay: number;
    greenG: number;
  },
): Draw {
  const normals = fit.mean.map(() => roll.normal(0, 1));
  const unknowns = fit.mean.map(
    (mean, i) => mean + REACH * (root[i] ?? []).reduce((sum, value, j) => sum + value * (normals[j] ?? 0), 0),
  );
  const lnProposed = -normals.reduce((sum, one) => sum + one * one, 0) / 2;
  const lnPrior = lnChance(unknowns, care);
  if (lnPrior === -Infinity) return { lnWeight: -Infinity, reached: Infinity };
  const biasC = roll.normal(0, ROLLED[care].biasC);
  let wander = roll.normal(0, 3);
  const air = Array.from({ length: LAST_DAY }, (_, day) => {
    const step = seen.piece.air.findLast(({ fromDay }) => fromDay <= day) ?? seen.piece.air[0];
    wander = 0.7 * wander + roll.normal(0, 3 * Math.sqrt(1 - 0.49));
    const ahead = day >= nowDay;
    return {
      fromDay: day,
      chamberC: (step?.chamberC ?? 13) + biasC + (ahead ? roll.normal(0, 0.5) : 0),
      humidityPct: (step?.humidityPct ?? 80) + (ahead ? wander : 0),
    };
  });
  const ahead = Array.from({ length: LAST_DAY + 1 }, (_, day) => day).filter((day) => day > nowDay);
  const days = [...seen.weighIns.map(({ day }) => day), ...ahead];
  const losses = radialLosses({ ...seen.piece, air }, { unknowns, days });
  const sdPct = Math.hypot(SMUDGE_PCT, (100 * ROUNDING_G) / greenG, care === 'log' ? 0 : WANDERED_PCT);
  const lnFit = -seen.weighIns.reduce(
    (sum, { lossPct }, i) => sum + ((lossPct - (losses[i] ?? 0)) / sdPct) ** 2 / 2,
    0,
  );
  const after = losses.findIndex((lossPct, i) => i >= WEIGHINGS && lossPct >= targetLossPct);
  const [from = nowDay, to = Infinity] = [days[after - 1], days[after]];
  const [low = 0, high = 0] = [losses[after - 1], losses[after]];
  const reached = after < 0 ? Infinity : from + ((targetLossPct - low) / (high - low)) * (to - from);
  return { lnWeight: lnPrior + lnFit - lnProposed, reached };
}

const median = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Middle of what is left of the draws, and how many draws it is worth. */
function middleOf(draws: readonly Draw[]): { reached: number; worth: number } {
  const most = Math.max(...draws.map(({ lnWeight }) => lnWeight));
  const weighted = draws.map(({ lnWeight, reached }) => ({ weight: Math.exp(lnWeight - most), reached }));
  const all = weighted.reduce((sum, { weight }) => sum + weight, 0);
  const squares = weighted.reduce((sum, { weight }) => sum + weight * weight, 0);
  let passed = 0;
  const middle = weighted
    .toSorted((a, b) => a.reached - b.reached)
    .find(({ weight }) => {
      passed += weight;
      return passed >= all / 2;
    });
  return { reached: middle?.reached ?? Infinity, worth: all ** 2 / squares };
}

const missOf = (given: number | null, { reachedDay }: SimulatedPiece) =>
  given === null || given === Infinity || reachedDay === null ? 1 : Math.abs(given / reachedDay - 1);

function survey(care: Extract<Care, 'log' | 'dial'>, makers: number, firstSeed: number, drawn: number) {
  const rows: { ideal: number; own: number; worth: number }[] = [];
  for (let seed = firstSeed; seed < firstSeed + makers; seed++) {
    const batch = simulateMaker({ seed, care, batches: 4 }).batches.at(-1);
    const piece = batch?.pieces[0];
    const nowDay = piece?.weighings[WEIGHINGS - 1]?.day;
    if (!batch || !piece || nowDay === undefined || piece.reachedDay === null) continue;
    const weighed = piece.weighings.slice(0, WEIGHINGS);
    if (
      nowDay >= piece.reachedDay ||
      weighed.some(({ weightG }) => lossOf(piece, weightG) >= piece.targetLossPct)
    )
      continue;
    const seen = told(batch, piece, nowDay);
    const { mean, sd } = ROLLED[care];
    const believed = {
      mean: [...mean],
      covariance: diagonal(sd.map((one, i) => (i === POWER ? ROLLED[care].power ** 2 / 3 : one ** 2))),
    };
    const fit = radialFit({ ...seen, believed });
    const root = lowerRoot(fit.covariance);
    const roll = dice(seed + 1_000_000);
    const { targetLossPct, greenG } = piece;
    const draws = Array.from({ length: drawn }, () =>
      draw(roll, { care, seen, fit, root, targetLossPct, nowDay, greenG }),
    );
    const { reached, worth } = middleOf(draws);
    rows.push({
      ideal: missOf(reached, piece),
      own: missOf(windowOn(batch, piece, nowDay).p50, piece),
      worth,
    });
  }
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  console.log(
    `${care}, after three weighings, ${rows.length} makers who reach their target: about the best guess there is misses by`,
    `${percent(median(rows.map(({ ideal }) => ideal)))} (median), the app by ${percent(median(rows.map(({ own }) => own)))};`,
    `${drawn} draws are worth ${median(rows.map(({ worth }) => worth)).toFixed(0)} (median), least ${Math.min(...rows.map(({ worth }) => worth)).toFixed(0)}`,
  );
}

const makers = Number(process.argv[2] ?? 200);
const firstSeed = Number(process.argv[3] ?? 1001);
const drawn = Number(process.argv[4] ?? 2000);
survey('log', makers, firstSeed, drawn);
survey('dial', makers, firstSeed, drawn);
