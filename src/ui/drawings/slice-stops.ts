export type SliceStop = { radiusShare: number; waterShare: number };

/**
 * A radial profile as stops from the heart (radius share 0) to the rim (1). `waterFromRim` runs from the rim to the
 * heart in equal steps of radius, each between 0 (driest) and 1 (wettest); one value alone fills the slice.
 */
export function sliceStops(waterFromRim: readonly number[]): SliceStop[] {
  const steps = Math.max(1, waterFromRim.length - 1);
  return waterFromRim.map((waterShare, at) => ({ radiusShare: 1 - at / steps, waterShare })).reverse();
}
