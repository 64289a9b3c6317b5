/** A pH meter held against its buffers: offset, slope, what it would have to be corrected by, and whether it failed. */
import type { Finding, Limit, Source } from '#core/rules/rule.ts';

export type BufferName = '4.00' | '7.00' | '10.01' | '4.01' | '6.86' | '9.18';

const BUFFER_STEP_C = 5;
/** pH at 0, 5, ... 50 °C. 4.00, 7.00, 10.01 are technical buffers, 4.01, 6.86, 9.18 those of the US national bureau. */
const BUFFER_PH: Readonly<Record<BufferName, readonly number[]>> = {
  '4.00': [4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.01, 4.02, 4.03, 4.04, 4.06],
  '7.00': [7.12, 7.09, 7.06, 7.04, 7.02, 7.0, 6.99, 6.99, 6.98, 6.98, 6.97],
  '10.01': [10.32, 10.25, 10.18, 10.12, 10.06, 10.01, 9.97, 9.93, 9.89, 9.86, 9.83],
  '4.01': [4.0, 4.0, 4.0, 4.0, 4.0, 4.01, 4.01, 4.02, 4.03, 4.04, 4.05],
  '6.86': [6.98, 6.95, 6.92, 6.9, 6.88, 6.86, 6.85, 6.84, 6.84, 6.83, 6.83],
  '9.18': [9.46, 9.4, 9.33, 9.28, 9.23, 9.18, 9.14, 9.1, 9.07, 9.04, 9.01],
};

const MAKER: Source = {
  body: 'a meter maker',
  title: 'How to calculate offset and slope',
  section: 'acceptable offset and slope',
  standing: 'read',
};

function electrode(value: number, unit: string, relation: '<=' | '>=', basis: string): Limit {
  return { value, unit, relation, basis, source: MAKER };
}

/** What a meter has to keep: the electrode's offset and slope, and the error of a shown pH in any buffer. */
export const METER_LIMITS: Readonly<
  Record<'offsetLow' | 'offsetHigh' | 'slopeLow' | 'slopeHigh' | 'error', Limit>
> = {
  offsetLow: electrode(-30, 'mV', '>=', 'offset-at-ph-7'),
  offsetHigh: electrode(30, 'mV', '<=', 'offset-at-ph-7'),
  slopeLow: electrode(85, '%', '>=', 'slope-of-nernst'),
  slopeHigh: electrode(105, '%', '<=', 'slope-of-nernst'),
  error: {
    value: 0.1,
    unit: 'pH',
    relation: '<=',
    basis: 'shown-in-buffer',
    source: {
      body: 'trade',
      title: 'common practice',
      section: 'check of a meter in two buffers',
      standing: 'common-practice',
    },
  },
};
/** Many laboratories call a slope under this worn (from memory, medium confidence: said, never a verdict). */
const WORN_SLOPE_PCT = 95;
/** Two buffers on each day of use: common practice (an extension procedure asks before each use or hourly). */
export const METER_CHECK_DUE_HOURS = 24;

export type BufferReading = {
  readonly buffer: BufferName;
  readonly bufferC: number;
  /** As the meter shows it: mV of the electrode, or pH. */
  readonly value: number;
  readonly unit: 'mV' | 'pH';
};

/** A shown pH is corrected along the straight line through these two buffers. */
export type MeterCorrection = {
  readonly lowShownPh: number;
  readonly lowTruePh: number;
  readonly highShownPh: number;
  readonly highTruePh: number;
};

export type MeterCheck = {
  readonly finding: Finding;
  /** Of a shown pH: against what the meter is set to, taken at the ideal slope. Null without a buffer near 7. */
  readonly offsetMv: number | null;
  readonly slopePct: number | null;
  readonly isWorn: boolean;
  readonly hasFailed: boolean;
  /** Shown pH minus the buffer's pH at its temperature; null for mV. */
  readonly buffers: readonly {
    readonly buffer: BufferName;
    readonly truePh: number;
    readonly errorPh: number | null;
  }[];
  readonly correction: MeterCorrection | null;
  readonly nextDueMs: number;
};

/**
 * The pH of a buffer at its temperature. Temperature compensation of a meter corrects its electrode, not the buffer.
 *
 * Formula: linear between rows 5 °C apart. Units: °C. Valid: 0 to 50 °C.
 * Source: a process-meter manual, MI 611-211 (2005), p. 23, tables 7 and 8: technical buffers and 0 to 10 °C read, the rest of 4.01,
 * 6.86, 9.18 from memory, high confidence (NIST, DIN 19266).
 * @throws RangeError outside 0 to 50 °C.
 * @example bufferPh({ buffer: '7.00', bufferC: 20 }) // => 7.02
 */
export function bufferPh({ buffer, bufferC }: { buffer: BufferName; bufferC: number }): number {
  if (!(bufferC >= 0 && bufferC <= 50))
    throw new RangeError(`bufferPh: bufferC requires 0 to 50 °C, got ${bufferC}`);
  const column = BUFFER_PH[buffer];
  const row = Math.min(Math.floor(bufferC / BUFFER_STEP_C), column.length - 2);
  const share = bufferC / BUFFER_STEP_C - row;
  return (column[row] ?? Number.NaN) * (1 - share) + (column[row + 1] ?? Number.NaN) * share;
}

/**
 * The ideal slope of a glass electrode.
 *
 * Formula: ln(10) R (t + 273.15) / F = 0.198416 x (t + 273.15).
 * Units: °C; mV per pH. Valid: above -273.15 °C.
 * Source: Nernst equation, with the exact SI constants (derived).
 * @throws RangeError unless tempC is above -273.15.
 * @example Math.round(nernstMvPerPh(25) * 100) / 100 // => 59.16
 */
export function nernstMvPerPh(tempC: number): number {
  if (!(tempC > -273.15)) throw new RangeError(`nernstMvPerPh: tempC requires above -273.15, got ${tempC}`);
  return ((Math.LN10 * 8.31446261815324) / 96.48533212331) * (tempC + 273.15);
}

/**
 * A meter's offset and slope from a buffer near 7 and one near 4, in mV or as shown pH, and whether it failed.
 *
 * Formula: slope = (mV4 - mV7) / ((pH7 - pH4) x Nernst), or (shown7 - shown4) / (pH7 - pH4); offset = mV at pH 7. A shown pH
 * also fails by more than 0.1 in a buffer, since a meter may be set wrong while its electrode is good.
 * Units: mV, % of Nernst, pH. Valid: both buffers in one unit; without either, no-reading.
 * Source: METER_LIMITS and bufferPh carry theirs.
 * @throws RangeError for buffers in different units, a temperature outside 0 to 50 °C, or a shown value that is not finite.
 * @example meterCheck({ readings: [{ buffer: '7.00', bufferC: 25, value: 0, unit: 'mV' }], atMs: 0 }).finding.missing // => ['buffer-near-4']
 */
export function meterCheck({
  readings,
  atMs,
}: {
  readings: readonly BufferReading[];
  atMs: number;
}): MeterCheck {
  for (const { value } of readings)
    if (!Number.isFinite(value))
      throw new RangeError(`meterCheck: value requires a finite number, got ${value}`);
  if (new Set(readings.map((reading) => reading.unit)).size > 1)
    throw new RangeError('meterCheck: readings requires one unit, got mV and pH');
  const nearSeven = readings.find(({ buffer }) => buffer === '7.00' || buffer === '6.86');
  const nearFour = readings.find(({ buffer }) => buffer === '4.00' || buffer === '4.01');
  const buffers = readings.map((reading) => ({
    buffer: reading.buffer,
    truePh: bufferPh(reading),
    errorPh: reading.unit === 'pH' ? tidy(reading.value - bufferPh(reading)) : null,
  }));
  const electrodeState = nearSeven && nearFour ? electrodeOf(nearSeven, nearFour) : null;
  const worstErrorPh = Math.max(0, ...buffers.map(({ errorPh }) => Math.abs(errorPh ?? 0)));
  const checks: [number, Limit][] = electrodeState
    ? [
        [electrodeState.offsetMv, METER_LIMITS.offsetLow],
        [electrodeState.offsetMv, METER_LIMITS.offsetHigh],
        [electrodeState.slopePct, METER_LIMITS.slopeLow],
        [electrodeState.slopePct, METER_LIMITS.slopeHigh],
      ]
    : [];
  checks.push([worstErrorPh, METER_LIMITS.error]);
  const broken = checks.find(([value, limit]) =>
    limit.relation === '<=' ? value > limit.value : value < limit.value,
  );
  const missing = [...(nearSeven ? [] : ['buffer-near-7']), ...(nearFour ? [] : ['buffer-near-4'])];
  const [value, limit] =
    broken ?? (electrodeState ? [electrodeState.slopePct, METER_LIMITS.slopeLow] : [null, null]);
  return {
    finding: {
      rule: 'ph-meter-check',
      verdict: broken ? 'deviation' : missing.length > 0 ? 'no-reading' : 'within-limit',
      value,
      limit,
      missing: broken ? [] : missing,
    },
    offsetMv: electrodeState?.offsetMv ?? null,
    slopePct: electrodeState?.slopePct ?? null,
    isWorn: electrodeState !== null && electrodeState.slopePct < WORN_SLOPE_PCT,
    hasFailed: broken !== undefined,
    buffers,
    correction: nearSeven && nearFour ? correctionOf(nearSeven, nearFour) : null,
    nextDueMs: atMs + METER_CHECK_DUE_HOURS * 3_600_000,
  };
}

/**
 * A shown pH corrected by a meter's own error in two buffers. To be shown beside the reading; no verdict is given on it.
 *
 * Formula: straight line through both buffers. Units: pH. Valid: between and near the buffers.
 * Source: derived.
 * @throws RangeError where both buffers were shown alike.
 * @example correctedPh({ ph: 5, correction: { lowShownPh: 4, lowTruePh: 4, highShownPh: 6, highTruePh: 7 } }) // => 5.5
 */
export function correctedPh({ ph, correction }: { ph: number; correction: MeterCorrection }): number {
  const { lowShownPh, lowTruePh, highShownPh, highTruePh } = correction;
  if (!(highShownPh !== lowShownPh && Number.isFinite(ph)))
    throw new RangeError(`correctedPh: correction requires two different values, got ${lowShownPh} twice`);
  return lowTruePh + ((ph - lowShownPh) * (highTruePh - lowTruePh)) / (highShownPh - lowShownPh);
}

function electrodeOf(
  nearSeven: BufferReading,
  nearFour: BufferReading,
): { offsetMv: number; slopePct: number } {
  const spanPh = bufferPh(nearSeven) - bufferPh(nearFour);
  const idealMv = nernstMvPerPh((nearSeven.bufferC + nearFour.bufferC) / 2);
  if (nearSeven.unit === 'pH')
    return {
      offsetMv: tidy((bufferPh(nearSeven) - nearSeven.value) * idealMv),
      slopePct: tidy((100 * (nearSeven.value - nearFour.value)) / spanPh),
    };
  const slopeMv = (nearFour.value - nearSeven.value) / spanPh;
  return {
    offsetMv: tidy(nearSeven.value + slopeMv * (bufferPh(nearSeven) - 7)),
    slopePct: tidy((100 * slopeMv) / idealMv),
  };
}

function correctionOf(nearSeven: BufferReading, nearFour: BufferReading): MeterCorrection | null {
  if (nearSeven.unit === 'mV' || nearSeven.value === nearFour.value) return null;
  return {
    lowShownPh: nearFour.value,
    lowTruePh: bufferPh(nearFour),
    highShownPh: nearSeven.value,
    highTruePh: bufferPh(nearSeven),
  };
}

/** 7.12 - 7.02 is a tenth, and not a last bit more. */
function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
