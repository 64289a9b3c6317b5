import { type FreezingAnswer, type FreezingRow, freezingTable } from '#core/rules/freezing.ts';
import type { EntryOf } from '#record/entry.ts';
import type { FreezingState } from '#record/freezing-figures.ts';
import type { Place } from '#record/place.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { WorkingText } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type FreezingView = {
  readonly line: string;
  readonly sentence: Said;
  readonly verdict: { verdict: VerdictShape; word: string } | null;
  readonly figures: readonly {
    key: string;
    label: string;
    value: string;
    unit?: string;
    note?: string;
    about?: boolean;
  }[];
  readonly working: WorkingText | null;
  readonly notes: readonly string[];
  readonly isReserved: boolean;
  readonly readings: readonly { key: string; title: string; note: string }[];
  readonly isIn: boolean;
};

type Given = {
  lot: EntryOf<'received'>;
  state: FreezingState;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};

export function freezingView(given: Given): FreezingView {
  const { lot, state, place, nowMs, zone, words } = given;
  const { frozen, answer, readings } = state;
  const say = words.freezing;
  const flags = answer?.flags ?? [];
  return {
    line: say.line(lot.body.name, lot.body.lot),
    sentence: sentenceOf(given),
    verdict: answer && {
      verdict: answer.finding.verdict,
      word: [
        `${say.rule}: ${words.verdicts.verdict(answer.finding.verdict)}`,
        ...answer.finding.missing.map((code) => say.missing[code] ?? code),
      ].join(', '),
    },
    figures: answer && frozen && !flags.includes('not-for-game') ? figuresOf(answer, given) : [],
    working: answer && frozen && !flags.includes('not-for-game') ? workingOf(answer, given) : null,
    notes: (answer?.restarts ?? []).map(({ atMs, why }) =>
      say.restart[why](words.dates.near(atMs, nowMs, zone)),
    ),
    isReserved: flags.includes('us-text-reserved'),
    readings: [...readings].reverse().map(({ id, atMs, body }) => ({
      key: id,
      title: joined(temperature(body.tempC, place)),
      note: `${say.readSheet[body.where]}, ${words.dates.near(atMs, nowMs, zone)}`,
    })),
    isIn: frozen !== null,
  };
}

function sentenceOf({ lot, state, place, nowMs, zone, words }: Given): Said {
  const say = words.freezing.sentence;
  const { answer, frozen } = state;
  if (lot.body.species !== 'pork') return say.game;
  if (place.ruleSet === null) return say.noRules;
  if (frozen === null || answer === null) return say.notFrozen;
  const { finding, flags, row, dueAtMs, doneHours } = answer;
  if (flags.includes('too-thick')) return say.tooThick;
  if (flags.includes('no-table-for-rule-set')) return say.noTable;
  const span = words.dates.span;
  if (finding.verdict === 'within-limit' && row) return say.met(span(row.hours));
  switch (finding.missing[0]) {
    case 'core-temperature':
      return say.noProbe;
    case 'room-temperature':
      return say.noRoom;
    case 'freezer-now':
      return say.stale;
    case 'core-at-temperature':
      return say.waiting;
  }
  return row && dueAtMs !== null
    ? say.running(span(doneHours), span(row.hours), words.dates.near(dueAtMs, nowMs, zone))
    : say.waiting;
}

function figuresOf(answer: FreezingAnswer, { state, place, nowMs, zone, words }: Given) {
  const say = words.freezing.figures;
  const { row, doneHours, dueAtMs, finding } = answer;
  return [
    { key: 'done', label: say.done, value: words.dates.span(doneHours) },
    ...(row
      ? [
          {
            key: 'row',
            label: say.row,
            value: lasting(row.hours, place, words),
            note: say.rowNote(rowAt(row, place)),
          },
        ]
      : []),
    ...(dueAtMs !== null && finding.verdict === 'pending'
      ? [{ key: 'due', label: say.due, value: words.dates.near(dueAtMs, nowMs, zone), about: true }]
      : []),
    {
      key: 'thick',
      label: say.thick,
      value: decimal(state.frozen?.body.thicknessMm ?? 0, 0, place, 'up'),
      unit: 'mm',
    },
  ];
}

function workingOf(answer: FreezingAnswer, { state, place, words }: Given): WorkingText | null {
  const { frozen } = state;
  if (frozen === null || place.ruleSet === null) return null;
  const table = freezingTable({ ruleSet: place.ruleSet, ...frozen.body });
  if (table === null) return null;
  const say = words.freezing.work;
  return {
    title: say.title,
    equation: say.equation,
    rows: table.rows.map((row) => ({
      label: say.row(rowAt(row, place)),
      value: lasting(row.hours, place, words),
    })),
    result: { label: words.freezing.figures.done, value: words.dates.span(answer.doneHours) },
    caution: say.caution,
    sources: [words.workings.source(table.source)],
    words: words.workings.words,
  };
}

const DAY_HOURS = 24;
/** Shorter times are said in hours, as their table prints them. */
const LEAST_DAYS = 5;

function lasting(hours: number, place: Place, words: Words): string {
  return hours >= LEAST_DAYS * DAY_HOURS && hours % DAY_HOURS === 0
    ? words.freezing.figures.days(decimal(hours / DAY_HOURS, 0, place))
    : words.dates.span(hours);
}

/** As the table prints it, where it prints °F and the maker reads °F. */
function rowAt({ atC, atF }: FreezingRow, place: Place): string {
  return place.temperature === 'F' && atF !== undefined
    ? joined({ value: decimal(atF, 0, place), unit: '°F' })
    : joined(temperature(atC, place));
}
