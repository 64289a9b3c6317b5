/** Reasons to look twice at a pH reading before believing it. Codes with their numbers; none of them is a verdict. */

export type PhDoubt =
  | {
      readonly code: 'too-fast';
      readonly dropPh: number;
      readonly durationHours: number;
      readonly likelyAtMostPh: number;
    }
  | { readonly code: 'jumped-up'; readonly risePh: number; readonly durationHours: number }
  | { readonly code: 'rising-old-sample'; readonly risePh: number; readonly sampleAgeHours: number }
  | { readonly code: 'may-be-fat'; readonly ph: number }
  | { readonly code: 'off-scale'; readonly ph: number }
  | { readonly code: 'sample-thinner'; readonly sampleMm: number; readonly productMm: number }
  | { readonly code: 'calibration-none' }
  | { readonly code: 'calibration-failed' }
  | { readonly code: 'calibration-old'; readonly ageHours: number };

export type PhDoubtInput = {
  readonly reading: { readonly atMs: number; readonly ph: number; readonly method: 'meter' | 'strip' };
  /** The last reading before it that was not doubted. */
  readonly previous?: { readonly atMs: number; readonly ph: number } | undefined;
  /** The warmest the room was between the two. */
  readonly roomC?: number | undefined;
  readonly lastCheck?: { readonly atMs: number; readonly hasFailed: boolean } | undefined;
  readonly sampleMm?: number | undefined;
  readonly productMm?: number | undefined;
  /** When the sample was made: later than stuffing it is not of this age. */
  readonly sampleMadeAtMs?: number | undefined;
  readonly stripRange?: { readonly lowPh: number; readonly highPh: number } | undefined;
};

const MS_PER_HOUR = 3_600_000;
/** The fastest culture read: 0.12 pH an hour (Acton & Keller 1974, pH 5.9 to 4.6 in 19 to 21 h), taken at 32 °C. */
const FASTEST_PH_PER_HOUR = 0.12;
const FASTEST_AT_C = 32;
/** Square-root growth law with its minimum at 3 °C (from memory, medium confidence). */
const NO_GROWTH_C = 3;
/** What two good readings may differ by without any change: common practice. */
const READING_NOISE_PH = 0.1;
const WARMEST_CULTURE_C = 45;
/** The rest is common practice. */
const JUMP_PH = 0.3;
const OLD_SAMPLE_HOURS = 48;
const FAT_PH = { low: 6.3, high: 6.9 } as const;
const SAUSAGE_PH = { low: 4, high: 7 } as const;
const SAMPLE_SHARE = 0.75;
const CHECK_AGE_HOURS = 24;

/**
 * The most that pH is likely to fall in a time at a temperature, with the noise of two readings.
 *
 * Formula: 0.12 x ((T - 3) / 29)^2 x hours + 0.1. Units: °C, h, pH. Valid: 3 to 45 °C; outside the nearer end is taken.
 * Source: the rate: Acton & Keller 1974 (read, abstract; authors and year from memory); its temperature: Ratkowsky's square root
 * with 3 °C (from memory, medium confidence), pinned at 32 °C, which no source says. A reason to ask, never a limit.
 * @throws RangeError unless roomC is finite and durationHours >= 0.
 * @example likelyDropAtMostPh({ roomC: 32, durationHours: 10 }) // => 1.3
 */
export function likelyDropAtMostPh({
  roomC,
  durationHours,
}: {
  roomC: number;
  durationHours: number;
}): number {
  if (!Number.isFinite(roomC))
    throw new RangeError(`likelyDropAtMostPh: roomC requires a finite number, got ${roomC}`);
  if (!(durationHours >= 0))
    throw new RangeError(`likelyDropAtMostPh: durationHours requires a number >= 0, got ${durationHours}`);
  const growthC = Math.min(WARMEST_CULTURE_C, Math.max(NO_GROWTH_C, roomC)) - NO_GROWTH_C;
  const speed = (growthC / (FASTEST_AT_C - NO_GROWTH_C)) ** 2;
  return FASTEST_PH_PER_HOUR * speed * durationHours + READING_NOISE_PH;
}

/**
 * What speaks against a pH reading: implausible speed or step, a probe in fat, an old sample, a sample thinner than the product, the
 * end of a scale, and a meter without a fresh check. What is not given is not asked about, except the meter's check.
 *
 * Formula: likelyDropAtMostPh; fat 6.3 to 6.9 and 0.3 above the last; a rise of 0.3, or of 0.1 on a sample over 48 h old; sample under
 * 0.75 of the product's diameter; outside 4 to 7, or at either end of a strip; check over 24 h old.
 * Units: pH, mm, °C, h, epoch ms. Valid: `previous` before `reading`; without `roomC` 45 °C is taken, the warmest a culture bears.
 * Source: common practice, except likelyDropAtMostPh; fat reads 6.4 to 6.7 (makers' reports, read).
 * @throws RangeError unless the pH is a finite number.
 * @example phDoubts({ reading: { atMs: 0, ph: 5.1, method: 'meter' } }) // => [{ code: 'calibration-none' }]
 */
export function phDoubts(input: PhDoubtInput): PhDoubt[] {
  const { reading, previous, sampleMm, productMm, sampleMadeAtMs } = input;
  const { ph, atMs } = reading;
  if (!Number.isFinite(ph)) throw new RangeError(`phDoubts: ph requires a finite number, got ${ph}`);
  const doubts: PhDoubt[] = [];
  const risePh = previous ? ph - previous.ph : 0;
  const isLikeFat = ph >= FAT_PH.low && ph <= FAT_PH.high;
  if (previous) {
    const durationHours = Math.max(0, (atMs - previous.atMs) / MS_PER_HOUR);
    const likelyAtMostPh = likelyDropAtMostPh({ roomC: input.roomC ?? WARMEST_CULTURE_C, durationHours });
    if (-risePh > likelyAtMostPh)
      doubts.push({ code: 'too-fast', dropPh: -risePh, durationHours, likelyAtMostPh });
    if (risePh > JUMP_PH && !isLikeFat) doubts.push({ code: 'jumped-up', risePh, durationHours });
    if (risePh > JUMP_PH && isLikeFat) doubts.push({ code: 'may-be-fat', ph });
    const sampleAgeHours = sampleMadeAtMs === undefined ? 0 : (atMs - sampleMadeAtMs) / MS_PER_HOUR;
    if (risePh > READING_NOISE_PH && sampleAgeHours > OLD_SAMPLE_HOURS)
      doubts.push({ code: 'rising-old-sample', risePh, sampleAgeHours });
  } else if (isLikeFat) doubts.push({ code: 'may-be-fat', ph });
  if (isOffScale(input)) doubts.push({ code: 'off-scale', ph });
  if (sampleMm !== undefined && productMm !== undefined && sampleMm < SAMPLE_SHARE * productMm)
    doubts.push({ code: 'sample-thinner', sampleMm, productMm });
  return [...doubts, ...calibrationDoubts(input)];
}

function isOffScale({ reading, stripRange }: PhDoubtInput): boolean {
  const { ph, method } = reading;
  if (ph < SAUSAGE_PH.low || ph > SAUSAGE_PH.high) return true;
  return (
    method === 'strip' && stripRange !== undefined && (ph <= stripRange.lowPh || ph >= stripRange.highPh)
  );
}

function calibrationDoubts({ reading, lastCheck }: PhDoubtInput): PhDoubt[] {
  if (reading.method === 'strip') return [];
  if (lastCheck === undefined) return [{ code: 'calibration-none' }];
  if (lastCheck.hasFailed) return [{ code: 'calibration-failed' }];
  const ageHours = (reading.atMs - lastCheck.atMs) / MS_PER_HOUR;
  return ageHours > CHECK_AGE_HOURS ? [{ code: 'calibration-old', ageHours }] : [];
}
