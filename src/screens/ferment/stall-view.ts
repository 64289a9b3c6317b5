import { type StallFacts, type StallStep, stallOf } from '#core/ferment/stall.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

/** A field for each thing that the log does not know. */
export type StallField = 'start' | 'meter' | 'culture' | 'dose' | 'opened' | 'sugar' | 'salt';

export type StallView = {
  readonly sentence: Said;
  readonly known: readonly { label: string; value: string }[];
  readonly fields: readonly StallField[];
  readonly causes: readonly string[];
  readonly steps: readonly { code: StallStep; text: string }[];
  readonly never: readonly string[];
  /** The causes and the facts under them, for the record. */
  readonly cause: string;
};

/** `log`: what was logged; `answers`: what the maker says beside it. Null without a room temperature. */
export function stallView({
  log,
  answers,
  place,
  words,
}: {
  log: StallFacts | null;
  answers: Partial<StallFacts>;
  place: Place;
  words: Words;
}): StallView | null {
  if (log === null) return null;
  const say = words.fermentStall;
  const facts: StallFacts = { ...log, ...answers };
  const { ask } = stallOf(log);
  const { isStalled, likely, steps, never } = stallOf(facts);
  const span = words.dates.span(facts.elapsedHours);
  const { startPh, lastPh } = facts;
  const drop = startPh === undefined || lastPh === undefined ? null : decimal(startPh - lastPh, 2, place);
  const rowsOf = (of: StallFacts) => factRows(of, place, words);
  const causes = likely.map((code) => say.causes[code]);
  return {
    sentence:
      isStalled === null || drop === null
        ? say.sentence.unknown
        : isStalled
          ? say.sentence.stalled(span, drop)
          : say.sentence.notYet(span, drop),
    known: rowsOf(log),
    fields: [
      ...(ask.includes('start-ph') ? (['start'] as const) : []),
      ...(ask.includes('meter-check') ? (['meter'] as const) : []),
      ...(log.hasCulture === false || log.cultureGPerKg !== undefined ? [] : (['culture'] as const)),
      ...(log.hasCulture === false || log.cultureDoseGPerKg !== undefined ? [] : (['dose'] as const)),
      ...(ask.includes('culture-age') ? (['opened'] as const) : []),
      ...(ask.includes('sugar') ? (['sugar'] as const) : []),
      ...(ask.includes('salt') ? (['salt'] as const) : []),
    ],
    causes,
    steps: steps.map((code) => ({ code, text: say.step[code] })),
    never: never.map((code) => say.neverTitle(say.never[code])),
    cause: [
      ...(causes.length > 0 ? causes : [say.unexplained]),
      rowsOf(facts)
        .map(({ label, value }) => `${label} ${value}`)
        .join(', '),
    ]
      .join(' ')
      .slice(0, 1000),
  };
}

function factRows(facts: StallFacts, place: Place, words: Words): StallView['known'] {
  const { labels, meter, none, perKg, strip } = words.fermentStall;
  const { startPh, lastPh, lastMethod, meterCheckedOk, hasCulture } = facts;
  const ph = (value: number) => decimal(value, 2, place);
  const pct = (value: number, places: number) => joined({ value: decimal(value, places, place), unit: '%' });
  const grams = (value: number) => perKg(decimal(value, 2, place));
  const row = (label: string, value: string | undefined) => (value === undefined ? [] : [{ label, value }]);
  const shown = <T>(value: T | undefined, as: (value: T) => string) =>
    value === undefined ? undefined : as(value);
  return [
    ...row(labels.room, joined(temperature(facts.roomC, place))),
    ...row(labels.start, shown(startPh, ph)),
    ...row(
      labels.last,
      shown(lastPh, (value) => (lastMethod === 'strip' ? strip(ph(value)) : ph(value))),
    ),
    ...row(
      labels.meter,
      shown(meterCheckedOk, (good) => (good ? meter.good : meter.failed)),
    ),
    ...row(labels.culture, hasCulture === false ? none : shown(facts.cultureGPerKg, grams)),
    ...row(labels.dose, shown(facts.cultureDoseGPerKg, grams)),
    ...row(
      labels.opened,
      shown(facts.cultureOpenedDays, (days) => words.dates.span(days * 24)),
    ),
    ...row(
      labels.sugar,
      shown(facts.dextrosePct, (value) => pct(value, 2)),
    ),
    ...row(
      labels.salt,
      shown(facts.saltPct, (value) => pct(value, 1)),
    ),
  ];
}
