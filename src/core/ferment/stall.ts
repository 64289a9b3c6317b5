/** A pH that does not fall: what the batch's own facts say, and what is left to ask. Common practice throughout. */

/** What is known of the batch; leave out what was not logged, and it is asked. */
export type StallFacts = {
  readonly elapsedHours: number;
  /** Mean room temperature so far. */
  readonly roomC: number;
  readonly startPh?: number | undefined;
  readonly lastPh?: number | undefined;
  readonly lastMethod?: 'meter' | 'strip' | undefined;
  readonly meterCheckedOk?: boolean | undefined;
  /** False: the formula has none. */
  readonly hasCulture?: boolean | undefined;
  readonly cultureGPerKg?: number | undefined;
  /** By the pack: the dose per kg. */
  readonly cultureDoseGPerKg?: number | undefined;
  readonly cultureOpenedDays?: number | undefined;
  readonly dextrosePct?: number | undefined;
  readonly saltPct?: number | undefined;
};

export type StallAsk =
  | 'start-ph'
  | 'last-ph'
  | 'meter-check'
  | 'culture-dose'
  | 'culture-age'
  | 'sugar'
  | 'salt';
export type StallCause =
  | 'strip-only'
  | 'meter-failed'
  | 'probe-in-fat'
  | 'no-culture'
  | 'room-cool'
  | 'culture-under-dosed'
  | 'culture-old'
  | 'sugar-low'
  | 'salt-high';
/** What to do, in order. None of them is to wait. */
export type StallStep =
  | 'check-meter'
  | 'read-again-in-lean'
  | 'mind-the-hours'
  | 'room-to-pack'
  | 'hold'
  | 'ask-authority'
  | 'change-next-batch';
export type StallNever = 'add-sugar-after-stuffing' | 'add-culture-after-stuffing' | 'dry-anyway';

export type StallAnswer = {
  /** Null: not to be told without a start and a last pH. */
  readonly isStalled: boolean | null;
  readonly ask: readonly StallAsk[];
  readonly likely: readonly StallCause[];
  readonly steps: readonly StallStep[];
  readonly never: readonly StallNever[];
};

const STALL_HOURS = 24;
const STALL_AT_C = 22;
const STALL_DROP_PH = 0.3;
const COOL_C = 18;
const OPENED_DAYS = 90;
const LOW_SUGAR_PCT = 0.2;
const HIGH_SALT_PCT = 3.5;
const FAT_PH = { low: 6.3, high: 6.9 } as const;
/** What went into the mix wrongly stays wrong: after stuffing nothing can be mixed in. */
const OF_THE_MIX: ReadonlySet<StallCause> = new Set([
  'no-culture',
  'culture-under-dosed',
  'culture-old',
  'sugar-low',
  'salt-high',
]);

/**
 * Whether a ferment has stalled, which logged facts may explain it, and what to ask about what was not logged. Neither a verdict nor
 * a reason to wait: the degree-hours run on.
 *
 * Formula: a drop under 0.3 pH after 24 h at 22 °C; at other temperatures after 24 h x (19 / (T - 3))^2.
 * Units: h, °C, pH, g/kg of meat, days, % of meat. Valid: roomC above 3 °C.
 * Source: common practice (0.3 in 24 h at 20 to 24 °C; 90 days opened; 0.2 % dextrose; 3.5 % salt; 18 °C); strips that read meat too
 * high, and fat that reads 6.3 to 6.9: makers' reports (read); the temperature law from memory, medium confidence.
 * @throws RangeError unless elapsedHours >= 0 and roomC > 3.
 * @example stallOf({ elapsedHours: 72, roomC: 20, startPh: 5.8, lastPh: 5.75 }).isStalled // => true
 */
export function stallOf(facts: StallFacts): StallAnswer {
  const { elapsedHours, roomC, startPh, lastPh } = facts;
  if (!(elapsedHours >= 0))
    throw new RangeError(`stallOf: elapsedHours requires a number >= 0, got ${elapsedHours}`);
  if (!(roomC > 3)) throw new RangeError(`stallOf: roomC requires above 3 °C, got ${roomC}`);
  const dueHours = STALL_HOURS * ((STALL_AT_C - 3) / (roomC - 3)) ** 2;
  const isByMeter = facts.lastMethod !== 'strip';
  const hasCulture = facts.hasCulture !== false;
  const isKnown = startPh !== undefined && lastPh !== undefined;
  const asks: [StallAsk, boolean][] = [
    ['start-ph', startPh === undefined],
    ['last-ph', lastPh === undefined],
    ['meter-check', isByMeter && facts.meterCheckedOk === undefined],
    [
      'culture-dose',
      hasCulture && (facts.cultureGPerKg === undefined || facts.cultureDoseGPerKg === undefined),
    ],
    ['culture-age', hasCulture && facts.cultureOpenedDays === undefined],
    ['sugar', facts.dextrosePct === undefined],
    ['salt', facts.saltPct === undefined],
  ];
  const causes: [StallCause, boolean][] = [
    ['strip-only', !isByMeter],
    ['meter-failed', isByMeter && facts.meterCheckedOk === false],
    ['probe-in-fat', isByMeter && lastPh !== undefined && lastPh >= FAT_PH.low && lastPh <= FAT_PH.high],
    ['room-cool', roomC < COOL_C],
    ['no-culture', !hasCulture],
    [
      'culture-under-dosed',
      facts.cultureGPerKg !== undefined && facts.cultureGPerKg < (facts.cultureDoseGPerKg ?? 0),
    ],
    ['culture-old', (facts.cultureOpenedDays ?? 0) > OPENED_DAYS],
    ['sugar-low', (facts.dextrosePct ?? LOW_SUGAR_PCT) < LOW_SUGAR_PCT],
    ['salt-high', (facts.saltPct ?? 0) > HIGH_SALT_PCT],
  ];
  const likely = causes.flatMap(([code, applies]) => (applies ? [code] : []));
  const isOfTheMix = likely.some((code) => OF_THE_MIX.has(code));
  const steps: [StallStep, boolean][] = [
    ['check-meter', !(isByMeter && facts.meterCheckedOk === true)],
    ['read-again-in-lean', true],
    ['mind-the-hours', true],
    ['room-to-pack', likely.includes('room-cool')],
    ['hold', isOfTheMix],
    ['ask-authority', isOfTheMix],
    ['change-next-batch', isOfTheMix],
  ];
  return {
    isStalled: isKnown ? elapsedHours >= dueHours && startPh - lastPh < STALL_DROP_PH : null,
    ask: asks.flatMap(([code, applies]) => (applies ? [code] : [])),
    likely,
    steps: steps.flatMap(([code, applies]) => (applies ? [code] : [])),
    never: ['add-sugar-after-stuffing', 'add-culture-after-stuffing', 'dry-anyway'],
  };
}
