import { METER_CHECK_DUE_HOURS } from '#core/ferment/meter-check.ts';
import type { Batch } from '#record/batch.ts';
import { type Check, hasFailed } from '#record/instruments.ts';
import type { Meter, Place, Scale } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { WorkingText } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';
import { type FigureText, figuresOf, findingOf, grams, workingOf } from './check-figures.ts';

export type What = Meter['what'] | 'scale';
export type Instrument = {
  readonly id: SubjectId;
  readonly name: string;
  readonly what: What;
  /** Of a scale. */
  readonly stepG?: number;
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
