/** The entry kinds, one line a fact, named in the trade's past tense. A changed shape is a new version, never an edit of an old one (long: every kind stands here). */
import * as z from 'zod/mini';
import { cureLabelSchema, formulaSchema } from './formula-schema.ts';
import { subjectId } from './subject.ts';

const text = (most: number) => z.string().check(z.maxLength(most));
const name = z.string().check(z.minLength(1), z.maxLength(80));
const number = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
const note = z.optional(text(2000));
const massG = number(0, 1_000_000);
const tempC = number(-60, 150);
const rhPct = number(0, 100);
const ph = number(0, 14);
const instant = z.int().check(z.gte(0), z.lte(8.64e15));
const zone = z.string().check(z.regex(/^[+-]\d\d:\d\d$/, 'zone'));
const instrument = z.optional(subjectId);
const mark = z.int().check(z.gte(1), z.lte(5));
/** Each number as it was typed, with its unit, by the name of the field that holds its base value. */
const typed = z.optional(
  z.record(
    z.string().check(z.maxLength(40)),
    z.strictObject({ text: z.string().check(z.maxLength(24)), unit: z.string().check(z.maxLength(8)) }),
  ),
);
/** A question about an unlikely value was asked, and the maker kept the value. */
const kept = z.optional(z.array(text(40)).check(z.maxLength(20)));

const ruleSet = z.enum(['US', 'CA', 'EU']);
const plan = z.strictObject({
  fermentC: tempC,
  phLow: ph,
  phHigh: ph,
  dryC: tempC,
  dryRhPct: rhPct,
  diameterMm: number(5, 300),
  targetLossPct: number(1, 80),
});
/** A whole muscle is salted and hung: its plan may have no ferment, and then nothing of it. */
const planOfAny = z
  .strictObject({
    fermentC: z.optional(tempC),
    phLow: z.optional(ph),
    phHigh: z.optional(ph),
    dryC: tempC,
    dryRhPct: rhPct,
    diameterMm: number(5, 300),
    targetLossPct: number(1, 80),
  })
  .check(
    z.refine(({ fermentC, phLow, phHigh }) => {
      const said = [fermentC, phLow, phHigh].filter((value) => value !== undefined).length;
      return said === 0 || said === 3;
    }, 'all of a ferment or nothing of it'),
  );
const benchStep = z.strictObject({
  tempC: z.optional(tempC),
  /** Before grinding, each on its own. */
  leanC: z.optional(tempC),
  fatC: z.optional(tempC),
  /** Why the maker went on although it was warmer than practice allows. */
  override: z.optional(text(400)),
  minutes: z.optional(number(0, 100_000)),
  thermometer: instrument,
  note,
  typed,
  kept,
});
const opening = {
  lot: z.string().check(z.minLength(1), z.maxLength(40)),
  formula: formulaSchema,
  from: z.optional(z.strictObject({ formula: subjectId, entry: text(36) })),
  ruleSet,
  /** What lies ready, if it was said: the weigh-out is counted against it before anything is mixed. */
  plannedMeatG: z.optional(massG),
  plannedTrays: z.optional(z.int().check(z.gte(1), z.lte(99))),
  note,
  typed,
  kept,
};
const replanning = { reason: text(400), typed };
const clockMoved = {
  device: text(36),
  fromSeq: z.int(),
  toSeq: z.int(),
  shiftMs: z.int(),
  reason: text(400),
};
const reasoned = z.strictObject({ reason: text(400) });
/** At most what one line may hold beside everything else; a longer file takes several entries. */
const column = z.array(z.int().check(z.gte(-1_000_000), z.lte(100_000_000))).check(z.maxLength(8000));
const buffer = z.enum(['4.00', '4.01', '6.86', '7.00']);

const v1 = {
  // the place
  'bench-set-up': z.strictObject({
    mass: z.enum(['metric', 'pounds']),
    temperature: z.enum(['C', 'F']),
    decimal: z.enum(['.', ',']),
    paper: z.enum(['A4', 'Letter']),
    initials: text(12),
  }),
  'rule-set-chosen': z.strictObject({ ruleSet }),
  'backed-up': z.strictObject({ entries: z.int(), bytes: z.int(), hash: text(64), place: text(40) }),

  // kit
  'scale-added': z.strictObject({ name, stepG: number(0.0001, 1000), mostG: z.optional(massG), typed }),
  'meter-added': z.strictObject({ what: z.enum(['ph-meter', 'thermometer', 'hygrometer']), name }),
  /** One buffer near 7 and one near 4: what was shown in each, and how warm it was. */
  'meter-checked': z.strictObject({
    shownIn: z.enum(['mV', 'pH']),
    sevenBuffer: z.optional(buffer),
    sevenC: z.optional(number(0, 50)),
    sevenShown: z.optional(number(-2000, 2000)),
    fourBuffer: z.optional(buffer),
    fourC: z.optional(number(0, 50)),
    fourShown: z.optional(number(-2000, 2000)),
    note,
    typed,
    kept,
  }),
  'thermometer-checked': z.strictObject({ shownC: tempC, note, typed, kept }),
  'hygrometer-checked': z.strictObject({
    shownRhPct: rhPct,
    restedHours: number(0, 1000),
    note,
    typed,
    kept,
  }),
  /** `stepG`: how fine the scale shows, as it stood in the kit then. */
  'scale-checked': z.strictObject({
    weightG: massG,
    shownG: massG,
    stepG: z.optional(number(0.0001, 1000)),
    note,
    typed,
    kept,
  }),
  /** `places`: how many pieces hang from one rail. */
  'chamber-added': z.strictObject({
    name,
    rails: z.int().check(z.gte(1), z.lte(40)),
    places: z.optional(z.int().check(z.gte(1), z.lte(200))),
  }),
  received: z.strictObject({
    what: z.enum(['lean', 'fat', 'cure', 'culture', 'mould', 'salt', 'sugar', 'spice', 'casing', 'other']),
    name,
    lot: text(60),
    supplier: text(80),
    species: z.optional(text(20)),
    massG: z.optional(massG),
    tempC: z.optional(tempC),
    packedOnMs: z.optional(instant),
    bestBeforeMs: z.optional(instant),
    /** Of a culture: when its pack was opened, and where it is kept. */
    openedOnMs: z.optional(instant),
    storage: z.optional(z.enum(['frozen', 'out-of-freezer'])),
    cure: z.optional(cureLabelSchema),
    note,
    typed,
    kept,
  }),

  // a lot in the freezer
  frozen: z.strictObject({ thicknessMm: number(1, 1000), method: z.enum(['room', 'core']), note, typed }),
  'freezer-read': z.strictObject({
    tempC,
    where: z.enum(['core', 'room']),
    thermometer: instrument,
    typed,
    kept,
  }),

  // the formula
  'formula-saved': z.strictObject({
    formula: formulaSchema,
    note: text(400),
    from: z.optional(z.strictObject({ formula: subjectId, entry: text(36) })),
    kept,
  }),

  // a batch, from opening to the end of the ferment
  'batch-opened': z.strictObject({ ...opening, plan }),
  'plan-changed': z.strictObject({ ...replanning, plan }),
  'meat-weighed': z.strictObject({
    part: z.enum(['lean', 'fat']),
    massG,
    lot: z.optional(subjectId),
    scale: instrument,
    typed,
    kept,
  }),
  /** The meat is not what was planned, and the maker goes on with just this much. */
  'count-kept': z.strictObject({ trays: z.int().check(z.gte(1), z.lte(999)), meatG: massG }),
  'weighed-out': z.strictObject({
    line: text(40),
    targetG: massG,
    massG,
    lot: z.optional(subjectId),
    scale: instrument,
    typed,
    kept,
  }),
  cleaned: benchStep,
  ground: benchStep,
  mixed: benchStep,
  stuffed: benchStep,
  /** All that has to be done before stuffing is planned backwards from `finishMs`. */
  'stuffing-planned': z.strictObject({
    finishMs: instant,
    tasks: z.array(z.strictObject({ name: text(60), minutes: number(0, 10_000) })).check(z.maxLength(12)),
  }),
  'timer-set': z.strictObject({ name: text(60), endMs: instant }),
  'ferment-set': z.strictObject({
    roomC: tempC,
    rhPct: z.optional(rhPct),
    pace: z.optional(z.enum(['slow', 'medium', 'fast', 'none'])),
    note,
    typed,
  }),
  /** A stretch of a data logger's file in packed columns: seconds since the row before, values in steps of 10^-places. */
  'room-logged': z.strictObject({
    name: text(120),
    startMs: instant,
    unit: z.enum(['C', 'F']),
    places: z.int().check(z.gte(0), z.lte(3)),
    afterS: column,
    values: column,
    /** Where the file has it: hundredths of %; -1 where no humidity was read. */
    hundredthsRh: z.optional(column),
    part: z.int().check(z.gte(1), z.lte(99)),
    parts: z.int().check(z.gte(1), z.lte(99)),
    thermometer: instrument,
    note,
  }),
  'room-read': z.strictObject({
    roomC: tempC,
    rhPct: z.optional(rhPct),
    doubted: z.optional(z.boolean()),
    thermometer: instrument,
    /** Where the humidity was read on another instrument than the temperature. */
    hygrometer: instrument,
    typed,
    kept,
  }),
  'ph-read': z.strictObject({
    ph,
    sample: z.enum(['mix', 'packet', 'piece']),
    method: z.enum(['meter', 'strip']),
    meter: instrument,
    sampleMm: z.optional(number(1, 300)),
    doubted: z.boolean(),
    note,
    typed,
    kept,
  }),
  smoked: z.strictObject({ hours: number(0, 1000), tempC: z.optional(tempC), note, typed }),
  'ferment-ended': z.strictObject({
    reason: z.enum(['ph-reached', 'time-reached', 'no-warm-stage', 'held', 'other']),
    note,
  }),
  hung: z.strictObject({
    chamber: z.optional(subjectId),
    airC: z.optional(tempC),
    rhPct: z.optional(rhPct),
    note,
    typed,
  }),
  /** The maker's own meter or a laboratory, of a finished or drying product: water activity, or moisture to protein. */
  'product-measured': z.strictObject({
    measure: z.enum(['aw', 'mpr']),
    value: number(0.1, 10),
    by: text(200),
    note,
    typed,
  }),
  noted: z.strictObject({ text: text(2000) }),
  /** One taster's marks, 5 the best. `blind`: the plate bore a number, and the taster did not know the batch. */
  tasted: z.strictObject({
    taster: name,
    look: mark,
    smell: mark,
    bite: mark,
    taste: mark,
    overall: mark,
    blind: z.optional(z.boolean()),
    note,
  }),
  /** A picture of its subject. The bytes are kept apart from the log; `sha256` proves them, whoever hands them in. */
  photographed: z.strictObject({
    sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/, 'sha256')),
    bytes: z.int().check(z.gte(1), z.lte(1_000_000)),
    mime: z.enum(['image/jpeg']),
    /** The entry that it belongs to: a reading, a look at the mould. */
    of: z.optional(text(36)),
    note,
  }),
  'action-taken': z.strictObject({
    about: text(40),
    cause: text(1000),
    action: text(1000),
    product: text(1000),
    prevention: text(1000),
  }),
  decided: z.strictObject({
    decision: z.enum(['release', 'hold', 'reject']),
    verdicts: z
      .array(
        z.strictObject({
          rule: text(60),
          verdict: text(20),
          value: z.nullable(z.number()),
          limit: z.nullable(z.number()),
          unit: text(40),
        }),
      )
      .check(z.maxLength(60)),
    ruleSet,
    build: text(60),
    gaps: z.array(text(60)).check(z.maxLength(60)),
    note,
  }),

  // a piece
  'piece-stuffed': z.strictObject({
    number: z.int().check(z.gte(1), z.lte(999)),
    grossG: massG,
    tareG: massG,
    diameterMm: number(5, 300),
    casing: text(80),
    targetLossPct: number(1, 80),
    scale: instrument,
    typed,
    kept,
  }),
  /** What was paid for what went into a batch, in hundredths of the maker's money: meat, lines by id, all else. */
  priced: z.strictObject({
    costs: z
      .array(z.strictObject({ of: text(40), cents: z.int().check(z.gte(0), z.lte(1_000_000_000)) }))
      .check(z.maxLength(64)),
    sampledPct: number(0, 90),
    typed,
  }),
  /** Casing that all pieces of a batch took, ends and knots with it; subject is the batch. */
  'casing-used': z.strictObject({ usedM: number(0.01, 10_000), typed }),
  weighed: z.strictObject({
    grossG: massG,
    stage: z.enum(['to-drying', 'round', 'taken-down']),
    scale: instrument,
    typed,
    kept,
  }),
  're-targeted': z.strictObject({ targetLossPct: number(1, 80), reason: text(400), typed }),
  'taken-down': z.strictObject({ why: z.enum(['at-target', 'test', 'trouble', 'other']), note }),
  bagged: reasoned,
  rehung: reasoned,
  /** Cut to look inside, or for a sample: what the piece weighed before and after, on one scale and with its tare. */
  cut: z
    .strictObject({ beforeG: massG, afterG: massG, note, typed })
    .check(z.refine(({ beforeG, afterG }) => afterG < beforeG, 'less after the cut than before it')),
  /** Where a piece hangs: rails are counted from above, places from the door, both from 1. */
  'rail-placed': z.strictObject({
    chamber: z.optional(subjectId),
    rail: z.int().check(z.gte(1), z.lte(40)),
    position: z.int().check(z.gte(1), z.lte(200)),
  }),
  'mould-looked': z.strictObject({
    colour: z.enum(['none', 'white', 'grey', 'green', 'blue', 'black', 'yellow', 'red']),
    texture: z.enum(['powder', 'fur', 'slime']),
    spread: z.enum(['spots', 'part', 'all']),
    action: z.enum(['left', 'brushed', 'wiped', 'set-apart', 'thrown-away']),
    note,
  }),

  // the air of a chamber
  /** `low` and `high`: what the instrument kept as least and most since the reading before. */
  'air-read': z.strictObject({
    airC: tempC,
    rhPct: z.optional(rhPct),
    lowC: z.optional(tempC),
    highC: z.optional(tempC),
    lowRhPct: z.optional(rhPct),
    highRhPct: z.optional(rhPct),
    instrument,
    typed,
    kept,
  }),
  'air-set': z.strictObject({ airC: tempC, rhPct: z.optional(rhPct), note, typed }),
  /** A stretch of a logger's file: seconds since the row before, hundredths of °C and of %; -1 where no humidity was read. */
  'air-logged': z.strictObject({
    name: text(120),
    startMs: instant,
    afterS: column,
    hundredthsC: column,
    hundredthsRh: column,
    instrument,
  }),

  // away from the workshop
  'absence-planned': z.strictObject({ fromMs: instant, toMs: instant, helper: text(200), note }),

  // the log itself
  struck: z.strictObject({}),
  'clock-corrected': z.strictObject(clockMoved),
} as const;

/** Shapes that took more in than their first; each takes every older body too. */
const v2 = {
  'batch-opened': z.strictObject({ ...opening, plan: planOfAny }),
  'plan-changed': z.strictObject({ ...replanning, plan: planOfAny }),
  /** `zones`: where the offset at the true time was another than at the wrong one; each from an entry on. */
  'clock-corrected': z.strictObject({
    ...clockMoved,
    zones: z.optional(z.array(z.strictObject({ fromSeq: z.int(), zone })).check(z.maxLength(20))),
  }),
} as const;

export type Kind = keyof typeof v1;

type Newest = Omit<typeof v1, keyof typeof v2> & typeof v2;
export type BodyOf<K extends Kind> = z.infer<Newest[K]>;

const VERSIONS: readonly Readonly<Record<string, z.ZodMiniType>>[] = [v1, v2];

/** The check of a kind's body at a version, or null when this build does not know it. */
export function bodySchema(kind: string, v: number): z.ZodMiniType | null {
  const shapes = VERSIONS[v - 1];
  return (shapes && Object.hasOwn(shapes, kind) && shapes[kind]) || null;
}

/** The version in which a body is written: the oldest that takes it, so that an older build reads all that it can. */
export function writtenVersion(kind: Kind, body: unknown): number {
  const isTaken = (v: number) => bodySchema(kind, v)?.safeParse(body).success === true;
  return [1, 2].find(isTaken) ?? 1;
}

export type Plan = BodyOf<'batch-opened'>['plan'];
export type Typed = NonNullable<z.infer<typeof typed>>;
export type BenchStep = 'cleaned' | 'ground' | 'mixed' | 'stuffed';
