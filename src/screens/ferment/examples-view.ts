import { bufferPh, meterCheck, nernstMvPerPh } from '#core/ferment/meter-check.ts';
import {
  BUFFER_SOURCES,
  exampleHere,
  HOURS_TABLES,
  hoursHere,
  METER_EXAMPLES,
  SLOPES_QUOTED,
  WORKED_EXAMPLES,
  WORKED_SOURCES,
} from '#core/ferment/published-examples.ts';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import type { Source } from '#core/rules/rule.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type ExampleTable = {
  readonly title: string;
  readonly note: string | null;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly source: { readonly text: string; readonly standing: string };
};

export type ExamplesView = {
  readonly sentence: Said;
  readonly worked: readonly {
    readonly key: string;
    readonly title: string;
    readonly published: string;
    readonly here: string;
    readonly agrees: boolean;
    readonly source: ExampleTable['source'];
  }[];
  readonly tables: readonly ExampleTable[];
};

const SETS = ['US', 'CA'] as const;
const BUFFER_STEP_C = 5;
/** What the print itself leaves open: its sums have one place. */
const PRINTED_DEGREE_HOURS = 0.05;

/** The examples in the units in which they were printed, since a class hangs on them. */
export function examplesView(words: Words, place: Place): ExamplesView {
  const worked = workedRows(words, place);
  const say = words.fermentExamples;
  return {
    sentence: say.sentence(worked.filter(({ agrees }) => agrees).length, worked.length),
    worked,
    tables: [
      ...SETS.map((ruleSet) => hoursTable(ruleSet, words, place)),
      meterTable(words, place),
      slopeTable(words, place),
      ...BUFFER_SOURCES.map(({ buffers, source }) => ({
        title: say.buffersTitle(buffers.join(', ')),
        note: null,
        columns: [say.bufferColumn, ...buffers],
        rows: Array.from({ length: 11 }, (_, row) => [
          `${row * BUFFER_STEP_C}\u00a0°C`,
          ...buffers.map((buffer) => decimal(bufferPh({ buffer, bufferC: row * BUFFER_STEP_C }), 2, place)),
        ]),
        source: sourceOf(source, words),
      })),
    ],
  };
}

function workedRows(words: Words, place: Place): ExamplesView['worked'] {
  const say = words.fermentExamples;
  const verdict = (passes: boolean) => (passes ? say.passes : say.fails);
  const count = (value: number) => decimal(value, 1, place, 'up');
  return WORKED_EXAMPLES.map((example) => {
    const { ruleSet, steps, totalDegreeHours, limitDegreeHours, passes } = example;
    const here = exampleHere(example);
    const sum = here.sum?.totalDegreeHours ?? Number.NaN;
    const degrees = (deg: number) => `${decimal(deg, 0, place)}\u00a0°${DEGREE_HOUR_RULES[ruleSet].unit}`;
    const program = steps
      .map(({ roomDeg, durationHours }) =>
        say.step(degrees(roomDeg), `${decimal(durationHours, 0, place)}\u00a0h`),
      )
      .join(', ');
    return {
      key: `${ruleSet} ${program}`,
      title: `${say.rules[ruleSet]}: ${program}`,
      published: say.of(count(totalDegreeHours), decimal(limitDegreeHours, 0, place), verdict(passes)),
      here: say.of(count(sum), decimal(here.limitDegreeHours, 0, place), verdict(here.passes)),
      agrees:
        Math.abs(sum - totalDegreeHours) < PRINTED_DEGREE_HOURS &&
        here.limitDegreeHours === limitDegreeHours &&
        here.passes === passes,
      source: sourceOf(WORKED_SOURCES[ruleSet], words),
    };
  });
}

function hoursTable(ruleSet: 'US' | 'CA', words: Words, place: Place): ExampleTable {
  const say = words.fermentExamples;
  const { rows, places, source } = HOURS_TABLES[ruleSet];
  return {
    title: say.hoursTitle[ruleSet],
    note: say.hoursNote[ruleSet],
    columns: say.hoursColumns,
    rows: rows.map(({ roomDeg, durationHours }) => [
      `${decimal(roomDeg, 0, place)}\u00a0°${DEGREE_HOUR_RULES[ruleSet].unit}`,
      decimal(durationHours, places, place),
      decimal(hoursHere(ruleSet, roomDeg) ?? Number.NaN, places, place, 'down'),
    ]),
    source: sourceOf(source, words),
  };
}

/** The buffers of the print lie 3.00 apart, as 7.00 and 4.00 do at 25 °C. */
function meterTable(words: Words, place: Place): ExampleTable {
  const say = words.fermentExamples;
  const mv = (value: number) => `${decimal(value, 0, place)}\u00a0mV`;
  const pct = (value: number) => `${decimal(value, 1, place)}\u00a0%`;
  return {
    title: say.metersTitle,
    note: null,
    columns: say.meterColumns,
    rows: METER_EXAMPLES.rows.map(({ sevenMv, fourMv, offsetMv, slopePct }) => {
      const { slopePct: here, finding } = meterCheck({
        readings: [
          { buffer: '7.00', bufferC: 25, value: sevenMv, unit: 'mV' },
          { buffer: '4.00', bufferC: 25, value: fourMv, unit: 'mV' },
        ],
        atMs: 0,
      });
      return [
        `${mv(sevenMv)}, ${mv(fourMv)}`,
        mv(offsetMv),
        pct(slopePct),
        `${pct(here ?? Number.NaN)}, ${words.verdicts.verdict(finding.verdict)}`,
      ];
    }),
    source: sourceOf(METER_EXAMPLES.source, words),
  };
}

function slopeTable(words: Words, place: Place): ExampleTable {
  const say = words.fermentExamples;
  return {
    title: say.slopesTitle,
    note: null,
    columns: say.slopeColumns,
    rows: SLOPES_QUOTED.rows.map(({ tempC, slopeMvPerPh }) => [
      `${tempC}\u00a0°C`,
      decimal(slopeMvPerPh, Number.isInteger(slopeMvPerPh) ? 0 : 2, place),
      decimal(nernstMvPerPh(tempC), 2, place),
    ]),
    source: sourceOf(SLOPES_QUOTED.source, words),
  };
}

function sourceOf(source: Source, words: Words): ExampleTable['source'] {
  return words.workings.source(source);
}
