import type { EntryOf } from '#record/entry.ts';
import type { Words } from '#words/en.ts';

type Version = EntryOf<'formula-saved'>;

type Named = Pick<Version, 'id' | 'subject' | 'body'>;

export type VersionRow = {
  readonly id: string;
  readonly title: string;
  readonly note: string;
};

/** Above the title: which version this is, when it was saved, and whether a newer one stands. */
export function versionLine(version: Version, versions: readonly Version[], words: Words): string {
  const say = words.formulas;
  const number = versions.findIndex(({ id }) => id === version.id) + 1;
  return [
    say.version(number, versions.length),
    say.saved(words.dates.day(version.atMs, version.zone)),
    version.body.note === say.starting.note ? words.app.invented : '',
  ]
    .filter(Boolean)
    .join(' · ');
}

/** Newest first, each with its note, who saved it, and what it was made from where that is another formula. */
export function versionRows(
  versions: readonly Version[],
  saved: readonly Version[],
  words: Words,
): VersionRow[] {
  const say = words.formulas;
  return versions
    .map((version, at) => ({
      id: version.id,
      title: say.history.row(at + 1, words.dates.fullDay(version.atMs, version.zone)),
      note: [
        version.body.note || say.history.noNote,
        version.by === '' ? '' : say.history.by(version.by),
        madeFrom(version, saved, words),
      ]
        .filter(Boolean)
        .join(' · '),
    }))
    .toReversed();
}

function madeFrom({ subject, body: { from } }: Version, saved: readonly Version[], words: Words): string {
  if (!from || from.formula === subject) return '';
  const parents = saved.filter((each) => each.subject === from.formula);
  const at = parents.findIndex(({ id }) => id === from.entry);
  const parent = parents[at];
  return parent ? words.formulas.madeFrom(parent.body.formula.name, at + 1) : words.formulas.madeElsewhere;
}

/** What can be laid beside a version: each version of its formula by number, and of every other formula the newest by name. */
export function compareOptions(
  versions: readonly Named[],
  saved: readonly Named[],
): { value: string; label: string }[] {
  const own = versions[0]?.subject;
  const others = new Map(saved.filter(({ subject }) => subject !== own).map((each) => [each.subject, each]));
  return [
    ...versions.map(({ id }, at) => ({ value: id, label: String(at + 1) })),
    ...[...others.values()].map(({ id, body }) => ({ value: id, label: body.formula.name })),
  ];
}
