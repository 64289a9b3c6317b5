import type { Batch } from '#record/batch.ts';
import type { Lot, Place, Scale } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { mass } from '#words/format.ts';
import { lotChoices, lotsFor } from './lot-choices.ts';
import type { LotChoice, ToWeigh } from './weigh-sheet-view.ts';

export type MeatView = {
  readonly part: 'lean' | 'fat';
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  readonly note: string;
  readonly hint: string;
  readonly done: boolean;
  readonly lots: readonly LotChoice[];
  readonly soFar: Omit<NonNullable<ToWeigh['meat']>, 'part'>;
};

/** Null where a scale here carries anything, or none is known. */
function mostOnScaleG(scales: readonly Scale[]): number | null {
  const most = scales.map(({ mostG }) => mostG);
  return most.length === 0 || most.includes(null) ? null : Math.max(...most.map((massG) => massG ?? 0));
}

export function meatView(
  part: 'lean' | 'fat',
  {
    batch,
    kit,
    place,
    words,
  }: {
    batch: Batch;
    kit: { lots: readonly Lot[]; scales: readonly Scale[] };
    place: Place;
    words: Words;
  },
): MeatView {
  const { meat } = words.weighOut;
  const weighings = batch.meat.filter(({ body }) => body.part === part);
  const totalG = part === 'lean' ? batch.leanG : batch.fatG;
  return {
    part,
    label: meat[part],
    ...mass(totalG, 1, place),
    note: weighings.length === 0 ? meat.none : meat.lots(weighings.length),
    hint: words.weighOut.sheet.addHint,
    done: weighings.length > 0,
    lots: lotChoices(lotsFor(kit.lots, [part])),
    soFar: {
      leanG: batch.leanG,
      fatG: batch.fatG,
      wantedFatPct: batch.opened.body.formula.fatPctOfMeat,
      plannedMeatG: batch.opened.body.plannedMeatG ?? null,
      mostOnScaleG: mostOnScaleG(kit.scales),
    },
  };
}
