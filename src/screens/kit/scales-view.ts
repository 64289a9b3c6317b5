import { BENCH_TOLERANCE_PCT, weighingErrorG } from '#core/formula/scale-error.ts';
import type { Source } from '#core/rules/rule.ts';
import { type MassUnit, massFromG } from '#core/units.ts';
import type { Entry, EntryId, EntryOf } from '#record/entry.ts';
import { ofKind } from '#record/fold.ts';
import type { Typed } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { live } from '#record/strikes.ts';
import type { SubjectId } from '#record/subject.ts';
import type { WorkingText } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { joined } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type InstrumentRow = {
  readonly entry: EntryId;
  readonly subject: SubjectId;
  readonly name: string;
  readonly note: string;
};

export type ScalesView = {
  readonly sentence: Said;
  readonly dose: { value: string; unit: string; note: string; working: WorkingText } | null;
  readonly scales: readonly InstrumentRow[];
  readonly meters: readonly InstrumentRow[];
};

const ROUNDING_OF_A_DISPLAY: Source = {
  body: '',
  title: 'half a step at the reading, half at the tare',
  section: '',
  standing: 'derived',
};
const BENCH_TOLERANCE: Source = {
  body: '',
  title: 'tolerance of the bench',
  section: '',
  standing: 'memory-medium',
};

/** Scales finest first, then the meters. `entries` are all that touch an instrument. */
export function scalesView(entries: readonly Entry[], place: Place, words: Words): ScalesView {
  const say = words.kit.scales;
  const standing = live(entries);
  const scales = lastOfEach(ofKind(standing, 'scale-added')).sort((a, b) => a.body.stepG - b.body.stepG);
  const finest = scales.at(0);
  return {
    sentence: finest ? say.sentence(stepText(finest, place)) : say.none,
    dose: finest ? doseOf(finest, place, words) : null,
    scales: scales.map((entry) => ({
      entry: entry.id,
      subject: entry.subject,
      name: entry.body.name,
      note: [
        say.step(stepText(entry, place)),
        ...(entry.body.mostG === undefined
          ? []
          : [say.most(asTyped(entry.body.mostG, entry.body.typed?.mostG, place))]),
      ].join(', '),
    })),
    meters: lastOfEach(ofKind(standing, 'meter-added')).map(({ id, subject, body }) => ({
      entry: id,
      subject,
      name: body.name,
      note: body.name === say.meterName[body.what] ? '' : say.meterName[body.what],
    })),
  };
}

function lastOfEach<T extends Entry>(entries: readonly T[]): T[] {
  return [...new Map(entries.map((entry) => [entry.subject, entry])).values()];
}

function stepText({ body }: EntryOf<'scale-added'>, place: Place): string {
  return asTyped(body.stepG, body.typed?.stepG, place);
}

/** What a scale says of itself, in the unit it was typed in: never rounded, and never turned into another unit. */
function asTyped(massG: number, typed: Typed[string] | undefined, place: Place): string {
  const unit = typed && isMassUnit(typed.unit) ? typed.unit : 'g';
  return joined({ value: shortest(massFromG({ massG, unit }), place), unit });
}

function isMassUnit(unit: string): unit is MassUnit {
  return unit === 'g' || unit === 'kg' || unit === 'oz' || unit === 'lb';
}

function shortest(value: number, place: Place): string {
  return String(Number(value.toPrecision(6))).replace('.', place.decimal);
}

function doseOf(finest: EntryOf<'scale-added'>, place: Place, words: Words): NonNullable<ScalesView['dose']> {
  const say = words.kit.scales;
  const { stepG } = finest.body;
  const nearPct = BENCH_TOLERANCE_PCT.cure;
  const dose = {
    value: shortest((100 * weighingErrorG({ stepG, portions: 1 })) / nearPct, place),
    unit: 'g',
  };
  const near = joined({ value: shortest(nearPct, place), unit: '%' });
  return {
    ...dose,
    note: say.doseNote(near),
    working: {
      title: say.doseTitle,
      equation: say.doseEquation,
      rows: [
        { label: say.doseStep, value: stepText(finest, place), note: finest.body.name },
        { label: say.doseNear, value: near },
      ],
      result: { label: say.dose, value: joined(dose) },
      caution: say.doseCaution,
      sources: [ROUNDING_OF_A_DISPLAY, BENCH_TOLERANCE].map(words.workings.source),
      words: words.workings.words,
    },
  };
}
