/**
 * Where the ends stand on a bar that is as long as it must be: up to the limit, or past it where more is used.
 * All as shares of the bar's length.
 */
export function barParts({
  usedShare,
  projectedShare = usedShare,
}: {
  usedShare: number;
  projectedShare?: number;
}) {
  const longest = Math.max(1, usedShare * 1.05, projectedShare * 1.05);
  return { used: usedShare / longest, projected: projectedShare / longest, limit: 1 / longest };
}
