/** Every rule's answer on a batch, as it stands now: what goes in, the degree-hours, the maker's own pH band. */
import { phBandAnswer } from '#core/rules/ph-band.ts';
import type { Finding } from '#core/rules/rule.ts';
import type { Batch } from './batch.ts';
import { fermentFigures, phReadings } from './ferment-figures.ts';
import { phBandOf } from './ferment-plan.ts';
import { formulaFindings } from './formula-findings.ts';
import type { Scale } from './place.ts';

export function batchFindings(batch: Batch, scales: readonly Scale[], nowMs: number): Finding[] {
  const clock = fermentFigures(batch, nowMs);
  const product = phReadings(batch);
  const band = phBandOf(batch.plan);
  return [
    ...(formulaFindings(batch, scales)?.findings ?? []),
    ...(clock ? [clock.finding] : []),
    ...(product.length > 0 && band ? [phBandAnswer({ readings: product, band }).finding] : []),
  ];
}
