/** A coordinate as written in a path: two decimals at most, so that drawings stay small and snapshots stand still. */
export function xy(...parts: readonly number[]): string {
  return parts.map((part) => String(Math.round(part * 100) / 100 + 0)).join(' ');
}
