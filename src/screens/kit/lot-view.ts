import type { Batch } from '#record/batch.ts';
import type { Entry, EntryOf } from '#record/entry.ts';
import { ofKind } from '#record/fold.ts';
import type { Place } from '#record/place.ts';
import { standings } from '#record/strikes.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';
import { massFigure } from './received-view.ts';

export type DetailRow = { readonly label: string; readonly value: string; readonly note?: string };

export type LotView = {
  /** The entry that holds; null where the lot was struck whole. */
  readonly holds: EntryOf<'received'> | null;
  readonly title: string;
  readonly line: string;
  readonly rows: readonly DetailRow[];
  /** Corrected twice, apart: both are shown. */
  readonly rivals: readonly (readonly DetailRow[])[];
  readonly before: readonly {
    readonly key: string;
    readonly reason: string;
    readonly rows: readonly DetailRow[];
  }[];
  readonly usedIn: readonly {
    readonly key: string;
    readonly href: string;
    readonly title: string;
    readonly note: string;
  }[];
};

/** One lot with all that was ever said of it. Null where nothing was. */
export function lotView({
  id,
  entries,
  batches,
  place,
  words,
}: {
  id: SubjectId;
  entries: readonly Entry[];
  batches: readonly Batch[];
  place: Place;
  words: Words;
}): LotView | null {
  const said = standings(entries).filter(({ entry }) => entry.subject === id && entry.kind === 'received');
  const standing = ofKind(
    said.filter(({ live }) => live).map(({ entry }) => entry),
    'received',
  );
  const holds = standing.at(-1) ?? null;
  const shown =
    holds ??
    ofKind(
      said.map(({ entry }) => entry),
      'received',
    ).at(-1);
  if (!shown) return null;
  const { received } = words;
  return {
    holds,
    title: shown.body.name,
    line: received.what[shown.body.what],
    rows: detailRows(shown, place, words),
    rivals: standing.slice(0, -1).map((entry) => detailRows(entry, place, words)),
    before: said
      .filter(({ live, entry }) => !live && entry.id !== shown.id)
      .flatMap(({ entry, struckBy }) =>
        ofKind([entry], 'received').map((old) => ({
          key: old.id,
          reason: received.detail.struckBecause(
            struckBy.map(({ strikes }) => strikes?.reason ?? '').join('; '),
          ),
          rows: detailRows(old, place, words),
        })),
      )
      .reverse(),
    usedIn: batches
      .filter((batch) => uses(batch, id))
      .map((batch) => ({
        key: batch.id,
        href: `#/batches/${batch.id.slice('batch:'.length)}`,
        title: batch.opened.body.formula.name,
        note: words.batches.lot(batch.opened.body.lot),
      })),
  };
}

function uses(batch: Batch, id: SubjectId): boolean {
  return [...batch.meat, ...batch.weighedOut.values()].some(({ body }) => body.lot === id);
}

function detailRows(
  { body, atMs, zone, writtenAtMs, by }: EntryOf<'received'>,
  place: Place,
  words: Words,
): DetailRow[] {
  const { detail, form } = words.received;
  const pct = (value: number) => joined({ value: words.workings.exactly(value, place), unit: '%' });
  const day = (ms: number) => words.dates.fullDay(ms, zone);
  const late = writtenAtMs - atMs > 60_000;
  const row = (label: string, value: string | undefined): DetailRow[] =>
    value === undefined ? [] : [{ label, value }];
  const massText = body.massG === undefined ? undefined : massFigure(body.massG, place);
  return [
    ...(body.cure
      ? [
          {
            label: detail.nitrite,
            value: pct(body.cure.nitritePct),
            note: form.salts[body.cure.nitriteSalt].label,
          },
          {
            label: detail.nitrate,
            value: pct(body.cure.nitratePct),
            ...(body.cure.nitratePct > 0 ? { note: form.salts[body.cure.nitrateSalt].label } : {}),
          },
        ]
      : []),
    { label: detail.lot, value: body.lot || detail.notGiven },
    { label: detail.supplier, value: body.supplier || detail.notGiven },
    {
      label: detail.received,
      value: words.dates.full(atMs, zone),
      ...(late ? { note: detail.lateEntry(words.dates.full(writtenAtMs, zone)) } : {}),
    },
    ...row(detail.temperature, body.tempC === undefined ? undefined : joined(temperature(body.tempC, place))),
    ...row(detail.mass, massText && joined({ value: massText.figure, unit: massText.unit })),
    ...row(
      detail.species,
      body.species === undefined ? undefined : (form.speciesOptions[body.species] ?? body.species),
    ),
    ...row(detail.packed, body.packedOnMs === undefined ? undefined : day(body.packedOnMs)),
    ...row(detail.bestBefore, body.bestBeforeMs === undefined ? undefined : day(body.bestBeforeMs)),
    ...row(detail.opened, body.openedOnMs === undefined ? undefined : day(body.openedOnMs)),
    ...row(detail.storage, body.storage && form.storages[body.storage]),
    ...row(detail.note, body.note),
    ...row(detail.by, by || undefined),
    ...(body.kept && body.kept.length > 0 ? [{ label: detail.asked, value: words.received.kept }] : []),
  ];
}
