import fc from 'fast-check';
import { expect, test } from 'vitest';
import { equilibriumCure } from '#core/formula/whole-muscle.ts';

const CURE = { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } as const;

test('1,000 g at 3 % in total with 0.25 % cure takes 27.76 g salt and 2.5 g cure (arithmetic, derived)', () => {
  const cured = equilibriumCure({ pieceG: 1000, totalSaltPct: 3, curePct: 0.25, label: CURE });
  expect(cured?.saltG).toBeCloseTo(27.76, 2);
  expect(cured?.cureG).toBe(2.5);
});

test('all salt together is what was wanted (property)', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 100, max: 8000 }),
      fc.integer({ min: 150, max: 500 }),
      fc.integer({ min: 0, max: 150 }),
      (pieceG, saltHundredths, cureHundredths) => {
        const totalSaltPct = saltHundredths / 100;
        const cured = equilibriumCure({ pieceG, totalSaltPct, curePct: cureHundredths / 100, label: CURE });
        const all = (cured?.saltG ?? 0) + (cured?.cureG ?? 0) * 0.8975;
        expect(all).toBeCloseTo((pieceG * totalSaltPct) / 100, 9);
      },
    ),
  );
});

test('a nitrited salt that carries more than the salt wanted is refused', () => {
  const label = { ...CURE, nitritePct: 0.5, nitratePct: 0 };
  expect(equilibriumCure({ pieceG: 1000, totalSaltPct: 2.5, curePct: 2.8, label })).toBeNull();
  expect(() => equilibriumCure({ pieceG: 0, totalSaltPct: 3, curePct: 0, label })).toThrow(RangeError);
});
