import type { Batch } from '#record/batch.ts';
import type { EntryId } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';

export type LastWeighing = { readonly id: EntryId; readonly text: string };

/** The weighing of meat or of a line that was written down last and stands. */
export function lastWeighing(batch: Batch, place: Place, words: Words): LastWeighing | null {
  const last = [...batch.meat, ...batch.weighedOut.values()]
    .toSorted((one, other) => one.writtenAtMs - other.writtenAtMs || (one.id < other.id ? -1 : 1))
    .at(-1);
  if (!last) return null;
  const name =
    last.kind === 'meat-weighed'
      ? words.weighOut.meat[last.body.part]
      : batch.opened.body.formula.lines.find(({ id }) => id === last.body.line)?.name;
  const { massG, typed } = last.body;
  const shown = typed?.massG
    ? `${typed.massG.text}\u00a0${typed.massG.unit}`
    : joined(mass(massG, last.kind === 'meat-weighed' ? 1 : 0.01, place));
  return { id: last.id, text: `${name ?? ''} ${shown}`.trim() };
}
