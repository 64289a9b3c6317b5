/**
 * A book in which every kind of entry stands in every version, with every field that it may have (long: every kind has its
 * body). Every reading here is invented. Run with a path it writes the backup there; a backup that was written is never changed,
 * so that a new kind or version takes a new file beside the old ones.
 */
import { writeFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import type { BodyOf, Kind, Typed } from '#record/kinds.ts';
import { clockSubject } from '#record/put-right.ts';
import { PLACE, type SubjectId } from '#record/subject.ts';
import { LONG_FORMULA } from '../files/long-formula.ts';
import {
  BATCH,
  BENCH,
  book,
  CHAMBER,
  CURE_LOT,
  FORMULA,
  fileOf,
  METER,
  PLAN,
  pieceId,
} from '../screens/book.ts';

export const NEWEST = 'fixtures/backups/0.1.0-every-kind.txt';

type Bodies = { readonly [K in Kind]: readonly [Required<BodyOf<K>>, ...BodyOf<K>[]] };

const DEVICE = '018cdc00-0000-7000-9000-000000000001';
const AT_MS = Date.UTC(2024, 0, 6, 12);
const DAY_MS = 24 * 3_600_000;
const note = 'Invented: ü, 重さ, 🐖, "quoted", back\\slash and\na second line';
const cure = { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'KNO2', nitrateSalt: 'KNO3' } as const;
const from = { formula: FORMULA, entry: '018cdc00-0000-7000-8000-000000000009' };
const dryPlan = { dryC: 13, dryRhPct: 80, diameterMm: 55, targetLossPct: 38 };
const typed = (name: string, text: string, unit: string): Typed => ({ [name]: { text, unit } });
const step = {
  tempC: 3.5,
  leanC: 1,
  fatC: -2,
  override: 'The room was warm',
  minutes: 4,
  thermometer: METER,
  note,
  typed: typed('tempC', '38.3', 'F'),
  kept: ['tempC'],
};
const opening = {
  lot: '240108',
  formula: LONG_FORMULA,
  from,
  ruleSet: 'EU' as const,
  plannedMeatG: 3215,
  plannedTrays: 2,
  note,
  typed: typed('plannedMeatG', '3,215', 'kg'),
  kept: ['plannedMeatG'],
};
const verdict = { rule: 'degree-hours', verdict: 'within-limit', value: 520.5, limit: 665, unit: '°C·h' };
const reason = 'The date was set wrong';

export const BODIES: Bodies = {
  'bench-set-up': [{ mass: 'pounds', temperature: 'F', decimal: ',', paper: 'Letter', initials: 'HK' }],
  'rule-set-chosen': [{ ruleSet: 'US' }, { ruleSet: 'CA' }, { ruleSet: 'EU' }],
  'scale-added': [{ name: 'Bench scale', stepG: 0.1, mostG: 500, typed: typed('stepG', '0,1', 'g') }],
  'meter-added': [
    { what: 'ph-meter', name: 'pH meter' },
    { what: 'thermometer', name: 'Thermometer' },
    { what: 'hygrometer', name: 'Hygrometer' },
  ],
  'meter-checked': [
    {
      shownIn: 'mV',
      sevenBuffer: '6.86',
      sevenC: 21,
      sevenShown: 3,
      fourBuffer: '4.01',
      fourC: 21,
      fourShown: 172,
      note,
      typed: typed('fourShown', '172', 'mV'),
      kept: ['fourShown'],
    },
  ],
  'thermometer-checked': [{ shownC: 0.2, note, typed: typed('shownC', '0.2', 'C'), kept: ['shownC'] }],
  'hygrometer-checked': [
    { shownRhPct: 77, restedHours: 9, note, typed: typed('shownRhPct', '77', '%'), kept: ['restedHours'] },
  ],
  'scale-checked': [
    { weightG: 200, shownG: 200.1, stepG: 0.1, note, typed: typed('shownG', '200,1', 'g'), kept: ['shownG'] },
  ],
  'chamber-added': [{ name: 'Cellar', rails: 3, places: 12 }],
  received: [
    {
      what: 'cure',
      name: 'Curing salt',
      lot: 'C-77',
      supplier: 'Invented supplier',
      species: 'pork',
      massG: 1000,
      tempC: 4,
      packedOnMs: AT_MS - 30 * DAY_MS,
      bestBeforeMs: AT_MS + 300 * DAY_MS,
      openedOnMs: AT_MS,
      storage: 'out-of-freezer',
      cure,
      note,
      typed: typed('massG', '1', 'kg'),
      kept: ['tempC'],
    },
  ],
  frozen: [{ thicknessMm: 120, method: 'core', note, typed: typed('thicknessMm', '12', 'cm') }],
  'freezer-read': [
    { tempC: -18, where: 'core', thermometer: METER, typed: typed('tempC', '0', 'F'), kept: ['tempC'] },
  ],
  'formula-saved': [{ formula: LONG_FORMULA, note, from, kept: ['lines'] }],
  'batch-opened': [
    { ...opening, plan: PLAN },
    { ...opening, plan: dryPlan },
  ],
  'plan-changed': [
    { reason, plan: PLAN, typed: typed('dryC', '55', 'F') },
    { reason, plan: dryPlan },
  ],
  'meat-weighed': [
    {
      part: 'lean',
      massG: 2411,
      lot: CURE_LOT,
      scale: BENCH,
      typed: typed('massG', '2411', 'g'),
      kept: ['massG'],
    },
    { part: 'fat', massG: 804 },
  ],
  'count-kept': [{ trays: 3, meatG: 3215 }],
  'weighed-out': [
    {
      line: 'cure',
      targetG: 8.04,
      massG: 8.03,
      lot: CURE_LOT,
      scale: BENCH,
      typed: typed('massG', '8,03', 'g'),
      kept: ['massG'],
    },
  ],
  cleaned: [step],
  ground: [step],
  mixed: [step],
  'stuffing-planned': [{ finishMs: AT_MS + 2 * DAY_MS, tasks: [{ name: 'Thaw the fat', minutes: 90 }] }],
  'timer-set': [{ name: 'Rest', endMs: AT_MS + DAY_MS }],
  stuffed: [step],
  'piece-stuffed': [
    {
      number: 1,
      grossG: 812,
      tareG: 12,
      diameterMm: 55,
      casing: 'Beef middle',
      targetLossPct: 38,
      scale: BENCH,
      typed: typed('grossG', '812', 'g'),
      kept: ['grossG'],
    },
  ],
  'casing-used': [{ usedM: 3.2, typed: typed('usedM', '3.2', 'm') }],
  priced: [{ costs: [{ of: 'lean', cents: 1850 }], sampledPct: 2, typed: typed('lean', '18,50', '') }],
  'ferment-set': [{ roomC: 24, rhPct: 92, pace: 'medium', note, typed: typed('roomC', '24', 'C') }],
  'room-read': [
    {
      roomC: 24,
      rhPct: 92,
      doubted: true,
      thermometer: METER,
      hygrometer: METER,
      typed: typed('roomC', '75.2', 'F'),
      kept: ['roomC'],
    },
  ],
  'room-logged': [
    {
      name: 'room.csv',
      startMs: AT_MS + 2 * DAY_MS,
      unit: 'C',
      places: 1,
      afterS: [0, 600, 600],
      values: [240, 241, 239],
      hundredthsRh: [9200, -1, 9150],
      part: 1,
      parts: 1,
      thermometer: METER,
      note,
    },
  ],
  'ph-read': [
    {
      ph: 5.2,
      sample: 'packet',
      method: 'meter',
      meter: METER,
      sampleMm: 55,
      doubted: false,
      note,
      typed: typed('ph', '5,20', 'pH'),
      kept: ['ph'],
    },
  ],
  smoked: [{ hours: 2, tempC: 18, note, typed: typed('hours', '2', 'h') }],
  'ferment-ended': [{ reason: 'ph-reached', note }],
  hung: [{ chamber: CHAMBER, airC: 13, rhPct: 80, note, typed: typed('airC', '13', 'C') }],
  'rail-placed': [{ chamber: CHAMBER, rail: 1, position: 4 }],
  weighed: [
    { grossG: 800, stage: 'to-drying', scale: BENCH, typed: typed('grossG', '800', 'g'), kept: ['grossG'] },
    { grossG: 700, stage: 'round' },
  ],
  're-targeted': [{ targetLossPct: 35, reason, typed: typed('targetLossPct', '35', '%') }],
  bagged: [{ reason }],
  rehung: [{ reason }],
  cut: [{ beforeG: 690, afterG: 640, note, typed: typed('afterG', '640', 'g') }],
  'mould-looked': [{ colour: 'white', texture: 'powder', spread: 'part', action: 'brushed', note }],
  'air-set': [{ airC: 13, rhPct: 78, note, typed: typed('airC', '13', 'C') }],
  'air-read': [
    {
      airC: 12.5,
      rhPct: 79,
      lowC: 11,
      highC: 14,
      lowRhPct: 70,
      highRhPct: 85,
      instrument: METER,
      typed: typed('airC', '12,5', 'C'),
      kept: ['airC'],
    },
  ],
  'air-logged': [
    {
      name: 'air.csv',
      startMs: AT_MS + 5 * DAY_MS,
      afterS: [0, 3600],
      hundredthsC: [1300, 1295],
      hundredthsRh: [7900, -1],
      instrument: METER,
    },
  ],
  'absence-planned': [
    { fromMs: AT_MS + 9 * DAY_MS, toMs: AT_MS + 12 * DAY_MS, helper: 'Invented helper', note },
  ],
  'product-measured': [
    { measure: 'aw', value: 0.9, by: 'Invented laboratory', note, typed: typed('value', '0,90', '') },
  ],
  'taken-down': [{ why: 'at-target', note }],
  noted: [{ text: note }],
  photographed: [
    {
      sha256: '5'.repeat(64),
      bytes: 212_000,
      mime: 'image/jpeg',
      of: '018cdc00-0000-7000-8000-00000000000a',
      note,
    },
  ],
  tasted: [{ taster: 'HK', look: 4, smell: 3, bite: 5, taste: 4, overall: 4, blind: true, note }],
  'action-taken': [{ about: 'degree-hours', cause: note, action: note, product: note, prevention: note }],
  decided: [
    {
      decision: 'hold',
      verdicts: [verdict, { ...verdict, rule: 'ph-band', verdict: 'no-reading', value: null, limit: null }],
      ruleSet: 'EU',
      build: '0.1.0',
      gaps: ['late'],
      note,
    },
  ],
  struck: [{}],
  'clock-corrected': [
    {
      device: DEVICE,
      fromSeq: 3,
      toSeq: 4,
      shiftMs: -60_000,
      reason,
      zones: [{ fromSeq: 3, zone: '+02:00' }],
    },
    { device: DEVICE, fromSeq: 5, toSeq: 5, shiftMs: 60_000, reason },
  ],
  'backed-up': [{ entries: 40, bytes: 30_000, hash: '7'.repeat(64), place: 'shared' }],
};

/** What an entry of a kind is about, and what else it touches. */
function about(kind: Kind): { subject: SubjectId; refs?: readonly SubjectId[] } {
  switch (kind) {
    case 'bench-set-up':
    case 'rule-set-chosen':
    case 'backed-up':
    case 'absence-planned':
      return { subject: PLACE };
    case 'scale-added':
    case 'scale-checked':
      return { subject: BENCH };
    case 'meter-added':
    case 'meter-checked':
    case 'thermometer-checked':
    case 'hygrometer-checked':
      return { subject: METER };
    case 'chamber-added':
    case 'air-set':
    case 'air-read':
    case 'air-logged':
      return { subject: CHAMBER };
    case 'received':
    case 'frozen':
    case 'freezer-read':
      return { subject: CURE_LOT };
    case 'formula-saved':
      return { subject: FORMULA };
    case 'piece-stuffed':
    case 'weighed':
    case 're-targeted':
    case 'taken-down':
    case 'bagged':
    case 'rehung':
    case 'cut':
    case 'rail-placed':
    case 'mould-looked':
      return { subject: pieceId(1), refs: [BATCH] };
    case 'hung':
      return { subject: BATCH, refs: [CHAMBER] };
    case 'clock-corrected':
      return { subject: clockSubject(DEVICE) };
    default:
      return { subject: BATCH };
  }
}

export function everyKind(): string {
  const of = book();
  let hours = -24;
  for (const kind of Object.keys(BODIES) as Kind[])
    for (const body of BODIES[kind]) {
      hours += 1;
      const struck =
        kind === 'struck' ? of.entries.findLast((entry) => entry.kind === 'noted')?.id : undefined;
      of.put(hours, kind, about(kind).subject, body, {
        refs: about(kind).refs ?? [],
        ...(struck ? { strikes: struck } : {}),
      });
    }
  return fileOf(of);
}

if (argv[1] === fileURLToPath(import.meta.url)) writeFileSync(argv[2] ?? NEWEST, everyKind(), { flag: 'wx' });
