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
