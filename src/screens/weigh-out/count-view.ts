import type { Batch } from '#record/batch.ts';
import { meatCount } from '#record/meat-count.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';

export type CountView = {
  readonly texts: readonly string[];
  readonly open: boolean;
  readonly body: { readonly trays: number; readonly meatG: number };
};

/** The meat against what was planned; null where nothing was planned or it agrees. */
export function countView(batch: Batch, place: Place, words: Words): CountView | null {
  const count = meatCount(batch);
  if (count === null || count.differs.length === 0) return null;
  const { trays, plannedTrays, meatG, plannedMeatG } = count;
  const say = words.weighOut.count;
  const text = (massG: number) => joined(mass(massG, 1, place));
  return {
    texts: count.differs.map((what) =>
      what === 'trays' ? say.trays(trays, plannedTrays ?? 0) : say.mass(text(meatG), text(plannedMeatG ?? 0)),
    ),
    open: count.open,
    body: { trays, meatG },
  };
}
