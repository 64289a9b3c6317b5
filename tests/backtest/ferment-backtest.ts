/**
 * Holds the pH forecast against invented ferments: `node --import tsx tests/backtest/ferment-backtest.ts [first seed] [count]`.
 * The seeds from 900001 on are for scoring; paces, spreads and errors were tuned on seeds 20000 to 80000.
 */
import { forecastPh, type PhWindow } from '#core/ferment/ph-forecast.ts';
import { COUNTED_UNTIL_PH, type PhReading } from '#core/ferment/ph-reading.ts';
import { printPublishedFerments } from './published-ferments.ts';
import { diceOf, HORIZON_HOURS, simulateFerment } from './simulated-ferment.ts';

const HOUR_MS = 3_600_000;
const TARGET_PH = COUNTED_UNTIL_PH.value;
/** What is missed by a window that lies open to the right counts as ending here. */
const NEVER_MS = (HORIZON_HOURS + 24) * HOUR_MS;

type Score = {
  readonly seed: number;
  readonly culture: string;
  readonly readings: number;
  readonly isInside: boolean;
  readonly widthHours: number;
  readonly intervalScoreHours: number;
  readonly missHours: number;
  readonly lineMissHours: number;
  readonly doesFall: boolean;
};

/** Gneiting & Raftery (2007), eq. 43: width, and 2 / alpha for each hour that the truth lies outside an 80 % window. */
function intervalScoreHours(lowMs: number, highMs: number, trueMs: number): number {
  const outsideMs = Math.max(0, lowMs - trueMs) + Math.max(0, trueMs - highMs);
  return (highMs - lowMs + (2 / 0.2) * outsideMs) / HOUR_MS;
}

/** Where the straight line through the last two readings crosses; one that does not fall never does. */
function lineAtMs(readings: readonly PhReading[]): number | null {
  const [before, last] = readings.slice(-2);
  if (before === undefined || last === undefined || last.ph >= before.ph) return null;
  return last.atMs + ((last.atMs - before.atMs) * (last.ph - TARGET_PH)) / (before.ph - last.ph);
}

/** One ferment at one of its readings, drawn from those with two readings or more, all above the target; null where it has none. */
function scoreOf(seed: number): Score | 'never' | null {
  const ferment = simulateFerment(seed);
  const trueMs = ferment.trueAtMs(TARGET_PH);
  const firstBelow = ferment.phReadings.findIndex((reading) => reading.ph <= TARGET_PH);
  const above = firstBelow < 0 ? ferment.phReadings.length : firstBelow;
  if (above < 2) return null;
  if (trueMs === null) return 'never';
  const known = ferment.phReadings.slice(0, 2 + Math.floor(diceOf(seed + 1_000_003).uniform(0, above - 1)));
  const nowMs = known.at(-1)?.atMs ?? 0;
  const forecast = forecastPh(
    {
      phReadings: known,
      roomReadings: ferment.roomReadings,
      stuffedAtMs: 0,
      nowMs,
      culture: ferment.culture,
      dextroseGPerKg: ferment.dextrosePct * 10,
    },
    [TARGET_PH],
  );
  const window: PhWindow | undefined = forecast?.windows[0];
  if (window === undefined) return null;
  const lowMs = window.earliestAtMs ?? NEVER_MS;
  const highMs = window.latestAtMs ?? NEVER_MS;
  const missHours = (guessMs: number | null): number => Math.abs((guessMs ?? NEVER_MS) - trueMs) / HOUR_MS;
  const lineMs = lineAtMs(known);
  return {
    seed,
    culture: ferment.culture,
    readings: known.length,
    isInside: trueMs >= lowMs && trueMs <= highMs,
    widthHours: (highMs - lowMs) / HOUR_MS,
    intervalScoreHours: intervalScoreHours(lowMs, highMs, trueMs),
    missHours: missHours(window.likelyAtMs),
    lineMissHours: missHours(lineMs),
    doesFall: lineMs !== null,
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] ?? 0) + (sorted[sorted.length >> 1] ?? 0)) / 2;
}

function report(name: string, scores: readonly Score[]): void {
  const share = scores.filter((score) => score.isInside).length / scores.length;
  const falling = scores.filter((score) => score.doesFall);
  const mean = scores.reduce((sum, score) => sum + score.intervalScoreHours, 0) / scores.length;
  const of = (pick: (score: Score) => number, from = scores): string => median(from.map(pick)).toFixed(2);
  process.stdout.write(
    `${name}: n ${scores.length}, inside ${(100 * share).toFixed(1)} %, width ${of((s) => s.widthHours)} h, ` +
      `interval score ${mean.toFixed(2)} h, median error ${of((s) => s.missHours)} h (straight line ${of((s) => s.lineMissHours)} h); ` +
      `where the line falls, n ${falling.length}: ${of((s) => s.missHours, falling)} h (straight line ${of((s) => s.lineMissHours, falling)} h)\n`,
  );
}

const firstSeed = Number(process.argv[2] ?? 900_001);
const wanted = Number(process.argv[3] ?? 200);
const scores: Score[] = [];
const left = { never: 0, tooEarly: 0 };
let seed = firstSeed;
for (; scores.length < wanted; seed += 1) {
  const score = scoreOf(seed);
  if (score === 'never') left.never += 1;
  else if (score === null) left.tooEarly += 1;
  else scores.push(score);
}
process.stdout.write(
  `seeds ${firstSeed} to ${seed - 1}; left out: ${left.never} never reach ${TARGET_PH}, ${left.tooEarly} are there before a second reading above it\n`,
);
report('all', scores);
for (const culture of ['slow', 'medium', 'fast'])
  report(
    culture,
    scores.filter((score) => score.culture === culture),
  );
for (const [low, high] of [
  [2, 2],
  [3, 4],
  [5, 99],
] as const)
  report(
    `${low} to ${high} readings`,
    scores.filter(({ readings }) => readings >= low && readings <= high),
  );

const isHonest = (share: number): boolean => share >= 0.75 && share <= 0.88;
const inside = scores.filter((score) => score.isInside).length / scores.length;
const falling = scores.filter((score) => score.doesFall);
const isNearer =
  median(falling.map((score) => score.missHours)) < median(falling.map((score) => score.lineMissHours));
process.stdout.write(
  `inside 75 to 88 %: ${isHonest(inside)}; nearer than a falling straight line: ${isNearer}\n`,
);
if (!isHonest(inside) || !isNearer) process.exitCode = 1;
printPublishedFerments();
