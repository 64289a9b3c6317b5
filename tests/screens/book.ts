/** Whole books for tests, entry by entry as a phone would write them. Every reading here is invented. */
import type { Formula } from '#core/formula/formula.ts';
import { type Batch, batch } from '#record/batch.ts';
import { type Entry, type EntryId, hashLine, type KnownEntry, readLine, writeLine } from '#record/entry.ts';
import { writeFile } from '#record/file.ts';
import { type BodyOf, type Kind, type Plan, writtenVersion } from '#record/kinds.ts';
import type { Line } from '#record/line.ts';
import { chambers, lots, meters, type Place, place, scales } from '#record/place.ts';
import { PLACE, type SubjectId } from '#record/subject.ts';

export const HOUR_MS = 3_600_000;
export const DAY_HOURS = 24;
/** A Monday, 08:00 by the wall clock there. */
export const START_MS = Date.UTC(2024, 0, 8, 7);
export const ZONE = '+01:00';

const DEVICE = '018cdc00-0000-7000-9000-000000000001';

type More = {
  readonly refs?: readonly SubjectId[];
  readonly strikes?: EntryId;
  /** How long after it was true it was written down. */
  readonly lateHours?: number;
  readonly by?: string;
};

export type Book = {
  /** Writes a fact that was true so many hours after the start. */
  readonly put: <K extends Kind>(
    atHours: number,
    kind: K,
    subject: SubjectId,
    body: BodyOf<K>,
    more?: More,
  ) => KnownEntry;
  readonly entries: readonly Entry[];
  readonly lines: readonly Line[];
};

export function book(): Book {
  const lines: Line[] = [];
  return {
    put(atHours, kind, subject, body, { refs = [], strikes, lateHours = 0, by = 'HK' } = {}) {
      const number = (lines.length + 1).toString(16).padStart(12, '0');
      const atMs = Math.round(START_MS + atHours * HOUR_MS);
      const text = writeLine({
        id: `018cdc00-0000-7000-8000-${number}` as EntryId,
        subject,
        refs,
        kind,
        v: writtenVersion(kind, body),
        atMs,
        zone: ZONE,
        writtenAtMs: atMs + Math.round(lateHours * HOUR_MS),
        by,
        device: DEVICE,
        seq: lines.length + 1,
        prev: lines.at(-1)?.hash ?? '',
        ...(strikes ? { strikes: { id: strikes, reason: 'weighed by mistake' } } : {}),
        body,
      } as KnownEntry);
      lines.push(lineOf(text));
      return lines.at(-1)?.entry as KnownEntry;
    },
    get entries() {
      return lines.map(({ entry }) => entry);
    },
    lines,
  };
}

function lineOf(text: string): Line {
  const read = readLine(text);
  if (!read.ok) throw new Error(`book: ${JSON.stringify(read.problem)} in ${text}`);
  return { hash: hashLine(text), line: text, entry: read.entry };
}

/** The book as a backup holds it, to be taken in on a phone. */
export function fileOf({ lines }: Book): string {
  return writeFile(lines, { build: 'test', madeAtMs: START_MS, device: DEVICE }).text;
}

/** All that touches a subject, as a screen is given it. */
export function touching({ entries }: Book, subject: SubjectId): Entry[] {
  return entries.filter((entry) => entry.subject === subject || entry.refs.includes(subject));
}

export function batchOf(of: Book, id: SubjectId = BATCH): Batch {
  const found = batch(id, touching(of, id));
  if (found === null) throw new Error(`batchOf: no standing entry opens ${id}`);
  return found;
}

export function kitOf({ entries }: Book) {
  return {
    lots: lots(entries),
    scales: scales(entries),
    meters: meters(entries),
    chambers: chambers(entries),
  };
}

export function placeOf({ entries }: Book): Place {
  return place(entries);
}

export const BATCH: SubjectId = 'batch:018cdc00-0000-7000-a000-000000000001';
export const SMALL: SubjectId = 'instrument:018cdc00-0000-7000-a000-000000000002';
export const BENCH: SubjectId = 'instrument:018cdc00-0000-7000-a000-000000000003';
export const BIG: SubjectId = 'instrument:018cdc00-0000-7000-a000-000000000004';
export const CURE_LOT: SubjectId = 'lot:018cdc00-0000-7000-a000-000000000005';
export const CHAMBER: SubjectId = 'chamber:018cdc00-0000-7000-a000-000000000006';
export const FORMULA: SubjectId = 'formula:018cdc00-0000-7000-a000-000000000007';
export const METER: SubjectId = 'instrument:018cdc00-0000-7000-a000-000000000008';

export function pieceId(number: number, batchNumber = 1): SubjectId {
  return `piece:018cdc00-0000-7000-b${batchNumber.toString(16).padStart(3, '0')}-${String(number).padStart(12, '0')}`;
}

/** 2.8 % of salt and 0.25 % of a curing salt that prints 6.25 % of nitrite. Invented. */
export const SALAME: Formula = {
  name: 'Invented salame',
  kind: 'comminuted',
  species: ['pork'],
  fatPctOfMeat: 25,
  lines: [
    { id: 'lean', name: 'Lean pork', role: 'lean', amount: { basis: 'pct-of-meat', amountPct: 75 } },
    { id: 'fat', name: 'Back fat', role: 'fat', amount: { basis: 'pct-of-meat', amountPct: 25 } },
    { id: 'salt', name: 'Salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.8 } },
    {
      id: 'cure',
      name: 'Curing salt',
      role: 'cure',
      amount: { basis: 'pct-of-meat', amountPct: 0.25 },
      cure: { nitritePct: 6.25, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
    },
  ],
};

export const PLAN: Plan = {
  fermentC: 24,
  phLow: 4.9,
  phHigh: 5.2,
  dryC: 13,
  dryRhPct: 80,
  diameterMm: 55,
  targetLossPct: 38,
};

type SetUp = Partial<BodyOf<'bench-set-up'>> & { readonly ruleSet?: 'US' | 'CA' | 'EU' };

/** Units, rule set, three scales, a meter, a chamber and a bag of curing salt. */
export function setUp(of: Book, { ruleSet = 'US', ...bench }: SetUp = {}): Book {
  const given = { mass: 'metric', temperature: 'C', decimal: '.', paper: 'A4', initials: 'HK' } as const;
  of.put(-3, 'bench-set-up', PLACE, { ...given, ...bench });
  of.put(-3, 'rule-set-chosen', PLACE, { ruleSet });
  of.put(-3, 'scale-added', SMALL, { name: 'Small scale', stepG: 0.01, mostG: 50 });
  of.put(-3, 'scale-added', BENCH, { name: 'Bench scale', stepG: 0.1, mostG: 500 });
  of.put(-3, 'scale-added', BIG, { name: 'Big scale', stepG: 1 });
  of.put(-3, 'meter-added', METER, { what: 'ph-meter', name: 'pH meter' });
  of.put(-3, 'chamber-added', CHAMBER, { name: 'Cellar', rails: 3 });
  of.put(-2, 'received', CURE_LOT, {
    what: 'cure',
    name: 'Curing salt',
    lot: 'C-77',
    supplier: 'Invented supplier',
    cure: { nitritePct: 6.25, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
  });
  of.put(-1, 'formula-saved', FORMULA, { formula: SALAME, note: '' });
  return of;
}

type Opened = {
  readonly id?: SubjectId;
  readonly lot?: string;
  readonly atHours?: number;
  readonly formula?: Formula;
  readonly ruleSet?: 'US' | 'CA' | 'EU';
  readonly plan?: Partial<Plan>;
};

export function openBatch(of: Book, given: Opened = {}): Book {
  const { id = BATCH, lot = '240108', atHours = 0, formula = SALAME, plan = {} } = given;
  of.put(
    atHours,
    'batch-opened',
    id,
    { lot, formula, ruleSet: given.ruleSet ?? placeOf(of).ruleSet ?? 'US', plan: { ...PLAN, ...plan } },
    { refs: [FORMULA] },
  );
  return of;
}

/** 2,411 g of lean and 804 g of fat: 3,215 g of meat. */
export function weighMeat(of: Book, { id = BATCH, atHours = 0.25 } = {}): Book {
  of.put(atHours, 'meat-weighed', id, { part: 'lean', massG: 2411 });
  of.put(atHours, 'meat-weighed', id, { part: 'fat', massG: 804 });
  return of;
}

export function weighOutSalt(of: Book, { id = BATCH, atHours = 0.5, cureG = 8.03 } = {}): Book {
  of.put(atHours, 'weighed-out', id, { line: 'salt', targetG: 90, massG: 90, scale: BENCH });
  of.put(
    atHours,
    'weighed-out',
    id,
    { line: 'cure', targetG: 8.03, massG: cureG, scale: SMALL, lot: CURE_LOT },
    { refs: [CURE_LOT] },
  );
  return of;
}

export function stuff(
  of: Book,
  { id = BATCH, atHours = 2, greenG = [812, 798, 805, 820], number = 1 } = {},
): Book {
  of.put(atHours - 1.5, 'cleaned', id, {});
  of.put(atHours - 1, 'ground', id, { tempC: 3.5, typed: { tempC: { text: '3.5', unit: 'C' } } });
  of.put(atHours - 0.5, 'mixed', id, {});
  of.put(atHours, 'stuffed', id, {});
  for (const [at, grossG] of greenG.entries())
    of.put(
      atHours + 0.1,
      'piece-stuffed',
      pieceId(at + 1, number),
      { number: at + 1, grossG, tareG: 0, diameterMm: 55, casing: '', targetLossPct: 38, scale: BIG },
      { refs: [id] },
    );
  return of;
}

export function readRoom(of: Book, atHours: number, roomC: number, id: SubjectId = BATCH): Book {
  of.put(atHours, 'room-read', id, { roomC });
  return of;
}

export function readPh(of: Book, atHours: number, ph: number, more: Partial<BodyOf<'ph-read'>> = {}): Book {
  of.put(atHours, 'ph-read', BATCH, { ph, sample: 'packet', method: 'meter', doubted: false, ...more });
  return of;
}

/** Read every 6 h at 24 °C until pH 5.2 at 30 h after stuffing; hung an hour later. */
export function ferment(of: Book, { id = BATCH, fromHours = 2 } = {}): Book {
  for (const hours of [0, 6, 12, 18, 24, 30]) readRoom(of, fromHours + hours, 24, id);
  for (const [hours, ph] of [
    [12, 5.6],
    [30, 5.2],
  ] as const)
    of.put(fromHours + hours, 'ph-read', id, { ph, sample: 'packet', method: 'meter', doubted: false });
  of.put(fromHours + 30.5, 'ferment-ended', id, { reason: 'ph-reached' });
  of.put(fromHours + 31, 'hung', id, { chamber: CHAMBER, airC: 13, rhPct: 80 }, { refs: [CHAMBER] });
  return of;
}

/** One weigh round, piece by piece, a minute each. */
export function weighRound(
  of: Book,
  atHours: number,
  massesG: readonly number[],
  { id = BATCH, number = 1, stage = 'round' as BodyOf<'weighed'>['stage'] } = {},
): Book {
  for (const [at, grossG] of massesG.entries())
    of.put(
      atHours + at / 60,
      'weighed',
      pieceId(at + 1, number),
      { grossG, stage, scale: BIG, typed: { grossG: { text: String(grossG), unit: 'g' } } },
      { refs: [id] },
    );
  return of;
}
