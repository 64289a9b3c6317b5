import { loadavg } from 'node:os';
import { offsetBelief } from '#core/drying/belief.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { dryingPosterior } from '#core/drying/posterior.ts';
import { dryingPrior } from '#core/drying/prior.ts';
import { dryRadially } from '#core/drying/radial.ts';
import { radialFan } from '#core/drying/radial-fan.ts';
import { radialFit, radialSpread } from '#core/drying/radial-fit.ts';
import { batchAhead } from '#record/drying-batch.ts';
import { rehearse } from '#record/drying-rehearsal.ts';
import { NEW_START } from '#screens/what-if/start.ts';
import {
  batchOf,
  book,
  ferment,
  HOUR_MS,
  openBatch,
  START_MS,
  setUp,
  stuff,
  weighMeat,
  weighOutSalt,
  weighRound,
} from '../screens/book.ts';

/**
 * The posterior of 60 weighings against one fit of three parameters by an ordinary least squares package, and a run of
 * 60 days of the radial model against ten million exponentials. Beside them what another thread works out for a page: all that is
 * told of a batch of 24, and a slider's move (bar: 200 ms at a sixth of the speed). Usage: node --import tsx tests/bench/drying-bench.ts
 * The package is named in a variable, so that the project compiles where it is not installed; without it that half
 * says so and the run fails.
 */

type Fit = (
  data: { x: number[]; y: number[] },
  curve: (parameters: number[]) => (x: number) => number,
  options: { initialValues: number[]; maxIterations: number; damping: number; gradientDifference: number },
) => { parameterValues: number[]; parameterError: number; iterations: number };

const LEAST_SQUARES: string = 'ml-levenberg-marquardt';
const ROUNDS = 15;

function medianMs(run: () => unknown): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const startMs = performance.now();
    run();
    return performance.now() - startMs;
  });
  return times.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN;
}

const mix = mixFromFat({ fatFraction: 0.2, saltFraction: 0.027, sugarFraction: 0.005 });
const prior = dryingPrior({ diameterMm: 55, mix, humidityPct: 80 });
const weighIns = Array.from({ length: 60 }, (_, i) => ({
  thetaDays: i + 1,
  lossPct: 45 * (1 - Math.exp(-(((i + 1) / 18) ** 0.92))) + 0.3 * Math.sin(7 * i),
}));

const radialMs = medianMs(() =>
  dryRadially({
    diameterMm: 55,
    mix,
    air: [{ fromDay: 0, chamberC: 13, humidityPct: 80 }],
    airMPerS: 0.2,
    days: [60],
  }),
);
let sum = 0;
const exponentialsMs = medianMs(() => {
  for (let i = 0; i < 1e7; i++) sum += Math.exp(-i * 1e-7);
});
if (!(sum > 0)) throw new Error('bench: the exponentials were not computed');
const posteriorMs = medianMs(() => dryingPosterior({ prior, weighIns }));

console.log(
  `load ${loadavg()
    .map((each) => each.toFixed(1))
    .join(' ')}`,
);
console.log(
  `radial model, 60 days: ${radialMs.toFixed(1)} ms; ten million Math.exp: ${exponentialsMs.toFixed(1)} ms`,
);
console.log(`posterior of 60 weighings: ${posteriorMs.toFixed(2)} ms`);

/** What tells a piece that hangs: the same weighings, dated by days, through the radial model. */
const piece = {
  diameterMm: 55,
  mix,
  air: [{ fromDay: 0, chamberC: 13, humidityPct: 80 }],
  hungDay: 0,
  humiditySdPct: 4,
};
const believed = offsetBelief({
  spread: radialSpread({ humiditySdPct: 4 }),
  siblings: [],
  earlierBatches: [],
});
const dated = weighIns.map(({ thetaDays, lossPct }) => ({ day: thetaDays, lossPct }));
const fitMs = medianMs(() => radialFit({ piece, believed, weighIns: dated }));
const fit = radialFit({ piece, believed, weighIns: dated });
const fanMs = medianMs(() => radialFan({ piece, believed: fit, fromDay: 60, targetLossPct: 44 }));
console.log(`radial fit of 60 weighings: ${fitMs.toFixed(1)} ms; its band ahead: ${fanMs.toFixed(1)} ms`);

const OPTIONS = { initialValues: [40, 15, 1], maxIterations: 100, damping: 0.01, gradientDifference: 1e-4 };
/** Nearer than this to the error of the whole run a fit is as good as done. */
const AS_GOOD = 1.001;

/** The fit as it is asked; and the same stopped as soon as it is as good, since the package itself stops only at an error of next to nothing. */
function peer(leastSquares: Fit): { wholeMs: number; doneMs: number } {
  let curves = 0;
  const run = (maxIterations: number) =>
    leastSquares(
      { x: weighIns.map(({ thetaDays }) => thetaDays), y: weighIns.map(({ lossPct }) => lossPct) },
      ([final = 0, tau = 1, shape = 1]) => {
        curves += 1;
        return (day) => final * (1 - Math.exp(-((day / tau) ** shape)));
      },
      { ...OPTIONS, maxIterations },
    );
  const whole = run(OPTIONS.maxIterations);
  const wholeCurves = curves;
  let enough = 1;
  while (run(enough).parameterError > AS_GOOD * whole.parameterError) enough += 1;
  curves = 0;
  const done = run(enough);
  const [final, tau, shape] = whole.parameterValues.map((value) => value.toFixed(3));
  console.log(`least squares, options: ${JSON.stringify(OPTIONS)}, the rest as ${LEAST_SQUARES} has it`);
  console.log(
    `least squares: ${whole.iterations} iterations (${wholeCurves} curves made), squared error ${whole.parameterError.toExponential(2)}, final ${final} %, tau ${tau} days, shape ${shape}; as good after ${done.iterations} (${curves} curves)`,
  );
  return { wholeMs: medianMs(() => run(OPTIONS.maxIterations)), doneMs: medianMs(() => run(enough)) };
}

const fits = await import(LEAST_SQUARES)
  .then(({ levenbergMarquardt }: { levenbergMarquardt: Fit }) => peer(levenbergMarquardt))
  .catch((problem: unknown) => {
    console.log(`least squares: not measured, ${LEAST_SQUARES} could not be loaded (${String(problem)})`);
    return null;
  });
if (fits !== null)
  console.log(
    `one least squares fit of three parameters: ${fits.wholeMs.toFixed(2)} ms; stopped when as good ${fits.doneMs.toFixed(2)} ms`,
  );

const PIECES = 24;
const rail = ferment(
  stuff(weighOutSalt(weighMeat(openBatch(setUp(book())))), {
    greenG: Array.from({ length: PIECES }, (_, at) => 800 + 3 * at),
  }),
);
for (const [day, lossPct] of [
  [2, 8],
  [5, 14],
  [9, 20],
  [16, 27],
] as const)
  weighRound(
    rail,
    33 + 24 * day,
    Array.from({ length: PIECES }, (_, at) => Math.round((800 + 3 * at) * (1 - lossPct / 100) + (at % 3))),
  );
const given = { batch: batchOf(rail), air: null, others: [], nowMs: START_MS + 18 * 24 * HOUR_MS };
const startMs = performance.now();
batchAhead(given);
console.log(
  `all that is told of a batch of ${PIECES}, once: ${(performance.now() - startMs).toFixed(0)} ms (in another thread)`,
);
const sliderMs = medianMs(() => rehearse({ wish: NEW_START.wish, diffusivity13M2PerS: null, fine: false }));
console.log(
  `what-if, coarse: ${sliderMs.toFixed(1)} ms; at a sixth of the speed ${(6 * sliderMs).toFixed(0)} ms`,
);

const slow = radialMs > exponentialsMs || (fits !== null && posteriorMs > fits.wholeMs) || 6 * sliderMs > 200;
process.exitCode = slow || fits === null ? 1 : 0;
