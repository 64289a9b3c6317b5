import { readFileSync } from 'node:fs';
import { dryingPace } from '#core/drying/clock.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { diagonal } from '#core/drying/matrix.ts';
import { dryingPosterior } from '#core/drying/posterior.ts';
import { dryingPrior } from '#core/drying/prior.ts';
import { mixAw } from '#core/drying/water-activity.ts';
import { scoreWindows } from '#core/drying/window-score.ts';
import { daysToTarget } from '../core/drying/days-to-target.ts';
import { type Care, type SimulatedPiece, simulateMaker } from './drying-makers.ts';
import { evidenceOn, finishedBatch, type Given, lossOf, windowOn } from './drying-run.ts';

/**
 * Windows given after 0, 1, 2, 3, 5 and 8 weighings, held against the day on which the true loss passed the target.
 * Beside them a straight line through the weighings and the days that books give for the diameter.
 * Usage: node --import tsx tests/backtest/drying-backtest.ts [makers] [first seed] [log | dial | published]
 * Seeds 1,001 to 9,999 are for this; what was tuned was tuned on seeds from 10,001 up. Seeds 1 to 1,000 were looked at before
 * the last setting of how far a logger, a dial, a batch and a weighing are believed, and are not scored any more.
 */

const COUNTS = [0, 1, 2, 3, 5, 8];
type Outcome = Given & {
  readonly reached: number | null;
  readonly line: number | null;
  readonly book: number;
};

/** Middle of the windows that makers' texts give to about 35 % (needs of makers, from memory, medium confidence). */
function bookDays(diameterMm: number): number {
  const rows: [number, number][] = [
    [39, 24],
    [45.5, 35],
    [60, 45],
    [69, 62],
    [89, 80],
  ];
  return rows.find(([uptoMm]) => diameterMm < uptoMm)?.[1] ?? 135;
}

function straightLine(piece: SimulatedPiece, count: number): number | null {
  const last = piece.weighings[count - 1];
  if (last === undefined) return null;
  const before = piece.weighings[count - 2] ?? { day: 0, weightG: piece.greenG };
  const lossPct = lossOf(piece, last.weightG);
  const pctPerDay = (lossPct - lossOf(piece, before.weightG)) / (last.day - before.day);
  return pctPerDay > 0 ? last.day + (piece.targetLossPct - lossPct) / pctPerDay : null;
}

const median = (values: number[]) =>
  values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const errorOf = (given: number | null, reached: number | null) =>
  reached === null ? (given === null ? 0 : 1) : given === null ? 1 : Math.abs(given / reached - 1);
const holds = ({ p10, p90, reached }: Outcome) =>
  reached === null ? p90 === null : p10 !== null && reached >= p10 && reached <= (p90 ?? Infinity);
const percent = (fraction: number) => `${(100 * fraction).toFixed(1)} %`;

function survey(care: Care, makers: number, firstSeed: number) {
  const kinds = ['alone', 'with siblings', 'with siblings and three earlier batches'] as const;
  const found = new Map<string, Outcome[]>();
  for (let seed = firstSeed; seed < firstSeed + makers; seed++) {
    const { batches } = simulateMaker({ seed, care, batches: 4 });
    const batch = batches.at(-1);
    const piece = batch?.pieces[0];
    if (batch === undefined || piece === undefined) continue;
    const earlierBatches = batches.slice(0, -1).map(finishedBatch);
    for (const count of COUNTS) {
      const last = piece.weighings[count - 1];
      const day = last?.day ?? 0;
      const over = piece.weighings
        .slice(0, count)
        .some(({ weightG }) => lossOf(piece, weightG) >= piece.targetLossPct);
      if ((count > 0 && last === undefined) || over || day >= (piece.reachedDay ?? Infinity)) continue;
      const siblings = batch.pieces.slice(1).map((one) => evidenceOn(batch, one, day));
      const known = [{}, { siblings }, { siblings, earlierBatches }];
      kinds.forEach((kind, i) => {
        const key = `${kind}, ${count}`;
        const outcome: Outcome = {
          ...windowOn(batch, piece, day, known[i]),
          reached: piece.reachedDay,
          line: straightLine(piece, count),
          book: bookDays(piece.toldDiameterMm),
        };
        found.set(key, [...(found.get(key) ?? []), outcome]);
      });
    }
  }
  for (const kind of kinds) {
    let held = 0;
    let all = 0;
    const three = median((found.get(`${kind}, 3`) ?? []).map(({ p50, reached }) => errorOf(p50, reached)));
    if (care === 'log' && !(three <= 0.08))
      missed.push(`${care}, ${kind}: median error after three weighings ${percent(three)}`);
    for (const count of COUNTS) {
      const outcomes = found.get(`${kind}, ${count}`) ?? [];
      held += outcomes.filter(holds).length;
      all += outcomes.length;
      const closed = outcomes.flatMap(({ p10, p50, p90, reached }) =>
        p10 === null || p50 === null || reached === null
          ? []
          : [{ p10Days: p10, p50Days: p50, p90Days: p90, reachedDays: reached }],
      );
      console.log(
        `${care}, ${kind}, ${count} weighings: n ${outcomes.length},`,
        `held ${percent(outcomes.filter(holds).length / outcomes.length)},`,
        `median error ${percent(median(outcomes.map(({ p50, reached }) => errorOf(p50, reached))))},`,
        `straight line ${percent(median(outcomes.map(({ line, reached }) => errorOf(line, reached))))},`,
        `book ${percent(median(outcomes.map(({ book, reached }) => errorOf(book, reached))))},`,
        `interval score ${scoreWindows(closed)?.meanIntervalScoreDays?.toFixed(1)} days,`,
        `open windows ${outcomes.filter(({ p90 }) => p90 === null).length}`,
      );
    }
    console.log(`${care}, ${kind}, all: held ${percent(held / all)} of ${all}`);
    if (!(held / all >= 0.75 && held / all <= 0.88))
      missed.push(`${care}, ${kind}: held ${percent(held / all)}`);
  }
}

type Series = { id: string; days: number[]; waterPct: number; lossPct: number[]; source: string };

/** Where nobody knows the air, a piece comes to rest about this much short of its water (computed, as the series' source). */
const LEFT_PCT = 9.5;
const LEFT_SD_PCT = 4;

/**
 * Published series, each forecast by a prior whose time constant is that of the others of its table: left one out. Its own
 * water on day 0 is known, as it is to a maker; its diameter and air are not. The last reading is to be forecast from
 * all before it. Batches of one table are alike: thirteen of them tell less than thirteen makers would.
 */
function published() {
  const { series }: { series: Series[] } = JSON.parse(
    readFileSync('fixtures/published/drying-series.json', 'utf8'),
  );
  const known = series.map((one) => ({ ...one, group: one.id.split('-').slice(0, 2).join('-') }));
  let held = 0;
  let open = 0;
  const each: { holds: boolean; isOpen: boolean }[] = [];
  for (const one of known) {
    const others = known.filter(({ id, group }) => id !== one.id && group === one.group);
    const middles = (others.length > 0 ? others : known.filter(({ id }) => id !== one.id)).map(tauOf);
    const prior = {
      tauDays: Math.exp(middles.reduce((sum, tauDays) => sum + Math.log(tauDays), 0) / middles.length),
      shape: 0.88,
      finalLossPct: one.waterPct - LEFT_PCT,
      covariance: diagonal([0.25, 0.04, LEFT_SD_PCT ** 2]),
      waterPct: one.waterPct,
    };
    const model = { weighingSdPct: 1.8, repeatShare: 0, tailHazard: Infinity };
    /** A reading told from all before it. */
    const told = (at: number) => {
      const weighIns = one.days
        .slice(1, at)
        .map((thetaDays, i) => ({ thetaDays, lossPct: one.lossPct[i + 1] ?? 0 }));
      const targetLossPct = one.lossPct[at] ?? 0;
      const window = daysToTarget(dryingPosterior({ prior, weighIns, model }), { targetLossPct });
      const day = one.days[at] ?? 0;
      const holds = day >= (window.p10Days ?? Infinity) && day <= (window.p90Days ?? Infinity);
      return { window, day, targetLossPct, holds, isOpen: window.p90Days === null };
    };
    const readings = one.days.slice(2).map((_, i) => told(i + 2));
    const last = readings.at(-1);
    if (last === undefined) continue;
    const show = (days: number | null) => days?.toFixed(1) ?? 'open';
    if (last.holds) held++;
    if (last.holds && last.isOpen) open++;
    each.push(...readings.slice(0, -1));
    console.log(
      `${one.id}: ${last.holds ? 'held' : 'missed'}, ${last.targetLossPct} % read on day ${last.day}; window ${show(last.window.p10Days)} to ${show(last.window.p90Days)},`,
      `middle ${show(last.window.p50Days)}`,
    );
  }
  console.log(
    `published series, left one out: ${held} of ${known.length} windows held, ${open} of them open;`,
    `of ${each.length} earlier readings, each from those before it, ${each.filter(({ holds }) => holds).length} held,`,
    `${each.filter(({ holds, isOpen }) => holds && isOpen).length} of them open`,
  );
}

type Endpoint = {
  id: string;
  diameterMm: number;
  days: number;
  lossPct: number;
  fatPct: number;
  saltPct: number;
};

/** Whole products of which only days and loss are published, told from diameter and mix alone; their air is assumed. */
function endpoints() {
  const { endpoints: known }: { endpoints: Endpoint[] } = JSON.parse(
    readFileSync('fixtures/published/drying-endpoints.json', 'utf8'),
  );
  for (const { id, diameterMm, days, lossPct, fatPct, saltPct } of known) {
    const mix = mixFromFat({
      fatFraction: fatPct / 100,
      saltFraction: saltPct / 100,
      sugarFraction: 0.005,
    });
    const air = { humidityPct: 80, chamberC: 12 };
    const perDay = dryingPace({ startAw: mixAw({ mix, lossPct: 0 }), ...air });
    const prior = dryingPrior({ diameterMm, mix, humidityPct: air.humidityPct });
    const window = daysToTarget(dryingPosterior({ prior, weighIns: [] }), { targetLossPct: lossPct });
    const show = (thetaDays: number | null) =>
      thetaDays === null ? 'open' : (thetaDays / perDay).toFixed(0);
    console.log(
      `${id}, ${diameterMm} mm: ${lossPct} % published for day ${days}; day-0 window ${show(window.p10Days)} to`,
      `${show(window.p90Days)}, middle ${show(window.p50Days)} (air assumed)`,
    );
  }
}

/** Time constant through the first reading, were the final loss as expected. */
function tauOf({ days, lossPct, waterPct }: Series): number {
  const part = Math.min(0.95, (lossPct[1] ?? 0) / (waterPct - LEFT_PCT));
  return (days[1] ?? 1) / (-Math.log(1 - part)) ** (1 / 0.88);
}

/** What was asked: windows of 80 % hold in 75 to 88 % of cases, and the middle is off by 8 % at most after three. */
const missed: string[] = [];
const makers = Number(process.argv[2] ?? 200);
const firstSeed = Number(process.argv[3] ?? 1001);
const only = process.argv[4];
if (only === undefined || only === 'log') survey('log', makers, firstSeed);
if (only === undefined || only === 'dial') survey('dial', makers, firstSeed);
if (only === undefined || only === 'published') {
  published();
  endpoints();
}
for (const miss of missed) console.log(`not met: ${miss}`);
process.exitCode = missed.length > 0 ? 1 : 0;
