/**
 * The middle value; of an even number, halfway between the two in the middle.
 *
 * Units: those of the values.
 * Source: definition.
 * @throws RangeError of no values, or if one is not a finite number.
 * @example median([4, 1, 3, 9]) // => 3.5
 */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, two) => one - two);
  const below = sorted[Math.floor((sorted.length - 1) / 2)];
  const above = sorted[Math.floor(sorted.length / 2)];
  if (below === undefined || above === undefined || !sorted.every(Number.isFinite))
    throw new RangeError(`median: values requires finite numbers, at least one, got ${values.join(', ')}`);
  return (below + above) / 2;
}

/**
 * Values below which a part of all lies, on straight lines between them; half of one lies above the last and below the first.
 *
 * Units: those of the values; level 0 to 1.
 * Source: definition, plotting positions (i - 0.5) / n.
 * @example quantiles([1, 2, 3, 4])(0.5) // => 2.5
 */
export function quantiles(values: readonly number[]): (level: number) => number {
  const sorted = values.toSorted((a, b) => a - b);
  return (level) => {
    const place = Math.min(sorted.length - 1, Math.max(0, level * sorted.length - 0.5));
    const [below = 0, above = 0] = [sorted[Math.floor(place)], sorted[Math.ceil(place)]];
    return below === above ? below : below + (place % 1) * (above - below);
  };
}
