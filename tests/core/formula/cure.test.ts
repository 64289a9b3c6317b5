import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  asSodiumMgPerKg,
  type CureSalt,
  cureForNitriteG,
  ionMgPerKg,
  ionUpperMgPerKg,
  molarIonFraction,
  nitriteMgPerKg,
  saltPctOfCure,
} from '#core/formula/cure.ts';

type Published = {
  ppm: { id: string; meatG: number; cureG: number; nitritePct: number; mgPerKg: number; tolerance: number }[];
  ions: { salt: CureSalt; mgPerKg: number; exactMgPerKg: number; factor: number; tolerance: number }[];
  euMaximumNitritedSalt: { limitIonMgPerKg: number; nitritePct: number; gPerKg: number }[];
  cureBySaltOunces: { nitritePct: number; nitratePct: number; saltPct: number; tolerance: number };
};
const published: Published = JSON.parse(readFileSync('fixtures/published/nitrite.json', 'utf8'));

describe('nitrite from a label', () => {
  test.each(published.ppm)('$id comes to $mgPerKg mg/kg', ({ mgPerKg, tolerance, ...dose }) => {
    expect(Math.abs(nitriteMgPerKg(dose) - mgPerKg)).toBeLessThanOrEqual(tolerance);
  });

  test('the dose from another bag gives the same nitrite', () => {
    for (const { meatG, mgPerKg, nitritePct } of published.ppm) {
      const cureG = cureForNitriteG({ nitriteMgPerKg: mgPerKg, nitritePct, meatG });
      expect(nitriteMgPerKg({ cureG, nitritePct, meatG })).toBeCloseTo(mgPerKg, 9);
    }
  });

  test('a bag without nitrite cannot carry a dose of it', () => {
    expect(() => cureForNitriteG({ nitriteMgPerKg: 100, nitritePct: 0, meatG: 1000 })).toThrow(RangeError);
  });

  test('no meat has no concentration', () => {
    expect(() => nitriteMgPerKg({ cureG: 1, nitritePct: 6.25, meatG: 0 })).toThrow(RangeError);
    expect(() => nitriteMgPerKg({ cureG: 1, nitritePct: 6.25, meatG: Number.NaN })).toThrow(RangeError);
  });
});

describe('ions', () => {
  test.each(published.ions)('$salt by molar mass and by the published factor', (row) => {
    expect(Math.abs(molarIonFraction(row.salt) * row.mgPerKg - row.exactMgPerKg)).toBeLessThanOrEqual(
      row.tolerance,
    );
    expect(ionMgPerKg(row)).toBeCloseTo(row.factor * row.mgPerKg, 3);
  });

  test('the upper end is never below the published or the molar figure', () => {
    for (const { salt, mgPerKg } of published.ions) {
      const upperMgPerKg = ionUpperMgPerKg({ salt, mgPerKg });
      expect(upperMgPerKg).toBeGreaterThanOrEqual(ionMgPerKg({ salt, mgPerKg }));
      expect(upperMgPerKg).toBeGreaterThanOrEqual(molarIonFraction(salt) * mgPerKg);
    }
  });

  test('148 of the potassium salt is 120 of the sodium salt (FSIS Directive 7620.3, read second-hand)', () => {
    expect(asSodiumMgPerKg({ salt: 'KNO2', mgPerKg: 148 })).toBeCloseTo(120, 1);
  });

  test.each(published.euMaximumNitritedSalt)('at most $gPerKg g/kg of a $nitritePct % salt', (row) => {
    const saltMgPerKg = row.limitIonMgPerKg / ionMgPerKg({ mgPerKg: 1, salt: 'NaNO2' });
    const most = cureForNitriteG({ nitriteMgPerKg: saltMgPerKg, nitritePct: row.nitritePct, meatG: 1000 });
    expect(Math.floor(most * 10) / 10).toBe(row.gPerKg);
  });
});

describe('salt in a cure', () => {
  test('is what the label leaves', () => {
    const { saltPct, tolerance, ...label } = published.cureBySaltOunces;
    const salts = { nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } as const;
    expect(Math.abs(saltPctOfCure({ ...label, ...salts }) - saltPct)).toBeLessThanOrEqual(tolerance + 1e-9);
  });

  test('refuses a label that adds up to more than the bag', () => {
    expect(() =>
      saltPctOfCure({ nitritePct: 60, nitratePct: 50, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' }),
    ).toThrow(RangeError);
  });
});
