/** The maker's own target band for pH at the end of the ferment. It is a target, not a published limit. */
import { disbeliefOf, type PhReading } from '#core/ferment/ph-reading.ts';
import type { Finding, Limit } from './rule.ts';

export type PhBand = { readonly lowPh: number; readonly highPh: number };

/** Common practice for a medium ferment (24 to 29 °C for 18 to 24 h); each maker sets his own. */
export const USUAL_PH_BAND: PhBand = { lowPh: 4.9, highPh: 5.2 };

export type PhBandAnswer = {
  readonly finding: Finding;
  /** Where the last believed reading lies; null: none was believed. */
  readonly position: 'above' | 'inside' | 'below' | null;
  /** The first believed reading at or below the upper edge. */
  readonly reachedAtMs: number | null;
};

function bandEdge(value: number, relation: '<=' | '>='): Limit {
  return {
    value,
    unit: 'pH',
    relation,
    basis: 'own-target',
    source: {
      body: 'the maker',
      title: 'own target band',
      section: 'end of the ferment',
      standing: 'common-practice',
    },
  };
}

/**
 * Whether the ferment has reached the maker's target band. Once it is reached, a later slow rise during drying does not undo it.
 * Not a safety rule: the degree-hours are one.
 *
 * Formula: pending while no believed reading lies at or below the upper edge; deviation once one lies below the lower edge.
 * Units: pH; times epoch ms.
 * Valid: readings in order of time, of the ferment; both edges belong to the band; lowPh <= highPh.
 * Source: common practice: the band is the maker's own.
 * @throws RangeError unless lowPh <= highPh.
 * @example phBandAnswer({ readings: [{ atMs: 7, ph: 4.9, method: 'meter', doubted: false }], band: { lowPh: 4.9, highPh: 5.2 } }).position // => 'inside'
 * @example phBandAnswer({ readings: [{ atMs: 7, ph: 5.25, method: 'meter', doubted: false }], band: { lowPh: 4.9, highPh: 5.2 } }).finding.verdict // => 'pending'
 */
export function phBandAnswer({
  readings,
  band,
}: {
  readings: readonly PhReading[];
  band: PhBand;
}): PhBandAnswer {
  const { lowPh, highPh } = band;
  if (!(lowPh <= highPh))
    throw new RangeError(`phBandAnswer: band requires lowPh <= highPh, got ${lowPh}, ${highPh}`);
  const believed = readings.filter((reading) => disbeliefOf(reading) === null);
  const last = believed.at(-1);
  const reached = believed.find((reading) => reading.ph <= highPh);
  const below = believed.find((reading) => reading.ph < lowPh);
  const answer = (
    verdict: Finding['verdict'],
    value: number | null,
    limit: Limit,
    missing: readonly string[],
  ): PhBandAnswer => ({
    finding: { rule: 'ph-band', verdict, value, limit, missing },
    position: last === undefined ? null : last.ph > highPh ? 'above' : last.ph < lowPh ? 'below' : 'inside',
    reachedAtMs: reached?.atMs ?? null,
  });
  if (last === undefined)
    return answer('no-reading', null, bandEdge(highPh, '<='), [
      readings.length > 0 ? 'ph-confirm-by-meter' : 'ph',
    ]);
  if (below !== undefined) return answer('deviation', below.ph, bandEdge(lowPh, '>='), []);
  if (reached === undefined) return answer('pending', last.ph, bandEdge(highPh, '<='), ['ph-in-band']);
  return answer('within-limit', last.ph, bandEdge(highPh, '<='), []);
}
