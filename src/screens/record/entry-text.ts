import { aboutMs, type ClockSide } from '#record/clock-steps.ts';
import type { Entry, EntryId } from '#record/entry.ts';
import { isLate } from '#record/gaps.ts';
import type { Place } from '#record/place.ts';
import type { Standing } from '#record/strikes.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, temperature } from '#words/format.ts';

/** What an entry says, as one row of the record. The numbers stand as they were typed. */
export type EntryText = { readonly when: string; readonly what: string; readonly by: string };

/** Enough to find the picture by among the photos below. */
const SUM_DIGITS = 16;

type Names = ReadonlyMap<string, string>;
/** Entries that a wrong clock may have written, where it was not put right. */
export type Doubted = ReadonlyMap<EntryId, ClockSide>;

/** Said elsewhere on the sheet, or of use to the app alone. */
const UNSAID = new Set([
  'typed',
  'kept',
  'scale',
  'meter',
  'thermometer',
  'hygrometer',
  'formula',
  'from',
  'plan',
  'verdicts',
  'gaps',
  'build',
  'bytes',
  'mime',
  'of',
]);

export function entryText(
  { entry, struckBy }: Standing,
  { place, words, names, doubted }: { place: Place; words: Words; names: Names; doubted?: Doubted },
): EntryText {
  const { record, dates } = words;
  const late = isLate(entry);
  const what =
    entry.kind === null
      ? record.unknown(entry.named)
      : [`${record.kind(entry.kind)}:`, facts(entry, place, words, names)].join(' ').replace(/: ?$/, '');
  const notes = [
    ...(entry.strikes && entry.kind !== 'struck' ? [record.corrects(entry.strikes.reason)] : []),
    ...(entry.kind !== null && 'kept' in entry.body && entry.body.kept ? [record.kept] : []),
    ...clockNotes(entry, doubted?.get(entry.id), words),
    ...struckBy.map((striker) =>
      record.struck(striker.strikes?.reason ?? '', striker.by, dates.full(striker.writtenAtMs, striker.zone)),
    ),
  ];
  return {
    when: [
      dates.full(entry.atMs, entry.zone),
      ...(late ? [record.late(dates.full(entry.writtenAtMs, entry.zone))] : []),
    ].join('\n'),
    what: [what, ...notes].join('\n'),
    by: entry.by,
  };
}

/** Both times of a clock that was put right, by whom and why; of two corrections both. Or that the time is in doubt. */
function clockNotes({ clock }: Entry, side: ClockSide | undefined, words: Words): string[] {
  const say = words.clock.onRecord;
  const last = clock?.corrections.at(-1);
  const isBounded = side && side.leastMs !== null && side.mostMs !== null;
  return [
    ...(clock && last
      ? [
          say.right({
            by: last.by,
            reason: last.body.reason,
            shiftMs: last.body.shiftMs,
            showed: words.dates.full(clock.writtenAtMs, clock.zone),
          }),
          ...clock.corrections
            .slice(0, -1)
            .map(({ by, body }) => say.outdone({ by, reason: body.reason, shiftMs: body.shiftMs })),
        ]
      : []),
    ...(side ? [isBounded ? say.doubted(side.side, aboutMs(side)) : say.doubtedUnknown] : []),
  ];
}

function facts(entry: Exclude<Entry, { kind: null }>, place: Place, words: Words, names: Names): string {
  const body: Readonly<Record<string, unknown>> = entry.body;
  const typed = 'typed' in entry.body ? entry.body.typed : undefined;
  return Object.entries(body)
    .filter(([key]) => !UNSAID.has(key))
    .map(([key, value]) => {
      const as = typed?.[key];
      const text = as ? typedText(as, place) : valueText(key, value, place, words, names);
      return text === '' ? '' : [words.record.field(key), text].filter(Boolean).join(' ');
    })
    .filter(Boolean)
    .join(', ');
}

function typedText({ text, unit }: { text: string; unit: string }, place: Place): string {
  const shown = unit === 'C' || unit === 'F' ? `°${unit}` : unit === 'pH' ? '' : unit;
  return [text.replace(/[.,]/, place.decimal), shown].filter(Boolean).join('\u00a0');
}

function valueText(key: string, value: unknown, place: Place, words: Words, names: Names): string {
  if (typeof value === 'number') {
    if (key.endsWith('G')) return joined(mass(value, 0.01, place)).replace(/[.,]00(?=\u00a0)/, '');
    if (key.endsWith('C')) return joined(temperature(value, place));
    if (key.endsWith('Pct')) return `${words.workings.exactly(value, place)}\u00a0%`;
    if (key.endsWith('Mm')) return `${words.workings.exactly(value, place)}\u00a0mm`;
    if (key === 'hours') return `${words.workings.exactly(value, place)}\u00a0h`;
    if (key === 'minutes') return `${words.workings.exactly(value, place)}\u00a0min`;
    if (key.endsWith('Ms')) return words.dates.fullDay(value, '+00:00');
    return key === 'ph' ? decimal(value, 2, place) : words.workings.exactly(value, place);
  }
  if (typeof value === 'boolean') return value ? words.record.value('true') : '';
  if (key === 'sha256' && typeof value === 'string') return value.slice(0, SUM_DIGITS);
  if (typeof value === 'string') return names.get(value) ?? words.record.value(value);
  if (typeof value === 'object' && value !== null && 'nitritePct' in value && 'nitratePct' in value)
    return words.weighOut.cureLabel(
      String(value.nitritePct),
      value.nitratePct ? String(value.nitratePct) : null,
    );
  return '';
}
