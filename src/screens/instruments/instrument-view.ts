import { iceCheck, WET_SALT_LIMIT, wetSaltCheck } from '#core/ferment/instrument-check.ts';
import {
  correctedPh,
  METER_CHECK_DUE_HOURS,
  METER_LIMITS,
  nernstMvPerPh,
} from '#core/ferment/meter-check.ts';
import { COUNTED_UNTIL_PH } from '#core/ferment/ph-reading.ts';
import type { Finding, Limit } from '#core/rules/rule.ts';
import type { Batch } from '#record/batch.ts';
import type { EntryOf } from '#record/entry.ts';
import { type Check, hasFailed, meterCheckOf, scaleCheckOf } from '#record/instruments.ts';
import type { Meter, Place, Scale } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { WorkingText } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, temperature } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';

export type What = Meter['what'] | 'scale';
export type Instrument = {
  readonly id: SubjectId;
  readonly name: string;
  readonly what: What;
  /** Of a scale. */
  readonly stepG?: number;
};
type FigureText = {
  key: string;
  label: string;
  value: string;
  unit?: string;
  note?: string;
  about?: boolean;
};

export type InstrumentView = {
  readonly sentence: Said;
  readonly verdict: { verdict: VerdictShape; word: string } | null;
  readonly figures: readonly FigureText[];
  readonly working: WorkingText | null;
  readonly history: readonly { key: string; title: string; note: string }[];
  /** After a failed check: what was read with it since the last good one. */
  readonly since: readonly { key: string; href: string; title: string; note: string }[];
};

type Given = {
  instrument: Instrument;
  /** Of this instrument, in order. */
  checks: readonly Check[];
  batches?: readonly Batch[] | undefined;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};

const HOUR_MS = 3_600_000;

export function instrumentsOf(scales: readonly Scale[], meters: readonly Meter[]): Instrument[] {
  return [...meters, ...scales.map(({ id, name, stepG }) => ({ id, name, stepG, what: 'scale' as const }))];
}

/** Null where no rule of the trade says how often. */
export function nextDueMs(instrument: Instrument, last: Check | undefined): number | null {
  return instrument.what === 'ph-meter' && last ? last.atMs + METER_CHECK_DUE_HOURS * HOUR_MS : null;
}

export function instrumentView(given: Given): InstrumentView {
  const { instrument, checks, words } = given;
  const say = words.instruments;
  const last = checks.at(-1);
  if (!last)
    return {
      sentence: say.one.how[instrument.what],
      verdict: null,
      figures: [],
      working: null,
      history: [],
      since: [],
    };
  const finding = findingOf(last);
  return {
    sentence: said(...lastSentence(last, given), ...dueSentence(last, given)),
    verdict: finding && {
      verdict: finding.verdict,
      word: [
        `${say.rule[finding.rule] ?? finding.rule}: ${words.verdicts.verdict(finding.verdict)}`,
        ...finding.missing.map((code) => say.missing[code] ?? code),
      ].join(', '),
    },
    figures: figuresOf(last, given),
    working: workingOf(last, given),
    history: [...checks].reverse().map((check) => ({
      key: check.id,
      title: words.dates.full(check.atMs, check.zone),
      note: historyNote(check, given),
    })),
    since: hasFailed(last) ? sinceLastGood(given) : [],
  };
}

function sinceLastGood({
  instrument,
  checks,
  batches = [],
  nowMs,
  zone,
  place,
  words,
}: Given): InstrumentView['since'] {
  const goodMs = checks.findLast((check) => !hasFailed(check))?.atMs ?? 0;
  return batches
    .flatMap(({ id, opened, ph, room }) => {
      const entries = [
        ...ph.map((entry) => ({
          ...entry,
          by: entry.body.meter,
          title: `pH ${decimal(entry.body.ph, 2, place)}`,
        })),
        ...room.map((entry) => ({
          ...entry,
          by: entry.body.thermometer,
          title: joined(temperature(entry.body.roomC, place)),
        })),
      ];
      return entries
        .filter(({ by, atMs }) => by === instrument.id && atMs > goodMs)
        .map((entry) => ({
          key: entry.id,
          atMs: entry.atMs,
          href: `#/batches/${id.slice('batch:'.length)}/ferment`,
          title: entry.title,
          note: words.instruments.sinceNote(opened.body.lot, words.dates.near(entry.atMs, nowMs, zone)),
        }));
    })
    .sort((a, b) => b.atMs - a.atMs)
    .map(({ atMs: _, ...row }) => row);
}

function findingOf(check: Check): Finding | null {
  switch (check.kind) {
    case 'meter-checked':
      return meterCheckOf(check).finding;
    case 'thermometer-checked':
      return iceCheck(check.body).finding;
    case 'hygrometer-checked':
      return wetSaltCheck(check.body).finding;
    case 'scale-checked':
      return scaleCheckOf(check)?.finding ?? null;
  }
}

function lastSentence(check: Check, { nowMs, zone, place, words }: Given): Said {
  const say = words.instruments.one;
  const when = words.dates.near(check.atMs, nowMs, zone);
  if (check.kind === 'scale-checked') {
    const { weightG, shownG } = check.body;
    if (shownG === weightG) return say.scaleTrue(when);
    const pct = decimal((100 * Math.abs(shownG - weightG)) / weightG, 2, place, 'up');
    const off = [grams(shownG - weightG, place), `${pct}\u00a0%`] as const;
    return hasFailed(check) ? say.scaleFailed(...off, when) : say.scaleOff(...off, when);
  }
  if (hasFailed(check)) return say.failed(when);
  return findingOf(check)?.verdict === 'no-reading' ? say.incomplete(when) : say.passed(when);
}

function dueSentence(check: Check, { instrument, nowMs, zone, words }: Given): Said {
  const dueMs = nextDueMs(instrument, check);
  // One that failed is not due later: it is to be put right now.
  if (dueMs === null || hasFailed(check)) return [];
  const say = words.instruments.one;
  return dueMs > nowMs
    ? say.nextDue(words.dates.near(dueMs, nowMs, zone))
    : say.overdue(words.dates.ago(check.atMs, nowMs));
}

function figuresOf(check: Check, { place, words }: Given): FigureText[] {
  const say = words.instruments.figures;
  const signed = (value: number, places: number) => `${value > 0 ? '+' : ''}${decimal(value, places, place)}`;
  switch (check.kind) {
    case 'meter-checked': {
      const { offsetMv, slopePct, isWorn, correction } = meterCheckOf(check);
      return [
        ...(offsetMv === null
          ? []
          : [{ key: 'offset', label: say.offset, value: signed(offsetMv, 1), unit: 'mV' }]),
        ...(slopePct === null
          ? []
          : [
              {
                key: 'slope',
                label: say.slope,
                value: decimal(slopePct, 1, place, 'down'),
                unit: '%',
                ...(isWorn ? { note: say.worn } : {}),
              },
            ]),
        ...(correction === null
          ? []
          : [
              {
                key: 'corrected',
                label: say.corrected(decimal(COUNTED_UNTIL_PH.value, 2, place)),
                value: decimal(correctedPh({ ph: COUNTED_UNTIL_PH.value, correction }), 2, place),
                about: true,
                note: say.correctedNote,
              },
            ]),
      ];
    }
    case 'thermometer-checked':
      return [
        { key: 'shown', label: say.shownIce, ...temperature(check.body.shownC, place) },
        {
          key: 'add',
          label: say.add,
          value: signed(iceCheck(check.body).offsetC * (place.temperature === 'F' ? 1.8 : 1), 1),
          unit: place.temperature === 'F' ? '°F' : '°C',
          note: say.addNote,
        },
      ];
    case 'hygrometer-checked':
      return [
        { key: 'shown', label: say.shownSalt, value: decimal(check.body.shownRhPct, 1, place), unit: '%' },
        {
          key: 'add',
          label: say.add,
          value: signed(wetSaltCheck(check.body).offsetRhPct, 1),
          unit: '%',
          note: say.addNote,
        },
      ];
    case 'scale-checked':
      return [{ key: 'off', label: say.off, value: grams(check.body.shownG - check.body.weightG, place) }];
  }
}

function workingOf(check: Check, { place, words }: Given): WorkingText | null {
  const say = words.instruments.work;
  const finding = findingOf(check);
  const shared = (limits: readonly Limit[]) => ({
    sources: limits.map(({ source }) => words.workings.source(source)),
    words: words.workings.words,
  });
  switch (check.kind) {
    case 'meter-checked':
      return { ...meterRows(check, place, words), ...shared([METER_LIMITS.slopeLow, METER_LIMITS.error]) };
    case 'thermometer-checked':
      return {
        title: say.ice.title,
        equation: say.ice.equation,
        rows: [{ label: say.shown, value: joined(temperature(check.body.shownC, place)) }],
        ...limitOf(finding, place, words),
        ...shared(finding?.limit ? [finding.limit] : []),
      };
    case 'hygrometer-checked':
      return {
        title: say.salt.title,
        equation: say.salt.equation,
        rows: [
          { label: say.shown, value: `${decimal(check.body.shownRhPct, 1, place)}\u00a0%` },
          { label: say.rested, value: decimal(check.body.restedHours, 0, place, 'down') },
        ],
        ...limitOf(finding, place, words),
        ...shared([WET_SALT_LIMIT]),
      };
    case 'scale-checked':
      return {
        title: say.scale.title,
        equation: say.scale.equation,
        rows: [
          { label: say.weight, value: grams(check.body.weightG, place) },
          { label: say.shown, value: grams(check.body.shownG, place) },
        ],
        ...limitOf(finding, place, words),
        ...shared(finding?.limit ? [finding.limit] : []),
      };
  }
}

function limitOf(finding: Finding | null, place: Place, words: Words) {
  return finding?.limit ? { limit: limitText(finding.limit, place, words) } : {};
}

function limitText(limit: Limit, place: Place, words: Words): { label: string; value: string } {
  const { label, value } = words.workings.limit({ ...limit, unit: words.limits.unit(limit.unit) }, place);
  return { label: words.limits.basis(limit.basis) ?? label, value };
}

function meterRows(check: EntryOf<'meter-checked'>, place: Place, words: Words) {
  const say = words.instruments.work.meter;
  const { buffers, offsetMv, slopePct } = meterCheckOf(check);
  const { shownIn, sevenC, fourC, sevenShown, fourShown } = check.body;
  const shown = [sevenShown, fourShown].filter((value) => value !== undefined);
  const meanC = [sevenC, fourC].filter((value) => value !== undefined);
  const bufferC = meanC.reduce((sum, value) => sum + value, 0) / Math.max(1, meanC.length);
  return {
    title: say.title,
    equation: shownIn === 'pH' ? say.ph : say.mV,
    rows: [
      ...buffers.map(({ buffer, truePh, errorPh }, at) => ({
        label: words.instruments.figures.shown(buffer),
        value: `${decimal(shown[at] ?? Number.NaN, shownIn === 'pH' ? 2 : 0, place)}${shownIn === 'mV' ? '\u00a0mV' : ''}`,
        note: [
          words.instruments.figures.truth(
            decimal(truePh, 2, place),
            joined(temperature(meanC[at] ?? bufferC, place, 0)),
          ),
          ...(errorPh === null ? [] : [`${say.error(buffer)} ${decimal(errorPh, 2, place)}`]),
        ].join('; '),
      })),
      { label: say.nernst, value: `${decimal(nernstMvPerPh(bufferC), 2, place)}\u00a0mV` },
      ...(offsetMv === null ? [] : [{ label: say.offset, value: `${decimal(offsetMv, 1, place)}\u00a0mV` }]),
      ...(slopePct === null
        ? []
        : [{ label: say.slope, value: `${decimal(slopePct, 1, place, 'down')}\u00a0%` }]),
    ],
    limit: limitText(METER_LIMITS.error, place, words),
  };
}

function historyNote(check: Check, given: Given): string {
  const say = given.words.instruments;
  const verdict = hasFailed(check)
    ? say.bad
    : findingOf(check)?.verdict === 'no-reading'
      ? say.partial
      : findingOf(check) === null
        ? null
        : say.ok;
  const figures = figuresOf(check, given)
    .filter(({ about }) => !about)
    .map(({ label, value, unit }) => [label, value, unit].filter(Boolean).join(' '));
  return [verdict, ...figures].filter(Boolean).join(', ');
}

function grams(massG: number, place: Place): string {
  return joined(mass(massG, 0.01, place));
}
