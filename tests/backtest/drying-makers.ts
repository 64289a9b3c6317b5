import { mixFromFat } from '#core/drying/equilibrium.ts';
import { type AirStep, dryRadially } from '#core/drying/radial.ts';
import type { MixFractions } from '#core/drying/water-activity.ts';
import { ROUND_DAYS, WEEKLY_DAYS } from '#record/round-rhythm.ts';

/**
 * Makers who do not exist, with chambers that never are what they show. All of it is invented; spreads are set so that
 * the drying times come out as wide as those of 13 records of known diameter (sd of the logarithm about 0.45), before
 * anything that is tested here was tuned. What is `told` is all that a forecast may see.
 *
 * Two kinds. `log`: a logger that was checked in salt air hangs beside the pieces, the mix is known to a point of fat,
 * and every week is weighed. `dial`: the dial is believed, it is off by 4 points, the fat is guessed within 3, and
 * weighings come when they come. How near any method could come after three weighings of either: `drying-ideal.ts`. And one kind
 * to be warned: `hard` is a `dial` that is 15 to 25 points off, with a fan on the pieces.
 */
export type Care = 'log' | 'dial' | 'hard';
/** When the pieces are weighed: as that maker is used to, or as the app asks. */
export type Rhythm = 'own' | 'asked';

export type SimulatedPiece = {
  readonly greenG: number;
  readonly toldDiameterMm: number;
  readonly weighings: readonly { readonly day: number; readonly weightG: number }[];
  readonly targetLossPct: number;
  /** Day on which the true loss passed the target; `null`: not within a year. */
  readonly reachedDay: number | null;
  /** Highest difference between mean and skin water activity from hanging until the target, or for 100 days. */
  readonly rimAw: number;
};

export type SimulatedBatch = {
  readonly toldMix: MixFractions;
  /** What the dial is set to, from day to day; known beforehand. */
  readonly programme: readonly AirStep[];
  /** The logger's daily means, to be looked at up to the day of a forecast only. `null`: none. */
  readonly log: readonly AirStep[] | null;
  readonly fermentDays: number;
  readonly pieces: readonly SimulatedPiece[];
};

/** One maker's batches, oldest first, all from one chamber. */
export type SimulatedMaker = { readonly seed: number; readonly batches: readonly SimulatedBatch[] };

export type Dice = {
  uniform(low: number, high: number): number;
  normal(mean: number, sd: number): number;
  pick<T>(choices: readonly T[]): T;
};

const YEAR_DAYS = 365;

/** The same numbers for the same seed, on any machine (mulberry32 with Box and Muller's normal numbers). */
export function dice(seed: number): Dice {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform: (low, high) => low + (high - low) * next(),
    normal: (mean, sd) => mean + sd * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    pick: (choices) => {
      const choice = choices[Math.floor(next() * choices.length)];
      if (choice === undefined) throw new RangeError('dice.pick: choices requires at least one, got none');
      return choice;
    },
  };
}

/** What a chamber and its owner bring to every batch. */
function habits(roll: Dice, care: Care) {
  const own = {
    care,
    airMPerS: (care === 'hard' ? 0.4 : 0.15) * Math.exp(roll.normal(0, 0.5)),
    humidityBiasPct: care === 'hard' ? -roll.uniform(15, 25) : roll.normal(0, care === 'log' ? 1.5 : 4),
    chamberC: roll.uniform(11, 15),
    temperatureBiasC: roll.normal(0, care === 'log' ? 0.3 : 0.7),
    diffusivityFactor: Math.exp(roll.normal(0, 0.65)),
    drynessPower: care === 'log' ? roll.uniform(0.5, 1.5) : roll.uniform(0, 2),
    scaleStepG: roll.pick([1, 1, 1, 1, 5]),
    rhythm: roll.pick(['weekly', 'weekly', 'twice-a-week', 'close-at-first'] as const),
  };
  return care === 'log' ? { ...own, rhythm: 'weekly' as const } : own;
}

function shownHumidity(roll: Dice): { fromDay: number; humidityPct: number }[] {
  const start = roll.uniform(80, 86);
  const plan = roll.pick(['steady', 'steady', 'let-down', 'let-down', 'corrected'] as const);
  if (plan === 'steady') return [{ fromDay: 0, humidityPct: roll.uniform(74, 82) }];
  if (plan === 'corrected')
    return [
      { fromDay: 0, humidityPct: start },
      { fromDay: roll.uniform(6, 20), humidityPct: Math.min(92, start + roll.normal(0, 5)) },
    ];
  return [
    { fromDay: 0, humidityPct: start },
    { fromDay: roll.uniform(6, 10), humidityPct: start - roll.uniform(2, 5) },
    { fromDay: roll.uniform(14, 24), humidityPct: start - roll.uniform(5, 9) },
  ];
}

function weighingDays(roll: Dice, { rhythm, care }: ReturnType<typeof habits>): number[] {
  const days: number[] = [];
  let day = care === 'log' ? roll.uniform(6, 8) : rhythm === 'close-at-first' ? 1 : roll.uniform(2, 8);
  while (day < YEAR_DAYS) {
    if (roll.uniform(0, 1) > 0.1) days.push(day);
    const gap = rhythm === 'weekly' ? 7 : rhythm === 'twice-a-week' ? 3.5 : day < 7 ? 2 : 7;
    day += Math.max(1, gap + roll.normal(0, 0.15 * gap));
  }
  return days;
}

/** As the app asks: on hanging, half a day later, daily in the first week, then weekly; one in ten is missed. */
function askedDays(roll: Dice, fermentDays: number): number[] {
  const [hungDay = 0, ...early] = ROUND_DAYS;
  const weekly = Array.from({ length: 7 }, (_, week) => (early.at(-1) ?? 0) + WEEKLY_DAYS * (week + 1));
  const asked = [...early, ...weekly];
  return [
    fermentDays + hungDay,
    ...asked.filter(() => roll.uniform(0, 1) > 0.1).map((day) => fermentDays + day),
  ];
}

function brewBatch(roll: Dice, own: ReturnType<typeof habits>, rhythm: Rhythm): SimulatedBatch {
  const fatFraction = roll.uniform(0.15, 0.33);
  const saltFraction = roll.uniform(0.025, 0.031);
  const sugarFraction = roll.uniform(0.002, 0.006);
  const told = { saltFraction, sugarFraction };
  const toldMix = mixFromFat({ fatFraction, ...told });
  const fatSd = own.care === 'log' ? 0.01 : 0.03;
  const mix = mixFromFat({ fatFraction: Math.max(0.05, fatFraction + roll.normal(0, fatSd)), ...told });
  const fermentDays = roll.pick([1, 2, 3]);
  const inChamber = shownHumidity(roll).map((step) => ({ ...step, fromDay: step.fromDay + fermentDays }));
  const programme = [
    { fromDay: 0, chamberC: 22, humidityPct: 92 },
    ...inChamber.map((step) => ({ ...step, chamberC: own.chamberC })),
  ].map((step, i) => (i === 1 ? { ...step, fromDay: fermentDays } : step));
  let wander = roll.normal(0, 3);
  const air: AirStep[] = [];
  for (let day = 0; day < YEAR_DAYS; day++) {
    const shown = programme.findLast(({ fromDay }) => fromDay <= day);
    wander = 0.7 * wander + roll.normal(0, 3 * Math.sqrt(1 - 0.49));
    const truePct = (shown?.humidityPct ?? 92) + (day < fermentDays ? 0 : own.humidityBiasPct) + wander;
    air.push({
      fromDay: day,
      chamberC: (shown?.chamberC ?? 22) + own.temperatureBiasC + roll.normal(0, 0.5),
      humidityPct: Math.min(98, Math.max(45, truePct)),
    });
  }
  const nominalMm = roll.pick([38, 45, 50, 55, 60, 65, 75, 85]);
  const lengthM = roll.uniform(0.2, 0.4);
  const batchFactor = Math.exp(roll.normal(0, 0.3));
  const targetLossPct = roll.pick([30, 32, 33, 35, 35, 35, 38, 40]);
  const days = rhythm === 'asked' ? askedDays(roll, fermentDays) : weighingDays(roll, own);
  const pieces = Array.from({ length: roll.pick([2, 3, 4]) }, () =>
    hangPiece(roll, {
      mix,
      air,
      days,
      targetLossPct,
      fermentDays,
      toldDiameterMm: nominalMm,
      lengthM: lengthM * roll.uniform(0.9, 1.1),
      diameterMm: nominalMm * (1 + roll.normal(0, 0.035)),
      airMPerS: own.airMPerS * Math.exp(roll.normal(0, 0.2)),
      diffusivity13M2PerS:
        4e-11 * 2 ** own.drynessPower * own.diffusivityFactor * batchFactor * Math.exp(roll.normal(0, 0.08)),
      drynessPower: own.drynessPower,
      scaleStepG: own.scaleStepG,
    }),
  );
  const logged = air.map(({ fromDay, chamberC, humidityPct }) => ({
    fromDay,
    chamberC: chamberC - own.temperatureBiasC,
    humidityPct: Math.min(100, humidityPct - (fromDay < fermentDays ? 0 : own.humidityBiasPct)),
  }));
  return { toldMix, programme, log: own.care === 'log' ? logged : null, fermentDays, pieces };
}

function hangPiece(
  roll: Dice,
  piece: {
    mix: MixFractions;
    air: readonly AirStep[];
    days: readonly number[];
    targetLossPct: number;
    fermentDays: number;
    toldDiameterMm: number;
    diameterMm: number;
    lengthM: number;
    airMPerS: number;
    diffusivity13M2PerS: number;
    drynessPower: number;
    scaleStepG: number;
  },
): SimulatedPiece {
  const { mix, air, targetLossPct, diameterMm, airMPerS, diffusivity13M2PerS, drynessPower, scaleStepG } =
    piece;
  const trueGreenG = 1050e3 * piece.lengthM * Math.PI * (diameterMm / 2000) ** 2;
  const onScale = (massG: number) => scaleStepG * Math.round(massG / scaleStepG);
  const dry = (dayCount: number) =>
    dryRadially({
      diameterMm,
      mix,
      air,
      airMPerS: Math.max(0.02, airMPerS),
      diffusivity13M2PerS,
      drynessPower,
      days: Array.from({ length: dayCount + 1 }, (_, day) => day),
      rings: 16,
      stepHours: 6,
    });
  const season = dry(100);
  const truth = (season.at(-1)?.lossPct ?? 0) > targetLossPct ? season : dry(YEAR_DAYS);
  const lossOn = (day: number) => {
    const before = truth[Math.floor(day)]?.lossPct ?? 0;
    const after = truth[Math.ceil(day)]?.lossPct ?? before;
    return before + (after - before) * (day - Math.floor(day));
  };
  const greenG = onScale(trueGreenG);
  const weighings = piece.days
    .filter((day) => day < truth.length - 1)
    .map((day) => {
      // A wet skin, a drip, a mould that was or was not brushed off.
      const smudgeG = roll.normal(0, 0.0025 * trueGreenG);
      return { day, weightG: onScale(trueGreenG * (1 - lossOn(day) / 100) + smudgeG) };
    });
  const after = truth.findIndex(({ lossPct }) => lossPct >= targetLossPct);
  const last = truth[after];
  const before = truth[after - 1];
  const reachedDay =
    last === undefined || before === undefined
      ? null
      : before.day + (targetLossPct - before.lossPct) / (last.lossPct - before.lossPct);
  const lastDay = Math.min(100, Math.ceil(reachedDay ?? 100));
  const hanging = truth.filter(({ day }) => day > piece.fermentDays && day <= lastDay);
  const rimAw = Math.max(...hanging.map(({ meanAw, skinAw }) => meanAw - skinAw));
  return { greenG, toldDiameterMm: piece.toldDiameterMm, weighings, targetLossPct, reachedDay, rimAw };
}

/** A maker with this many batches behind one another in one chamber. */
export function simulateMaker({
  seed,
  care,
  batches,
  rhythm = 'own',
}: {
  seed: number;
  care: Care;
  batches: number;
  rhythm?: Rhythm;
}): SimulatedMaker {
  const roll = dice(seed);
  const own = habits(roll, care);
  return { seed, batches: Array.from({ length: batches }, () => brewBatch(roll, own, rhythm)) };
}
