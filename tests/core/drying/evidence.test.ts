import { describe, expect, it } from 'vitest';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import { batchEvidence, type DryingEvidence, informedPrior, pieceEvidence } from '#core/drying/evidence.ts';
import { inverse, times } from '#core/drying/matrix.ts';
import { dryingPosterior } from '#core/drying/posterior.ts';
import { dryingPrior, PIECE_COVARIANCE } from '#core/drying/prior.ts';

const mix = mixFromFat({ fatFraction: 0.2, saltFraction: 0.027, sugarFraction: 0.005 });
const prior = dryingPrior({ diameterMm: 50, mix, humidityPct: 80 });
const quick = (tauDays: number): DryingEvidence => {
  const weighIns = [4, 8, 12, 18, 25, 35].map((thetaDays) => ({
    thetaDays,
    lossPct: prior.finalLossPct * (1 - Math.exp(-((thetaDays / tauDays) ** prior.shape))),
  }));
  return pieceEvidence({ prior, weighIns, posterior: dryingPosterior({ prior, weighIns }) });
};
const lnTauSd = (known: typeof prior) => Math.sqrt(known.covariance[0]?.[0] ?? Number.NaN);
const informed = (batches: DryingEvidence[], siblings: DryingEvidence[] = []) =>
  informedPrior({ prior, siblings, earlierBatches: batches });

describe('pieces and batches that sharpen a forecast', () => {
  it('move it towards how they dried, quick or slow', () => {
    const batch = batchEvidence([quick(11)]);
    expect(informed([batch, batch, batch]).tauDays).toBeLessThan(0.85 * prior.tauDays);
    expect(informed([], [quick(11)]).tauDays).toBeLessThan(prior.tauDays);
    expect(informed([], [quick(30)]).tauDays).toBeGreaterThan(prior.tauDays);
  });

  it('sharpen it with every batch, and leave a batch and a piece their own doubt', () => {
    const batch = batchEvidence([quick(14), quick(14.5)]);
    const sds = [0, 1, 3, 10, 300].map((count) => lnTauSd(informed(new Array(count).fill(batch))));
    for (let i = 1; i < sds.length; i++) expect(sds[i]).toBeLessThan(sds[i - 1] ?? 0);
    // What is not the chamber's: 0.5² - 0.37².
    expect(sds.at(-1)).toBeGreaterThan(Math.sqrt(0.5 ** 2 - 0.37 ** 2) - 0.01);
  });

  it('never let many pieces of one batch say more than one batch can', () => {
    const many = informed([batchEvidence(new Array(500).fill(quick(14)))]);
    const three = informed(new Array(3).fill(batchEvidence([quick(14), quick(14)])));
    expect(lnTauSd(many)).toBeGreaterThan(lnTauSd(three));
    const siblings = informed([], new Array(500).fill(quick(14)));
    expect(lnTauSd(siblings)).toBeGreaterThan(Math.sqrt(PIECE_COVARIANCE[0]?.[0] ?? Number.NaN));
  });

  it('hold each piece back by what is its own, however often it was weighed', () => {
    const piece = quick(14);
    const most = 1 / (PIECE_COVARIANCE[0]?.[0] ?? Number.NaN);
    expect(piece.precision[0]?.[0]).toBeGreaterThan(most);
    expect(batchEvidence([piece]).precision[0]?.[0]).toBeLessThan(most);
  });

  it('are in any order the same, and none of them change nothing', () => {
    const [a, b] = [batchEvidence([quick(12)]), batchEvidence([quick(25)])];
    expect(informed([a, b]).tauDays).toBeCloseTo(informed([b, a]).tauDays, 9);
    expect(informed([])).toEqual(prior);
  });
});

describe('three by three', () => {
  it('a matrix times its inverse is one', () => {
    const matrix = [
      [4, 1, 0.5],
      [1, 3, -0.2],
      [0.5, -0.2, 2],
    ] as const;
    times(matrix, inverse(matrix)).forEach((row, i) => {
      row.forEach((value, j) => {
        expect(value).toBeCloseTo(i === j ? 1 : 0, 12);
      });
    });
    expect(() =>
      inverse([
        [1, 2, 3],
        [2, 4, 6],
        [0, 0, 1],
      ]),
    ).toThrow(RangeError);
  });
});
