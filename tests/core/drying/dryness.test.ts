import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drynessAt, lossForMprPct } from '#core/drying/dryness.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';

type Track = {
  mix: { water: number; protein: number; salt: number; sugar: number };
  lossPctForMpr19: number;
  lossPctForMpr16: number;
  track: Record<
    'loss_pct' | 'moisture_pct' | 'protein_pct' | 'salt_pct' | 'MPR' | 'WPS_pct' | 'aw_model',
    number
  >[];
};
const published: Track = JSON.parse(readFileSync('fixtures/published/drying-composition-track.json', 'utf8'));
const mix = {
  waterFraction: published.mix.water,
  proteinFraction: published.mix.protein,
  saltFraction: published.mix.salt,
  sugarFraction: published.mix.sugar,
};

describe('what a loss makes of the mix', () => {
  it('follows the published track of moisture, protein, salt and their ratios', () => {
    for (const row of published.track) {
      const found = drynessAt({ mix, lossPct: row.loss_pct });
      expect(found.moisturePct).toBeCloseTo(row.moisture_pct, 2);
      expect(found.proteinPct).toBeCloseTo(row.protein_pct, 2);
      expect(found.saltPct).toBeCloseTo(row.salt_pct, 2);
      expect(found.mpr).toBeCloseTo(row.MPR, 3);
      expect(found.waterPhaseSaltPct).toBeCloseTo(row.WPS_pct, 2);
      expect(found.aw).toBeCloseTo(row.aw_model, 3);
    }
  });
  it('gives the loss for a ratio of moisture to protein', () => {
    expect(lossForMprPct({ mix, mpr: 1.9 })).toBeCloseTo(published.lossPctForMpr19, 2);
    expect(lossForMprPct({ mix, mpr: 1.6 })).toBeCloseTo(published.lossPctForMpr16, 2);
    for (const mpr of [0, Number.NaN]) expect(() => lossForMprPct({ mix, mpr })).toThrow(RangeError);
  });
  it('tells 15, 25 and 35 % fat apart at the same loss, and never without an interval', () => {
    const found = [0.15, 0.25, 0.35].map((fatFraction) =>
      drynessAt({ mix: mixFromFat({ fatFraction, saltFraction: 0.03, sugarFraction: 0.003 }), lossPct: 35 }),
    );
    expect(found[0]?.aw).toBeGreaterThan((found[1]?.aw ?? 1) + 0.01);
    expect(found[1]?.aw).toBeGreaterThan((found[2]?.aw ?? 1) + 0.01);
    for (const { aw, lowAw, highAw } of found) {
      expect(highAw - lowAw).toBeGreaterThan(0.05);
      expect(aw).toBeGreaterThan(lowAw);
    }
  });
});
