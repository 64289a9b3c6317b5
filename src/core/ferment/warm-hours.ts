/** A clock that runs with the warmth of the room: how many hours at 24 °C the culture has had. */
import type { RoomReading } from './degree-hours.ts';

const MS_PER_HOUR = 3_600_000;
/** Square-root growth law with its minimum at 3 °C (from memory, medium confidence: *L. sakei*). */
const NO_GROWTH_C = 3;
const REFERENCE_C = 24;

/**
 * Hours at 24 °C that a straight ramp of room temperature is worth to a culture.
 *
 * Formula: integral of (max(0, T - 3) / 21)^2 over the ramp, exact.
 * Units: °C, h. Valid: up to about 32 °C, where cultures are near their best.
 * Source: Ratkowsky's square root model (from memory, medium confidence), minimum 3 °C, referred to 24 °C.
 * @throws RangeError unless the temperatures are finite and durationHours >= 0.
 * @example warmHoursOfRamp({ fromC: 24, toC: 24, durationHours: 5 }) // => 5
 */
export function warmHoursOfRamp({
  fromC,
  toC,
  durationHours,
}: {
  fromC: number;
  toC: number;
  durationHours: number;
}): number {
  if (!Number.isFinite(fromC) || !Number.isFinite(toC) || !(durationHours >= 0))
    throw new RangeError(`warmHoursOfRamp: requires finite numbers, got ${fromC}, ${toC}, ${durationHours}`);
  const lowC = Math.min(fromC, toC) - NO_GROWTH_C;
  const highC = Math.max(fromC, toC) - NO_GROWTH_C;
  if (highC <= 0) return 0;
  const grows = lowC >= 0 ? 1 : highC / (highC - lowC);
  const coolC = Math.max(0, lowC);
  const meanSquare = (coolC ** 2 + coolC * highC + highC ** 2) / 3;
  return (grows * durationHours * meanSquare) / (REFERENCE_C - NO_GROWTH_C) ** 2;
}

export type WarmClock = {
  /** Hours at 24 °C from stuffing to an instant. */
  readonly warmHoursAt: (atMs: number) => number;
  /** The temperature that is taken for the time after the last reading. */
  readonly aheadC: number;
};

/**
 * The warm clock of a ferment: straight lines between room readings, the first one taken back to stuffing, and one temperature ahead.
 * Of the room, not of the sausage, which lags behind it by some hours at the start.
 *
 * Formula: sum of warmHoursOfRamp. Units: epoch ms; h; °C.
 * Valid: readings in order of time; null without one.
 * Source: as warmHoursOfRamp; that the room stays at its last reading is an assumption, or `aheadC` is what the maker plans.
 * @throws RangeError unless the numbers are finite.
 * @example warmClock({ roomReadings: [{ atMs: 0, roomC: 24, source: 'hand' }], stuffedAtMs: 0 })?.warmHoursAt(7200000) // => 2
 */
export function warmClock({
  roomReadings,
  stuffedAtMs,
  aheadC,
}: {
  roomReadings: readonly RoomReading[];
  stuffedAtMs: number;
  aheadC?: number | undefined;
}): WarmClock | null {
  const believed = roomReadings.filter((reading) => reading.doubted !== true && reading.atMs >= stuffedAtMs);
  const [first, last] = [believed[0], believed.at(-1)];
  if (first === undefined || last === undefined) return null;
  const afterC = aheadC ?? last.roomC;
  const knots = [{ atMs: stuffedAtMs, roomC: first.roomC }, ...believed];
  const sums = [0];
  for (const [index, knot] of knots.slice(1).entries()) {
    const before = knots[index] ?? knot;
    const durationHours = (knot.atMs - before.atMs) / MS_PER_HOUR;
    const worth = warmHoursOfRamp({ fromC: before.roomC, toC: knot.roomC, durationHours });
    sums.push((sums[index] ?? 0) + worth);
  }
  const warmHoursAt = (atMs: number): number => {
    const at = Math.max(
      0,
      knots.findLastIndex((knot) => knot.atMs <= atMs),
    );
    const [before, after] = [knots[at] ?? knots[0], knots[at + 1]];
    if (before === undefined) return 0;
    const durationHours = Math.max(0, (atMs - before.atMs) / MS_PER_HOUR);
    const spanMs = after ? after.atMs - before.atMs : 0;
    const toC = after
      ? before.roomC + ((after.roomC - before.roomC) * (atMs - before.atMs)) / spanMs
      : afterC;
    const fromC = after ? before.roomC : afterC;
    return (sums[at] ?? 0) + (durationHours > 0 ? warmHoursOfRamp({ fromC, toC, durationHours }) : 0);
  };
  return { warmHoursAt, aheadC: afterC };
}
