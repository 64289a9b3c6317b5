/**
 * Invented ferments to hold the forecast against: growth, acid and buffering step by step, with nothing of the forecast's own curve
 * in it. Every number of a batch is drawn from a seed; none of it is data.
 */
import type { RoomReading } from '#core/ferment/degree-hours.ts';
import type { PhReading } from '#core/ferment/ph-reading.ts';

const HOUR_MS = 3_600_000;
const STEP_HOURS = 0.05;
export const HORIZON_HOURS = 144;

export type SimulatedFerment = {
  readonly seed: number;
  readonly culture: 'slow' | 'medium' | 'fast';
  readonly dextrosePct: number;
  readonly roomReadings: readonly RoomReading[];
  readonly phReadings: readonly PhReading[];
  /** When the true pH first reaches the value; null: not within the horizon. */
  readonly trueAtMs: (ph: number) => number | null;
};

export type Dice = { readonly uniform: (low: number, high: number) => number; readonly normal: () => number };

/** A small generator of even numbers (mulberry32), so that a seed gives the same ferment on any machine. */
export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform: (low, high) => low + (high - low) * next(),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}

/** Log10 of cells per g at stuffing, and growth per hour at 24 °C: invented, in the order of what starters do. */
const CULTURES = {
  slow: { logStart: 5.6, growthPerHour: 0.23 },
  medium: { logStart: 6.4, growthPerHour: 0.28 },
  fast: { logStart: 7.0, growthPerHour: 0.36 },
} as const;

function roomOf(dice: Dice): (hours: number) => number {
  const setC = dice.uniform(19, 29);
  const swingC = dice.uniform(0.2, 1.5);
  const periodHours = dice.uniform(1, 5);
  const stepAtHours = dice.uniform(12, 60);
  const stepC = dice.uniform(0, 1) < 0.3 ? dice.uniform(-4, 3) : 0;
  return (hours) =>
    setC + (hours > stepAtHours ? stepC : 0) + swingC * Math.sin((2 * Math.PI * hours) / periodHours);
}

/** The pH at which lactate and buffering balance: buffering x (start - pH) = lactate x its dissociated share. */
function phOf(startPh: number, lactateMmol: number, bufferMmolPerPh: number): number {
  let [low, high] = [2, startPh];
  for (let turn = 0; turn < 40; turn += 1) {
    const ph = (low + high) / 2;
    const bound = bufferMmolPerPh * (startPh - ph);
    if (bound > lactateMmol / (1 + 10 ** (3.86 - ph))) low = ph;
    else high = ph;
  }
  return (low + high) / 2;
}

/** One invented ferment: true course, and what a maker would have read of it. */
export function simulateFerment(seed: number): SimulatedFerment {
  const dice = diceOf(seed);
  const cultures = ['slow', 'medium', 'fast'] as const;
  const culture = cultures[Math.floor(dice.uniform(0, 3))] ?? 'medium';
  const { logStart, growthPerHour } = CULTURES[culture];
  const dextrosePct = Math.round(dice.uniform(0.2, 0.8) * 20) / 20;
  const startPh = 5.75 + 0.1 * dice.normal();
  const bufferMmolPerPh = Math.max(35, 60 + 10 * dice.normal());
  const conversion = Math.min(1, 0.9 + 0.06 * dice.normal());
  const noGrowthC = dice.uniform(2, 6);
  const growth = growthPerHour * Math.exp(0.15 * dice.normal());
  const acidOfGrowth = 22 * Math.exp(0.25 * dice.normal());
  const acidPerHour = 2.2 * Math.exp(0.3 * dice.normal());
  const stopPh = dice.uniform(4.1, 4.5);
  const room = roomOf(dice);
  const warmUpHours = dice.uniform(1, 4);
  let readiness = Math.exp(-dice.uniform(0.3, 1.5));
  let cells = 10 ** (logStart + 0.3 * dice.normal() - 8.7);
  let sugarMmol = (dextrosePct + dice.uniform(0, 0.08)) * (10_000 / 180.16);
  let lactateMmol = 0;
  let coreC = dice.uniform(2, 10);
  const course: number[] = [];
  for (let step = 0; step * STEP_HOURS <= HORIZON_HOURS; step += 1) {
    const ph = phOf(startPh, lactateMmol, bufferMmolPerPh);
    course.push(ph);
    coreC += ((room(step * STEP_HOURS) - coreC) * STEP_HOURS) / warmUpHours;
    const warmth = (Math.max(0, coreC - noGrowthC) / (24 - noGrowthC)) ** 2;
    const acidBrake = Math.min(1, Math.max(0, (ph - stopPh) / (5.6 - stopPh)));
    const food = sugarMmol / (sugarMmol + 1);
    const growing = growth * warmth * food * acidBrake * (readiness / (1 + readiness)) * cells * (1 - cells);
    const acid = (acidOfGrowth * growing + acidPerHour * warmth * food * acidBrake * cells) * STEP_HOURS;
    readiness *= Math.exp(growth * warmth * STEP_HOURS);
    cells += growing * STEP_HOURS;
    const eaten = Math.min(sugarMmol, acid / (2 * conversion));
    sugarMmol -= eaten;
    lactateMmol += eaten * 2 * conversion;
  }
  const truePh = (hours: number): number => course[Math.round(hours / STEP_HOURS)] ?? Number.NaN;
  const meterBias = 0.025 * dice.normal();
  const phReadings: PhReading[] = [];
  const roomReadings: RoomReading[] = [];
  for (let hours = 0; hours <= 96; hours += hours === 0 ? dice.uniform(11, 18) : dice.uniform(4, 9))
    phReadings.push({
      atMs: Math.round(hours * HOUR_MS),
      ph: Math.round((truePh(hours) + meterBias + 0.035 * dice.normal()) * 100) / 100,
      method: 'meter',
      doubted: false,
    });
  for (let hours = 0; hours <= 96; hours += dice.uniform(2, 6))
    roomReadings.push({
      atMs: Math.round(hours * HOUR_MS),
      roomC: Math.round((room(hours) + 0.2 * dice.normal()) * 10) / 10,
      source: 'hand',
    });
  return {
    seed,
    culture,
    dextrosePct,
    roomReadings,
    phReadings,
    trueAtMs: (ph) => {
      const step = course.findIndex((value) => value <= ph);
      return step < 0 ? null : step * STEP_HOURS * HOUR_MS;
    },
  };
}
