import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { HOURS_TABLES, METER_EXAMPLES, WORKED_EXAMPLES } from '#core/ferment/published-examples.ts';
import { place as foldPlace } from '#record/place.ts';
import { examplesView } from '#screens/ferment/examples-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';

type Row = { readonly roomDeg: number; readonly hours: number };
type Example = {
  readonly id: string;
  readonly ruleSet: 'US' | 'CA';
  readonly steps: readonly { readonly hours: number; readonly temperature: number }[];
  readonly totalDegreeHours: number;
  readonly limit: number;
  readonly verdict: string;
};
const published: {
  examples: readonly Example[];
  hoursTableUS: { rows: readonly Row[] };
  hoursTableCA: { rows: readonly Row[] };
} = JSON.parse(readFileSync('fixtures/published/ferment-degree-hours.json', 'utf8'));
const meters: {
  buffers: { rows: readonly { buffer: string; bufferC: number; ph: number }[] };
  nernst: { rows: readonly { tempC: number; mvPerPh: number }[] };
  examples: {
    rows: readonly { mvNear7: number; mvNear4: number; offsetMv: number; slopePct: number }[];
  };
} = JSON.parse(readFileSync('fixtures/published/ferment-ph-meter.json', 'utf8'));
const view = examplesView(words, foldPlace([]));
const table = (title: string) => view.tables.find((each) => each.title.includes(title));

describe('the page of published examples', () => {
  it('holds every worked example as it was published, and this app agrees with each', () => {
    const asHere = published.examples
      .filter(({ id }) => /-[CV]\d$/.test(id))
      .map(({ ruleSet, steps, totalDegreeHours, limit, verdict }) => ({
        ruleSet,
        steps: steps.map(({ hours, temperature }) => ({ roomDeg: temperature, durationHours: hours })),
        totalDegreeHours,
        limitDegreeHours: limit,
        passes: verdict === 'within-limit',
      }));
    expect(asHere).toHaveLength(8);
    expect(WORKED_EXAMPLES).toEqual(asHere);
    expect(plainText(view.sentence)).toContain('8 of 8 worked examples');
    expect(view.worked.map(({ here, published: printed }) => here === printed)).not.toContain(false);
  });

  it('shows each row of both hours tables beside what it gives itself, never the longer', () => {
    const rows = ({ rows: of }: { rows: readonly Row[] }) =>
      of.map(({ roomDeg, hours }) => ({ roomDeg, durationHours: hours }));
    expect(HOURS_TABLES.US.rows).toEqual(rows(published.hoursTableUS));
    expect(HOURS_TABLES.CA.rows).toEqual(rows(published.hoursTableCA));
    expect(table('United States')?.rows.map(([, printed, here]) => [printed, here])).toEqual(
      published.hoursTableUS.rows.map(({ hours }) => [String(hours), String(hours)]),
    );
    const canada = table('Canada')?.rows ?? [];
    expect(canada).toHaveLength(19);
    for (const [, printed, here] of canada) {
      expect(Number(here)).toBeLessThanOrEqual(Number(printed) + 0.1);
      expect(Number(here)).toBeGreaterThan(Number(printed) - 0.5);
    }
  });

  it('shows both electrodes, the ideal slopes and each buffer of a check as they were published', () => {
    expect(METER_EXAMPLES.rows).toEqual(
      meters.examples.rows.map(({ mvNear7, mvNear4, offsetMv, slopePct }) => ({
        sevenMv: mvNear7,
        fourMv: mvNear4,
        offsetMv,
        slopePct,
      })),
    );
    expect(table('electrodes')?.rows.map((row) => row.at(-1))).toEqual([
      '98.6\u00a0%, within limit',
      '81.7\u00a0%, deviation',
    ]);
    expect(table('Ideal slope')?.rows.map((row) => row[1])).toEqual(
      meters.nernst.rows.map(({ mvPerPh }) => String(mvPerPh)),
    );
    for (const { buffer, bufferC, ph } of meters.buffers.rows) {
      const shown = view.tables.find(({ columns }) => columns.includes(buffer));
      if (!shown || bufferC % 5 !== 0) continue;
      const row = shown.rows.find(([at]) => at === `${bufferC}\u00a0°C`);
      expect([buffer, bufferC, row?.[shown.columns.indexOf(buffer)]]).toEqual([
        buffer,
        bufferC,
        ph.toFixed(2),
      ]);
    }
  });

  it('names for each where it stood and how it came to be known', () => {
    for (const { source } of [...view.worked, ...view.tables]) {
      expect(source.text).not.toBe('');
      expect(source.standing).not.toBe('');
    }
  });
});
