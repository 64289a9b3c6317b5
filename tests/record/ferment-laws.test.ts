import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batch as foldBatch } from '#record/batch.ts';
import { fermentFigures } from '#record/ferment-figures.ts';
import type { SubjectId } from '#record/subject.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import { temperature } from '#words/format.ts';
import { HOUR_MS, START_MS, type Writer, writer } from './make.ts';

const BATCH: SubjectId<'batch'> = 'batch:1';
const at = (hours: number) => ({ atMs: START_MS + hours * HOUR_MS });
const NOW_HOURS = 60;

type Read =
  | { readonly kind: 'room'; readonly hours: number; readonly roomC: number }
  | { readonly kind: 'ph'; readonly hours: number; readonly ph: number };

function stuffed(ruleSet: 'US' | 'CA' | 'EU'): Writer {
  const log = writer();
  const plan = {
    fermentC: 24,
    phLow: 4.9,
    phHigh: 5.2,
    dryC: 13,
    dryRhPct: 78,
    diameterMm: 45,
    targetLossPct: 35,
  };
  const formula = { name: 'T', kind: 'comminuted' as const, species: [], fatPctOfMeat: 25, lines: [] };
  log.write('batch-opened', BATCH, { lot: 'L', formula, ruleSet, plan }, at(-2));
  log.write('stuffed', BATCH, {}, at(0));
  return log;
}

function write(log: Writer, read: Read) {
  return read.kind === 'room'
    ? log.write('room-read', BATCH, { roomC: read.roomC }, at(read.hours))
    : log.write(
        'ph-read',
        BATCH,
        { ph: read.ph, sample: 'packet', method: 'meter', doubted: false },
        at(read.hours),
      );
}

function clockOf(log: Writer) {
  const batch = foldBatch(BATCH, log.entries);
  return batch && fermentFigures(batch, START_MS + NOW_HOURS * HOUR_MS);
}

const hours = fc.integer({ min: 0, max: 10 * NOW_HOURS }).map((tenths) => tenths / 10);
const read: fc.Arbitrary<Read> = fc.oneof(
  fc.record({
    kind: fc.constant('room' as const),
    hours,
    roomC: fc.integer({ min: 80, max: 450 }).map((tenths) => tenths / 10),
  }),
  fc.record({
    kind: fc.constant('ph' as const),
    hours,
    ph: fc.integer({ min: 440, max: 620 }).map((hundredths) => hundredths / 100),
  }),
);

describe('laws of the record of a ferment', () => {
  it('a struck reading has no effect, whatever it said and whenever it was written', () => {
    fc.assert(
      fc.property(
        fc.array(read, { maxLength: 14 }),
        fc.array(read, { minLength: 1, maxLength: 4 }),
        fc.constantFrom('US' as const, 'CA' as const, 'EU' as const),
        (kept, struck, ruleSet) => {
          const [without, withStruck] = [stuffed(ruleSet), stuffed(ruleSet)];
          const wrong = struck.map((each) => write(withStruck, each));
          for (const each of kept) {
            write(without, each);
            write(withStruck, each);
          }
          for (const { id } of wrong)
            withStruck.write('struck', BATCH, {}, { strikes: id, ...at(NOW_HOURS) });
          expect(clockOf(withStruck)).toEqual(clockOf(without));
        },
      ),
    );
  });

  it('a temperature typed in °F is shown in °F as it was typed', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -400, max: 1760 }),
        fc.constantFrom('.' as const, ',' as const),
        (tenths, decimal) => {
          const text = (tenths / 10).toFixed(1).replace('.', decimal);
          const typed = readQuantity({ text, unit: 'F', decimal, least: -60, most: 100 });
          const shown = typed.ok
            ? temperature(typed.value, { mass: 'metric', temperature: 'F', decimal }).value
            : typed.problem;
          expect(shown).toBe(text.replace('-', '\u2212').replace('\u22120.0', '0.0'));
        },
      ),
    );
  });
});
