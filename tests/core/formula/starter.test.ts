import { describe, expect, test } from 'vitest';
import { PACK_KEEPS, packAge, starterDose } from '#core/formula/starter.ts';

const PACK = { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg: 0.12, minimumG: 2.5 } as const;
const DAY_MS = 86_400_000;

describe('dose of a culture', () => {
  test('1.2 kg at 0.12 g/kg with at least a quarter of 25 g takes 6.25 g, because of the pack', () => {
    expect(starterDose({ meatG: 1200, amount: PACK, packLeftG: 25 })).toMatchObject({
      doseG: 6.25,
      reason: 'pack-share',
      leftG: 18.75,
    });
  });

  test('the reason is whichever of the three is largest', () => {
    expect(starterDose({ meatG: 100_000, amount: PACK, packLeftG: 25 }).reason).toBe('per-kg');
    const smallPack = { ...PACK, packFraction: 0.05 };
    expect(starterDose({ meatG: 1200, amount: smallPack, packLeftG: 25 })).toMatchObject({
      doseG: 2.5,
      reason: 'minimum',
    });
  });

  test('a pack that is too small says by how much', () => {
    expect(starterDose({ meatG: 1200, amount: PACK, packLeftG: 5 }).leftG).toBe(-1.25);
    expect(() => starterDose({ meatG: 0, amount: PACK, packLeftG: 5 })).toThrow(RangeError);
  });
});

describe('age of a pack', () => {
  const age = (days: number, bestBeforeMs: number | null = null) =>
    packAge({ sinceMs: 0, nowMs: days * DAY_MS, storage: 'frozen-opened', bestBeforeMs });

  test('opened 90 days ago is flagged, 60 days is not (vendors: one to two months, read)', () => {
    expect(PACK_KEEPS['frozen-opened'].keepsDays).toBe(60);
    expect(age(90)).toEqual({ ageDays: 90, keepsDays: 60, flag: 'old' });
    expect(age(60).flag).toBeNull();
  });

  test('past its printed date is said first', () => {
    expect(age(90, 80 * DAY_MS).flag).toBe('expired');
    expect(age(10, 80 * DAY_MS).flag).toBeNull();
  });

  test('a pack cannot be opened tomorrow', () => {
    expect(() => age(-1)).toThrow(RangeError);
  });
});
