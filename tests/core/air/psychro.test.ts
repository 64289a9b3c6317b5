import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  absoluteHumidityGPerM3,
  dewPointC,
  saturationPressurePa,
  vapourPressureDeficitPa,
  vapourPressurePa,
} from '#core/air/psychro.ts';
import { humidityRatio, wetBulbC } from '#core/air/wet-bulb.ts';

type Published = {
  saturation: { tempC: number; if97Pa: number; ashraePa: number; absoluteGPerM3: number }[];
  overIce: { tempC: number; ashraePa: number };
  handbookTable: { pressurePa: Record<string, number>; toleranceFraction: number };
  points: {
    tempC: number;
    humidityPct: number;
    vapourPa: number;
    dewPointC: number;
    deficitPa: number;
    absoluteGPerM3: number;
    wetBulbC: number;
    humidityRatio: number;
  }[];
};
const published: Published = JSON.parse(readFileSync('fixtures/published/air-psychro.json', 'utf8'));
const off = (value: number, reference: number) => Math.abs(value / reference - 1);

describe('moist air', () => {
  it('is saturated where the steam tables say, within 0.05 %', () => {
    for (const { tempC, if97Pa, ashraePa, absoluteGPerM3 } of published.saturation) {
      expect(off(saturationPressurePa({ tempC }), if97Pa)).toBeLessThan(5e-4);
      expect(off(saturationPressurePa({ tempC }), ashraePa)).toBeLessThan(1e-6);
      expect(off(absoluteHumidityGPerM3({ tempC, humidityPct: 100 }), absoluteGPerM3)).toBeLessThan(5e-4);
    }
    const { tempC, ashraePa } = published.overIce;
    expect(off(saturationPressurePa({ tempC }), ashraePa)).toBeLessThan(1e-6);
  });

  it('agrees with the handbook’s printed table within its own tolerance', () => {
    const { pressurePa, toleranceFraction } = published.handbookTable;
    for (const [tempC, pa] of Object.entries(pressurePa).filter(([t]) => t !== '-60'))
      expect(off(saturationPressurePa({ tempC: Number(tempC) }), pa)).toBeLessThan(toleranceFraction);
    // 1.08 Pa is printed to three digits.
    expect(saturationPressurePa({ tempC: -60 })).toBeCloseTo(1.08, 2);
  });

  it('gives vapour pressure, dew point, deficit and absolute humidity of seven chambers', () => {
    for (const {
      tempC,
      humidityPct,
      vapourPa,
      dewPointC: dewC,
      deficitPa,
      absoluteGPerM3,
      ...point
    } of published.points) {
      expect(off(vapourPressurePa({ tempC, humidityPct }), vapourPa)).toBeLessThan(5e-4);
      expect(Math.abs(dewPointC({ tempC, humidityPct }) - dewC)).toBeLessThan(1e-4);
      expect(off(vapourPressureDeficitPa({ tempC, humidityPct }), deficitPa)).toBeLessThan(5e-4);
      expect(off(absoluteHumidityGPerM3({ tempC, humidityPct }), absoluteGPerM3)).toBeLessThan(5e-4);
      expect(off(humidityRatio({ tempC, humidityPct }), point.humidityRatio)).toBeLessThan(5e-4);
      // The other implementation stops at a thousandth of a degree.
      expect(Math.abs(wetBulbC({ tempC, humidityPct }) - point.wetBulbC)).toBeLessThan(2e-3);
    }
  });

  it('agrees with an independent implementation anywhere in a cellar', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    fc.assert(
      fc.property(fc.integer({ min: -150, max: 450 }), fc.integer({ min: 50, max: 1000 }), (dC, permille) => {
        const tempC = dC / 10;
        const humidityPct = permille / 10;
        expect(off(saturationPressurePa({ tempC }), psychrolib.GetSatVapPres(tempC))).toBeLessThan(1e-9);
        const dewC = psychrolib.GetTDewPointFromRelHum(tempC, humidityPct / 100);
        expect(Math.abs(dewPointC({ tempC, humidityPct }) - dewC)).toBeLessThan(2e-3);
        const ratio = psychrolib.GetHumRatioFromRelHum(tempC, humidityPct / 100, 101_325);
        expect(off(humidityRatio({ tempC, humidityPct }), ratio)).toBeLessThan(1e-6);
        const bulbC = psychrolib.GetTWetBulbFromRelHum(tempC, humidityPct / 100, 101_325);
        // Between ice and water the two equations do not meet: there one of the two answers lies on either side of 0 °C.
        if (Math.abs(bulbC) > 0.1)
          expect(Math.abs(wetBulbC({ tempC, humidityPct }) - bulbC)).toBeLessThan(2e-3);
      }),
    );
  });

  it('puts the wet bulb between dew point and air', () => {
    fc.assert(
      fc.property(fc.integer({ min: -150, max: 450 }), fc.integer({ min: 50, max: 1000 }), (dC, permille) => {
        const air = { tempC: dC / 10, humidityPct: permille / 10 };
        const bulbC = wetBulbC(air);
        expect(bulbC).toBeGreaterThanOrEqual(dewPointC(air) - 1e-6);
        expect(bulbC).toBeLessThanOrEqual(air.tempC + 1e-6);
      }),
    );
  });

  it('refuses what cannot be', () => {
    expect(() => wetBulbC({ tempC: 61, humidityPct: 50 })).toThrow(RangeError);
    expect(() => humidityRatio({ tempC: 100, humidityPct: 100, pressurePa: 90_000 })).toThrow(RangeError);

    for (const tempC of [-101, 201, Number.NaN])
      expect(() => saturationPressurePa({ tempC })).toThrow(RangeError);
    for (const humidityPct of [-1, 100.1, Number.NaN])
      expect(() => vapourPressurePa({ tempC: 13, humidityPct })).toThrow(RangeError);
    expect(() => dewPointC({ tempC: 13, humidityPct: 0 })).toThrow(RangeError);
  });
});
