import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DRYING_CRITERIA, type DryingReading, judgeDrying } from '#core/rules/drying-criteria.ts';

type Case = {
  id: string;
  topic: string;
  input: { pH?: number; aw?: number; mpr?: number; phEndFermentation?: number; finalPh?: number };
  expected: { unableToSupportGrowth?: boolean; shelfStableByPolicyBook?: boolean; shelfStable?: boolean };
};
const { cases }: { cases: Case[] } = JSON.parse(
  readFileSync('fixtures/published/drying-criteria.json', 'utf8'),
);
const read = (value: number): DryingReading => ({ value, measured: true });
const criterion = (rule: string) => {
  const found = DRYING_CRITERIA.find((one) => one.rule === rule);
  if (!found) throw new Error(`no criterion ${rule}`);
  return found;
};
const finished = (rule: string, readings: Parameters<typeof judgeDrying>[0]['readings']) =>
  judgeDrying({ criterion: criterion(rule), readings, stillDrying: false });

describe('published criteria of a finished product', () => {
  for (const { id, topic, input, expected } of cases)
    if (topic === 'listeria-no-growth-eu')
      it(`${id}: Listeria pair`, () => {
        const { verdict } = finished('listeria-no-growth', {
          ph: read(input.pH ?? 0),
          aw: read(input.aw ?? 0),
        });
        expect(verdict).toBe(expected.unableToSupportGrowth ? 'within-limit' : 'deviation');
      });
  it('holds moisture to protein against the label classes', () => {
    expect(finished('dry-sausage-shelf-stable', { mpr: read(1.91), ph: read(5.4) }).verdict).toBe(
      'deviation',
    );
    expect(finished('semi-dry-sausage-shelf-stable', { mpr: read(3.1), ph: read(5) }).verdict).toBe(
      'within-limit',
    );
  });
  it('takes the Canadian pair of pH after the ferment and water activity, and names what must hold beside it', () => {
    const good = { 'ph-after-ferment': read(5.1), ph: read(5.2), aw: read(0.9) };
    expect(finished('shelf-stable', good).verdict).toBe('within-limit');
    expect(finished('shelf-stable', { ...good, aw: read(0.91) }).verdict).toBe('deviation');
    expect(criterion('shelf-stable').alongside).toEqual(['cure-in-least', 'salt-in-least', 'degree-hours']);
  });
  it('says what to measure where nothing was', () => {
    const { verdict, missing } = finished('listeria-no-growth', { ph: read(5.2) });
    expect(verdict).toBe('no-reading');
    expect(missing).toEqual(['aw']);
  });
  it('stays pending while the product dries, whatever was read', () => {
    const readings = { ph: read(4.3), aw: read(0.85) };
    expect(
      judgeDrying({ criterion: criterion('listeria-no-growth'), readings, stillDrying: true }).verdict,
    ).toBe('pending');
  });
  it('is never met and never broken by an estimate', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 1000 }),
        fc.constantFrom(...DRYING_CRITERIA),
        (permille, one) => {
          const guess = { value: permille / 1000, measured: false };
          const readings = { aw: guess, mpr: guess, ph: guess, 'ph-after-ferment': guess };
          expect(judgeDrying({ criterion: one, readings, stillDrying: false }).verdict).toBe('no-reading');
        },
      ),
    );
    expect(() => finished('pepperoni', { mpr: read(Number.NaN) })).toThrow(RangeError);
  });
});
