import type { Batch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { ASPECTS, type Aspect, blindCodes, tasting } from '#record/tasting.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type TastingView = {
  readonly line: string;
  readonly sentence: Said;
  readonly rows: readonly { key: Aspect; label: string; mark: string; note: string }[];
  readonly who: string | null;
  /** Null where the batch may be tasted without another thought. */
  readonly caution: string | null;
  readonly plate: Said;
};

/** Halves appear between two tasters. */
const marked = (mark: number, place: Place) => decimal(mark, Number.isInteger(mark) ? 0 : 1, place);

export function tastingView({
  batch,
  batches,
  place,
  words,
}: {
  batch: Batch;
  batches: readonly Batch[];
  place: Place;
  words: Words;
}): TastingView {
  const say = words.tasting;
  const found = tasting(batch);
  const { formula, lot } = batch.opened.body;
  return {
    line: say.line(formula.name, lot),
    sentence: found ? say.sentence(marked(found.marks.overall, place), found.tasters.length) : say.none,
    rows: found
      ? ASPECTS.map((key) => ({
          key,
          label: say.aspects[key],
          mark: marked(found.marks[key], place),
          note: found.tasters.length > 1 ? say.apart(found.spread[key]) : '',
        }))
      : [],
    who: found ? say.who(found.tasters.join(', ')) : null,
    caution: batch.decided?.body.decision === 'release' ? null : say.notReleased,
    plate: say.blind.plate(String(blindCodes(batches).get(batch.id) ?? '')),
  };
}

export type Plate = {
  readonly id: SubjectId;
  readonly code: string;
  readonly note: string;
};

/** Released batches by their numbers alone, lowest first: nothing here tells which is which. */
export function plates(batches: readonly Batch[], words: Words): Plate[] {
  const codes = blindCodes(batches);
  return batches
    .filter(({ decided }) => decided?.body.decision === 'release')
    .map((batch) => ({
      id: batch.id,
      code: String(codes.get(batch.id) ?? ''),
      note: words.tasting.blind.marked(tasting(batch)?.blind ?? 0),
    }))
    .sort((one, two) => one.code.localeCompare(two.code));
}
