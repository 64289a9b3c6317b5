/** Room on a chamber's rails over time: who hangs from when to when, where there are more pieces than places, and what is free when. */

/** Pieces that take places from one instant until another. What lies ahead is a forecast. */
export type Stay = {
  readonly key: string;
  readonly pieces: number;
  readonly fromMs: number;
  readonly untilMs: number;
};

export type Span = { readonly fromMs: number; readonly untilMs: number; readonly pieces: number };

/** From each change to the next, how many hang; in order. */
export function occupancy(stays: readonly Stay[]): Span[] {
  const marks = [...new Set(stays.flatMap(({ fromMs, untilMs }) => [fromMs, untilMs]))].sort((a, b) => a - b);
  return marks.slice(1).map((untilMs, at) => {
    const fromMs = marks[at] ?? untilMs;
    return { fromMs, untilMs, pieces: piecesAt(stays, fromMs) };
  });
}

/** The most that hang together at any instant of a time. */
export function busiest(
  stays: readonly Stay[],
  { fromMs, untilMs }: { fromMs: number; untilMs: number },
): number {
  const within = stays.map((stay) => stay.fromMs).filter((atMs) => atMs > fromMs && atMs < untilMs);
  return Math.max(...[fromMs, ...within].map((atMs) => piecesAt(stays, atMs)));
}

/** The first time with more pieces than places; null where there is none. */
export function firstClash(
  stays: readonly Stay[],
  { places, nowMs }: { places: number; nowMs: number },
): Span | null {
  return occupancy(stays).find(({ untilMs, pieces }) => untilMs > nowMs && pieces > places) ?? null;
}

/** The first instant from which so many places stay free for so long; null where there never are so many. */
export function freeFrom(
  stays: readonly Stay[],
  wish: { places: number; pieces: number; fromMs: number; days: number },
): number | null {
  const { places, pieces, fromMs } = wish;
  if (pieces > places) return null;
  const forMs = wish.days * 24 * 3_600_000;
  const starts = [fromMs, ...stays.map(({ untilMs }) => untilMs).filter((atMs) => atMs > fromMs)];
  return (
    starts
      .sort((a, b) => a - b)
      .find((startMs) => busiest(stays, { fromMs: startMs, untilMs: startMs + forMs }) + pieces <= places) ??
    null
  );
}

function piecesAt(stays: readonly Stay[], atMs: number): number {
  return stays
    .filter(({ fromMs, untilMs }) => fromMs <= atMs && atMs < untilMs)
    .reduce((sum, { pieces }) => sum + pieces, 0);
}
