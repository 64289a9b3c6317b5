import type { EntryOf } from '#record/entry.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';

export type SavedVersions = {
  readonly id: SubjectId;
  readonly versions: readonly EntryOf<'formula-saved'>[];
};

export type FormulasView = {
  readonly sentence: Said;
  readonly rows: readonly { key: string; href: string; title: string; note: string }[];
};

/** The last saved first. */
export function formulasView({
  saved,
  words,
}: {
  saved: readonly SavedVersions[];
  words: Words;
}): FormulasView {
  const say = words.formulas;
  const newest = saved.flatMap(({ id, versions }) => {
    const last = versions.at(-1);
    return last ? [{ id, last, count: versions.length }] : [];
  });
  const rows = newest
    .toSorted((one, other) => other.last.atMs - one.last.atMs || (one.id < other.id ? 1 : -1))
    .map(({ id, last, count }) => ({
      key: id,
      href: formulaHref(id),
      title: last.body.formula.name,
      note: `${say.versions(count)} · ${say.lastSaved(words.dates.day(last.atMs, last.zone))}`,
    }));
  return { sentence: rows.length === 0 ? say.none : say.sentence(rows.length), rows };
}

export function formulaHref(id: SubjectId, part = ''): string {
  return `#/formulas/${id.slice('formula:'.length)}${part}`;
}

/** The card of just this version. */
export function cardHref(
  { id, subject }: EntryOf<'formula-saved'>,
  versions: readonly EntryOf<'formula-saved'>[],
): string {
  const at = versions.findIndex((each) => each.id === id);
  return formulaHref(subject, at === versions.length - 1 ? '/card' : `~${at + 1}/card`);
}
