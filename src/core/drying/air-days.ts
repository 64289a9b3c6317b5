/** Air as the radial model takes it: by days of drying, a day at rest being none. */
import type { AirReading, DryingRest } from './clock.ts';
import type { AirStep } from './radial.ts';

const DAY_MS = 86_400_000;

/**
 * Days that a piece spent in the air, from stuffing to an instant, rests left out; an open rest lasts until then.
 *
 * Units: epoch ms; result days, below 0 before stuffing.
 * Source: time minus rests (derived).
 * @example driedDays({ startMs: 0, rests: [{ fromMs: 0, toMs: 86400000 }] }, 259200000) // => 2
 */
export function driedDays(
  { startMs, rests }: { startMs: number; rests: readonly DryingRest[] },
  toMs: number,
): number {
  const restMs = rests.reduce(
    (sum, rest) => sum + Math.max(0, Math.min(toMs, rest.toMs ?? toMs) - rest.fromMs),
    0,
  );
  return (toMs - startMs - restMs) / DAY_MS;
}

/**
 * The mean air of each day from stuffing on, a new step where the piece was hung, then the air planned from now on.
 *
 * Units: epoch ms, °C, %.
 * Source: means by time (derived); the air before the first reading is the air planned.
 * @throws RangeError if the piece was stuffed after now.
 * @example airByDay({ startMs: 0, nowMs: 86400000, hungMs: null, readings: [{ fromMs: 0, chamberC: 20, humidityPct: 90 }], rests: [], planned: { chamberC: 13, humidityPct: 80 } }) // => [{ fromDay: 0, chamberC: 20, humidityPct: 90 }, { fromDay: 1, chamberC: 13, humidityPct: 80 }]
 */
export function airByDay({
  startMs,
  nowMs,
  hungMs,
  readings,
  rests,
  planned,
}: {
  startMs: number;
  nowMs: number;
  hungMs: number | null;
  readings: readonly AirReading[];
  rests: readonly DryingRest[];
  planned: { readonly chamberC: number; readonly humidityPct: number };
}): AirStep[] {
  if (!(startMs <= nowMs))
    throw new RangeError(`airByDay: startMs requires a time up to now, got ${startMs}`);
  const sorted = readings.toSorted((a, b) => a.fromMs - b.fromMs);
  const days = Array.from(
    { length: Math.ceil((nowMs - startMs) / DAY_MS) },
    (_, day) => startMs + day * DAY_MS,
  );
  const starts = new Set([
    ...days,
    ...(hungMs !== null && hungMs > startMs && hungMs < nowMs ? [hungMs] : []),
  ]);
  const edges = rests.flatMap(({ fromMs, toMs }) => (toMs === null ? [fromMs] : [fromMs, toMs]));
  const marks = [...starts, ...sorted.map(({ fromMs }) => fromMs), ...edges, nowMs]
    .filter((ms) => ms >= startMs && ms <= nowMs)
    .sort((a, b) => a - b);
  const steps: { fromMs: number; spanMs: number; chamberCMs: number; humidityPctMs: number }[] = [];
  let next = 0;
  for (const [at, fromMs] of marks.entries()) {
    while ((sorted[next]?.fromMs ?? Infinity) <= fromMs) next++;
    if (starts.has(fromMs)) {
      starts.delete(fromMs);
      steps.push({ fromMs, spanMs: 0, chamberCMs: 0, humidityPctMs: 0 });
    }
    const resting = rests.some((rest) => rest.fromMs <= fromMs && fromMs < (rest.toMs ?? Infinity));
    const step = steps.at(-1);
    if (step === undefined || resting) continue;
    const { chamberC, humidityPct } = sorted[next - 1] ?? planned;
    const spanMs = (marks[at + 1] ?? nowMs) - fromMs;
    step.spanMs += spanMs;
    step.chamberCMs += spanMs * chamberC;
    step.humidityPctMs += spanMs * humidityPct;
  }
  const dried = (ms: number) => driedDays({ startMs, rests }, ms);
  return [
    ...steps
      .filter(({ spanMs }) => spanMs > 0)
      .map(({ fromMs, spanMs, chamberCMs, humidityPctMs }) => ({
        fromDay: dried(fromMs),
        chamberC: chamberCMs / spanMs,
        humidityPct: humidityPctMs / spanMs,
      })),
    { fromDay: dried(nowMs), ...planned },
  ];
}
