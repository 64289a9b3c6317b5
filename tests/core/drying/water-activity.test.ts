import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equilibriumLossPct, mixFromFat } from '#core/drying/equilibrium.ts';
import { mixAw, naclAw, proteinAw } from '#core/drying/water-activity.ts';

type Brine = {
  rows: { molality: number; awPitzer: number; awMay2011: number; awRobinsonStokes?: number }[];
  saturatedErhPct: { '25C': number };
};
type Track = {
  mix: { water: number; protein: number; salt: number; sugar: number };
  track: { loss_pct: number; aw_model: number }[];
};
type Equilibrium = {
  saltFraction: number;
  sugarFraction: number;
  humidityPct: number[];
  byFat: Record<string, { water: number; final: number[] }>;
};
const brine: Brine = JSON.parse(readFileSync('fixtures/published/drying-brine-aw.json', 'utf8'));
const track: Track = JSON.parse(readFileSync('fixtures/published/drying-composition-track.json', 'utf8'));
const equilibrium: Equilibrium = JSON.parse(
  readFileSync('fixtures/published/drying-equilibrium.json', 'utf8'),
);

const mix = {
  waterFraction: track.mix.water,
  proteinFraction: track.mix.protein,
  saltFraction: track.mix.salt,
  sugarFraction: track.mix.sugar,
};

describe('water activity of brine', () => {
  it('agrees with Robinson and Stokes and with a newer set within 0.001 up to saturation', () => {
    for (const row of brine.rows) {
      const aw = naclAw({ molalityMolPerKg: row.molality });
      expect(Math.abs(aw - row.awPitzer)).toBeLessThan(1e-5);
      expect(Math.abs(aw - row.awMay2011)).toBeLessThan(1e-3);
      if (row.awRobinsonStokes !== undefined) expect(Math.abs(aw - row.awRobinsonStokes)).toBeLessThan(1e-3);
    }
  });

  it('comes to rest over saturated brine at 75.3 %', () => {
    expect(Math.abs(naclAw({ molalityMolPerKg: 6.144 }) - brine.saturatedErhPct['25C'] / 100)).toBeLessThan(
      1e-3,
    );
  });

  it('does not reach past saturation', () => {
    for (const bad of [-0.1, 6.2, Number.NaN])
      expect(() => naclAw({ molalityMolPerKg: bad })).toThrow(RangeError);
  });
});

describe('water activity of a drying mix', () => {
  it('follows the composition track', () => {
    for (const point of track.track)
      expect(Math.abs(mixAw({ mix, lossPct: point.loss_pct }) - point.aw_model)).toBeLessThan(1e-3);
  });

  // Techniques de l'Ingénieur, F 6 507, section 5.1 (read): stuffed 0.95 to 0.97, at about 40 % loss 0.87 to 0.90.
  it('lies where a French dry sausage of 20 % fat was found, fresh and ripe', () => {
    const french = mixFromFat({ fatFraction: 0.2, saltFraction: 0.027, sugarFraction: 0.005 });
    const fresh = mixAw({ mix: french, lossPct: 0 });
    const ripe = mixAw({ mix: french, lossPct: 40 });
    expect(fresh).toBeGreaterThan(0.95);
    expect(fresh).toBeLessThan(0.97);
    expect(ripe).toBeGreaterThan(0.87);
    expect(ripe).toBeLessThan(0.9);
  });

  it('solves the isotherm that it is the inverse of', () => {
    for (const aw of [0.3, 0.6, 0.75, 0.85, 0.95]) {
      const k = 0.94 * aw;
      const waterKgPerKg = (0.065 * 12 * k) / ((1 - k) * (1 - k + 12 * k));
      expect(proteinAw({ waterKgPerKg })).toBeCloseTo(aw, 10);
    }
    for (const bad of [0, -1, Number.NaN]) expect(() => proteinAw({ waterKgPerKg: bad })).toThrow(RangeError);
  });

  it('falls with every further loss', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 560 }), fc.integer({ min: 1, max: 20 }), (permille, step) => {
        const less = mixAw({ mix, lossPct: permille / 10 });
        const more = mixAw({ mix, lossPct: (permille + step) / 10 });
        expect(more).toBeLessThan(less);
      }),
    );
  });

  it('refuses a mix of nothing and a loss of all its water', () => {
    expect(() => mixAw({ mix: { ...mix, waterFraction: 0 }, lossPct: 0 })).toThrow(RangeError);
    expect(() => mixAw({ mix: { ...mix, saltFraction: Number.NaN }, lossPct: 0 })).toThrow(RangeError);
    expect(() => mixAw({ mix: { ...mix, proteinFraction: 0.9 }, lossPct: 0 })).toThrow(RangeError);
    expect(() => mixAw({ mix, lossPct: 58.2 })).toThrow(RangeError);
    expect(() => mixAw({ mix, lossPct: Number.NaN })).toThrow(RangeError);
  });
});

describe('loss at rest with the air', () => {
  it('agrees with the table by fat and humidity', () => {
    const { saltFraction, sugarFraction } = equilibrium;
    for (const [fat, row] of Object.entries(equilibrium.byFat)) {
      const fatMix = mixFromFat({ fatFraction: Number(fat), saltFraction, sugarFraction });
      expect(Math.abs(fatMix.waterFraction - row.water)).toBeLessThan(0.001);
      equilibrium.humidityPct.forEach((humidityPct, i) => {
        const lossPct = equilibriumLossPct({ mix: fatMix, humidityPct });
        expect(Math.abs(lossPct - 100 * (row.final[i] ?? Number.NaN))).toBeLessThan(0.15);
      });
    }
  });

  it('is nothing in air as wet as the piece, and all but the last water in dry air', () => {
    expect(equilibriumLossPct({ mix, humidityPct: 97 })).toBe(0);
    expect(equilibriumLossPct({ mix, humidityPct: 100 })).toBe(0);
    const bone = equilibriumLossPct({ mix, humidityPct: 0 });
    expect(bone).toBeGreaterThan(57);
    expect(bone).toBeLessThanOrEqual(100 * mix.waterFraction);
    for (const bad of [-1, 101, Number.NaN])
      expect(() => equilibriumLossPct({ mix, humidityPct: bad })).toThrow(RangeError);
  });

  it('is where the mix has the air’s own water activity', () => {
    fc.assert(
      fc.property(fc.integer({ min: 300, max: 955 }), (permille) => {
        const lossPct = equilibriumLossPct({ mix, humidityPct: permille / 10 });
        expect(mixAw({ mix, lossPct })).toBeCloseTo(permille / 1000, 9);
      }),
    );
  });

  it('refuses a mix with no lean', () => {
    expect(() => mixFromFat({ fatFraction: 1, saltFraction: 0, sugarFraction: 0 })).toThrow(RangeError);
    expect(() => mixFromFat({ fatFraction: 0.2, saltFraction: -0.1, sugarFraction: 0 })).toThrow(RangeError);
  });
});
