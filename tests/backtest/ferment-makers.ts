/**
 * Whether a maker's own ferments help with the end of the next one: `node --import tsx tests/backtest/ferment-makers.ts [first seed] [count]`.
 * Invented makers: their meat's buffering and their culture's last pH are their own, and each batch differs from them by itself. Seeds
 * from 700001 on; none of those that the forecast is scored on.
 */
import { phPrior } from '#core/ferment/ph-prior.ts';
import { finalPh } from '#core/formula/final-ph.ts';
import { diceOf } from './simulated-ferment.ts';

const BEFORE = [0, 1, 3, 6];
/** What 8 in 10 lie within, in standard deviations. */
const EIGHT_IN_TEN_SD = 1.2816;

/** How far the next batch misses what is expected of it after so many, and whether it lies within 8 in 10. */
function nextOf(seed: number, own: number, sharedPart: number): { missPh: number; isInside: boolean } {
  const dice = diceOf(seed);
  const dextroseGPerKg = 10 * dice.uniform(0.3, 0.7);
  const part = { maker: Math.sqrt(sharedPart), batch: Math.sqrt(1 - sharedPart) };
  const maker = { buffer: dice.normal(), conversion: dice.normal(), hidden: dice.uniform(0, 0.8) };
  const dropPh = () => {
    const startPh = 5.75 + 0.1 * dice.normal();
    const endPh = finalPh({
      startPh,
      dextroseGPerKg: dextroseGPerKg + maker.hidden,
      bufferMmolPerKg: Math.max(35, 60 + 10 * (part.maker * maker.buffer + part.batch * dice.normal())),
      conversionFraction: Math.min(
        1,
        0.9 + 0.06 * (part.maker * maker.conversion + part.batch * dice.normal()),
      ),
    });
    return startPh - Math.max(4.4, endPh);
  };
  const expectedPh = phPrior({ culture: 'medium', dextroseGPerKg }).dropPh;
  const ferments = Array.from({ length: own }, () => ({
    shape: 'logistic' as const,
    lagHours: 14,
    halfHours: 13,
    beyondPh: dropPh() + 0.04 * dice.normal() - expectedPh,
  }));
  const prior = phPrior({ culture: 'medium', dextroseGPerKg, own: ferments });
  const missPh = Math.abs(prior.dropPh - dropPh());
  return { missPh, isInside: missPh <= EIGHT_IN_TEN_SD * prior.dropSdPh };
}

const firstSeed = Number(process.argv[2] ?? 700_001);
const count = Number(process.argv[3] ?? 2000);
let isHelped = true;
let leastInside = 1;
// Makers who differ from each other as much as their batches do, and makers who do not differ at all.
for (const sharedPart of [0.5, 0]) {
  const misses = BEFORE.map((own) => {
    const all = Array.from({ length: count }, (_, at) => nextOf(firstSeed + at, own, sharedPart));
    const meanPh = all.reduce((sum, { missPh }) => sum + missPh, 0) / count;
    const inside = all.filter((each) => each.isInside).length / count;
    leastInside = Math.min(leastInside, inside);
    process.stdout.write(
      `makers share ${100 * sharedPart} %, after ${own} of their own: mean miss ${meanPh.toFixed(3)} pH, inside 8 in 10: ${(100 * inside).toFixed(1)} %\n`,
    );
    return meanPh;
  });
  if (sharedPart > 0) isHelped = (misses.at(-1) ?? 1) < (misses[0] ?? 0);
}
const isHonest = leastInside >= 0.8;
process.stdout.write(
  `own ferments bring the end nearer: ${isHelped}; 8 in 10 holds throughout: ${isHonest}\n`,
);
if (!isHelped || !isHonest) process.exitCode = 1;
