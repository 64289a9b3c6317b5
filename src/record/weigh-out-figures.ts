import { type Figures, figuresFromGrams } from '#core/formula/figures.ts';
import { isMeat } from '#core/formula/formula.ts';
import type { BenchScale } from '#core/formula/scale.ts';
import { type WeighOut, weighOut } from '#core/formula/weigh-out.ts';
import type { Batch } from './batch.ts';
import type { Scale } from './place.ts';

/** What stands on the bench of somebody who has entered no scale: a kitchen scale in whole grams. Said on the screen. */
export const NO_SCALE: BenchScale = { id: 'no-scale', stepG: 1, capacityG: null };

export function benchScales(scales: readonly Scale[]): BenchScale[] {
  if (scales.length === 0) return [NO_SCALE];
  return scales.map(({ id, stepG, mostG }) => ({ id, stepG, capacityG: mostG }));
}

/** The grams to weigh out for the meat that was weighed. Null while there is none, or while pieces must be counted first. */
export function plannedWeighOut(batch: Batch, scales: readonly Scale[]): WeighOut | null {
  const { leanG, fatG, pieces } = batch;
  const { formula } = batch.opened.body;
  if (!(leanG + fatG > 0)) return null;
  const counted = pieces.length > 0 ? pieces.length : null;
  if (counted === null && formula.lines.some(({ amount }) => amount.basis === 'per-piece')) return null;
  return weighOut({ formula, leanG, fatG, pieces: counted, scales: benchScales(scales) });
}

/** What was really weighed, line by line; a line not weighed yet counts as missing, never as its target. */
export function weighedFigures(batch: Batch): Figures | null {
  const { leanG, fatG, weighedOut } = batch;
  if (!(leanG + fatG > 0)) return null;
  return figuresFromGrams({
    leanG,
    fatG,
    lines: batch.opened.body.formula.lines
      .filter(({ role }) => !isMeat(role))
      .map(({ id, role, cure }) => ({ role, cure, massG: weighedOut.get(id)?.body.massG ?? null })),
  });
}
