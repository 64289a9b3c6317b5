import { dryingClock, thetaAt } from '#core/drying/clock.ts';
import { impliedHumidity } from '#core/drying/implied-humidity.ts';
import { paceOf, SOUND_AIR_PCT } from '#core/drying/pace.ts';
import { dryingPrior } from '#core/drying/prior.ts';
import { type Care, type SimulatedBatch, simulateMaker } from './drying-makers.ts';
import { evidenceOf, lossOf, seen } from './drying-run.ts';

/**
 * Sound chambers and chambers that are too hard, each seen at its fourth weighing with nothing from earlier batches.
 * Prints how many were flagged. Usage: node --import tsx tests/backtest/drying-warning.ts [count] [first seed]
 */

const DAY_MS = 86_400_000;
const WEIGHINGS = 4;

function look(batch: SimulatedBatch) {
  const piece = batch.pieces[0];
  const planned = batch.programme.at(-1);
  const last = piece?.weighings[WEIGHINGS - 1] ?? piece?.weighings.at(-1);
  if (piece === undefined || planned === undefined || last === undefined) return null;
  const humidityPct = Math.max(planned.humidityPct, SOUND_AIR_PCT);
  const clock = dryingClock({
    hungMs: 0,
    nowMs: Math.round(Math.max(last.day, planned.fromDay) * DAY_MS),
    mix: batch.toldMix,
    air: batch.programme.map(({ fromDay, ...step }) => ({
      fromMs: Math.round(fromDay * DAY_MS),
      chamberC: step.chamberC,
      humidityPct: Math.max(step.humidityPct, SOUND_AIR_PCT),
    })),
    rests: [],
    planned: { ...planned, humidityPct },
  });
  const weighIns = piece.weighings
    .filter(({ day }) => day <= last.day)
    .map(({ day, weightG }) => ({
      dryingDays: day,
      thetaDays: thetaAt(clock, Math.round(day * DAY_MS)),
      lossPct: lossOf(piece, weightG),
    }));
  const prior = dryingPrior({ diameterMm: piece.toldDiameterMm, mix: batch.toldMix, humidityPct });
  const pace = paceOf({
    prior,
    weighIns,
    mix: batch.toldMix,
    air: planned,
    targetLossPct: piece.targetLossPct,
  });
  const pieces = batch.pieces.map((one) => evidenceOf(seen(batch, one, last.day)));
  const view = seen(batch, piece, last.day);
  const air = impliedHumidity({
    prior: view.prior,
    pieces,
    mix: batch.toldMix,
    dialPct: planned.humidityPct,
  });
  return {
    level: pace.level,
    chance: pace.asMuchFraction ?? 1,
    suspect: air.suspect,
    rimAw: piece.rimAw,
  };
}

function survey(care: Care, count: number, firstSeed: number) {
  const views = Array.from({ length: count }, (_, i) =>
    simulateMaker({ seed: firstSeed + i, care, batches: 1 }),
  )
    .flatMap(({ batches }) => batches)
    .flatMap((batch) => look(batch) ?? []);
  const share = (held: (view: (typeof views)[number]) => boolean) =>
    `${((100 * views.filter(held).length) / views.length).toFixed(1)} %`;
  const rims = views.map(({ rimAw }) => rimAw).sort((a, b) => a - b);
  console.log(
    `${care}: ${views.length} chambers, median rim ${rims[Math.floor(rims.length / 2)]?.toFixed(3)};`,
    `too fast ${share(({ level }) => level === 'too-fast')},`,
    `watch or too fast ${share(({ level }) => level === 'too-fast' || level === 'watch')},`,
    `sensor or airflow suspect ${share(({ suspect }) => suspect)};`,
    `either ${share(({ level, suspect }) => level === 'too-fast' || suspect)};`,
    `chance under 3 / 5 / 10 %: ${[0.03, 0.05, 0.1].map((at) => share(({ chance }) => chance < at)).join(' / ')}`,
  );
}

const count = Number(process.argv[2] ?? 200);
const firstSeed = Number(process.argv[3] ?? 1);
survey('dial', count, firstSeed);
survey('hard', count, firstSeed);
