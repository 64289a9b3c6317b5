import type { Entry, EntryOf } from '#record/entry.ts';
import { ofKind } from '#record/fold.ts';
import { live } from '#record/strikes.ts';
import type { SubjectId } from '#record/subject.ts';
import { useRows } from './live.ts';
import { rowsAbout } from './rows.ts';

export type SavedFormula = { readonly id: SubjectId; readonly versions: readonly EntryOf<'formula-saved'>[] };

/** Standing versions of each formula, oldest first. */
export function useFormulas(): readonly SavedFormula[] | undefined {
  return useRows(() => rowsAbout('formula'), formulasOf, '');
}

function formulasOf(entries: Entry[]): readonly SavedFormula[] {
  const versions = new Map<SubjectId, EntryOf<'formula-saved'>[]>();
  for (const saved of ofKind(live(entries), 'formula-saved')) {
    versions.set(saved.subject, [...(versions.get(saved.subject) ?? []), saved]);
  }
  return [...versions].map(([id, list]) => ({ id, versions: list }));
}
