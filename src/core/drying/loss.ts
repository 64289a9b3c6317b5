/** Loss is counted against green weight: what the piece weighed when it was hung, without string, clip or hook. */
import { median } from '#core/median.ts';

/**
 * A weight without the tare (string, clip, net, hook).
 *
 * Units: g.
 * Source: common practice.
 * @throws RangeError if the tare is negative or not below the weight on the scale.
 * @example netG({ grossG: 1403, tareG: 12 }) // => 1391
 */
export function netG({ grossG, tareG }: { grossG: number; tareG: number }): number {
  if (!(tareG >= 0 && tareG < grossG && grossG < Infinity))
    throw new RangeError(`netG: tareG requires 0 <= tareG < grossG, got ${tareG} of ${grossG}`);
  return grossG - tareG;
}

/**
 * Loss of one piece in percent of its green weight; negative if it gained.
 *
 * 100 (green - now) / green.
 * Units: g; result %.
 * Source: common practice.
 * @throws RangeError if a weight is not above zero.
 * @example lossPct({ greenG: 1000, nowG: 620 }) // => 38
 */
export function lossPct({ greenG, nowG }: { greenG: number; nowG: number }): number {
  requireWeight('lossPct', 'greenG', greenG);
  requireWeight('lossPct', 'nowG', nowG);
  return (100 * (greenG - nowG)) / greenG;
}

/**
 * What the piece weighs at its target loss; with a tare, what the scale then shows.
 *
 * green (1 - target / 100) + tare.
 * Units: g, %; result g.
 * Source: common practice.
 * @throws RangeError if the green weight is not above zero, the target not between 0 and 100 or the tare negative.
 * @example targetG({ greenG: 1391, targetLossPct: 40 }) // => 834.6
 * @example targetG({ greenG: 1391, targetLossPct: 40, tareG: 12 }) // => 846.6
 */
export function targetG({
  greenG,
  targetLossPct,
  tareG = 0,
}: {
  greenG: number;
  targetLossPct: number;
  tareG?: number;
}): number {
  requireWeight('targetG', 'greenG', greenG);
  requireTarget('targetG', targetLossPct);
  if (!(tareG >= 0 && tareG < Infinity))
    throw new RangeError(`targetG: tareG requires a weight of 0 or more, got ${tareG}`);
  return greenG * (1 - targetLossPct / 100) + tareG;
}

/**
 * Grams that the piece has still to lose; negative once it is past its target. All weights without tare.
 *
 * now - green (1 - target / 100).
 * Units: g, %; result g.
 * Source: common practice.
 * @throws RangeError if a weight is not above zero or the target not between 0 and 100.
 * @example gramsToGoG({ greenG: 1000, nowG: 700, targetLossPct: 40 }) // => 100
 */
export function gramsToGoG({
  greenG,
  nowG,
  targetLossPct,
}: {
  greenG: number;
  nowG: number;
  targetLossPct: number;
}): number {
  requireWeight('gramsToGoG', 'nowG', nowG);
  return nowG - targetG({ greenG, targetLossPct });
}

/**
 * The middle and the ends of several pieces' losses: pieces of one calibre only, since a thin and a thick one
 * have no average worth having. `null` for no pieces.
 *
 * Units: %.
 * Source: common practice.
 * @throws RangeError if a loss is not a finite number.
 * @example lossSpread([30, 34, 31, 29]) // => { lowestPct: 29, medianPct: 30.5, highestPct: 34 }
 */
export function lossSpread(
  lossesPct: readonly number[],
): { lowestPct: number; medianPct: number; highestPct: number } | null {
  if (!lossesPct.every(Number.isFinite))
    throw new RangeError(`lossSpread: lossesPct requires finite numbers, got ${lossesPct.join(', ')}`);
  if (lossesPct.length === 0) return null;
  return {
    lowestPct: Math.min(...lossesPct),
    medianPct: median(lossesPct),
    highestPct: Math.max(...lossesPct),
  };
}

function requireWeight(functionName: string, name: string, massG: number): void {
  if (!(massG > 0 && massG < Infinity))
    throw new RangeError(`${functionName}: ${name} requires a weight above 0, got ${massG}`);
}

function requireTarget(functionName: string, targetLossPct: number): void {
  if (!(targetLossPct > 0 && targetLossPct < 100))
    throw new RangeError(`${functionName}: targetLossPct requires 0 < target < 100, got ${targetLossPct}`);
}
