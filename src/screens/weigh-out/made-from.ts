import type { Batch } from '#record/batch.ts';
import type { SubjectId } from '#record/subject.ts';

type Saved = { readonly id: SubjectId; readonly versions: readonly { readonly id: string }[] };

/** The version that a batch was opened from, and the way to it; null where it is not in this book. */
export function madeFrom(
  { opened }: Batch,
  saved: readonly Saved[],
): { readonly number: number; readonly href: string } | null {
  const { from } = opened.body;
  const versions = saved.find(({ id }) => id === from?.formula)?.versions ?? [];
  const number = versions.findIndex(({ id }) => id === from?.entry) + 1;
  if (!from || number === 0) return null;
  return { number, href: `#/formulas/${from.formula.slice('formula:'.length)}~${number}` };
}
