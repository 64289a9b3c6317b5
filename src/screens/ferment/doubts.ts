import { type PhDoubt, phDoubts } from '#core/ferment/ph-doubts.ts';
import { disbeliefOf } from '#core/ferment/ph-reading.ts';
import type { Batch } from '#record/batch.ts';
import { phReadings, roomSeries } from '#record/ferment-figures.ts';
import { type Check, checkedAt } from '#record/instruments.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';

export type Doubts = {
  /** Asked once, before it is saved. */
  readonly asked: readonly { code: PhDoubt['code']; text: string }[];
  /** Said beside the field, and on the record: no reading is held up by it. */
  readonly said: readonly { code: PhDoubt['code']; text: string }[];
};

type Given = {
  batch: Batch;
  checks: readonly Check[];
  reading: Pick<BodyOf<'ph-read'>, 'ph' | 'method' | 'sample' | 'meter' | 'sampleMm'>;
  atMs: number;
  place: Place;
  words: Words;
};

const SAID = new Set<PhDoubt['code']>(['calibration-none', 'calibration-old']);

/** What speaks against this reading, from all that the batch and its meter's checks tell. */
export function doubtsOf({ batch, checks, reading, atMs, place, words }: Given): Doubts {
  const { ph, method, sample } = reading;
  const previous = phReadings(batch)
    .filter((each) => each.atMs < atMs && disbeliefOf(each) === null)
    .at(-1);
  const between = roomSeries(batch).readings.filter(
    (each) => each.atMs <= atMs && each.atMs >= (previous?.atMs ?? atMs),
  );
  const all = phDoubts({
    reading: { atMs, ph, method },
    ...(sample === 'mix' ? {} : { previous }),
    roomC: between.length > 0 ? Math.max(...between.slice(-5000).map(({ roomC }) => roomC)) : undefined,
    lastCheck: checkedAt(checks, reading.meter, 'meter-checked')
      .filter((check) => check.atMs <= atMs)
      .at(-1),
    ...(sample === 'packet'
      ? {
          sampleMm: reading.sampleMm,
          productMm: productMm(batch),
          sampleMadeAtMs: batch.stuffedAtMs ?? undefined,
        }
      : {}),
  });
  const texts = all.map((doubt) => ({ code: doubt.code, text: doubtText(doubt, place, words) }));
  return {
    asked: texts.filter(({ code }) => !SAID.has(code)),
    said: texts.filter(({ code }) => SAID.has(code)),
  };
}

/** The thickest piece; before any was stuffed, what is planned. */
export function productMm({ pieces, plan }: Batch): number {
  return pieces.length > 0 ? Math.max(...pieces.map(({ diameterMm }) => diameterMm)) : plan.diameterMm;
}

function doubtText(doubt: PhDoubt, place: Place, words: Words): string {
  const say = words.fermentAhead.doubt;
  const two = (value: number) => decimal(value, 2, place);
  switch (doubt.code) {
    case 'too-fast':
      return say.tooFast(
        two(doubt.dropPh),
        words.dates.span(doubt.durationHours),
        decimal(doubt.likelyAtMostPh, 1, place, 'up'),
      );
    case 'jumped-up':
      return say.jumpedUp(two(doubt.risePh), words.dates.span(doubt.durationHours));
    case 'rising-old-sample':
      return say.risingOldSample(two(doubt.risePh), words.dates.span(doubt.sampleAgeHours));
    case 'may-be-fat':
      return say.mayBeFat(two(doubt.ph));
    case 'off-scale':
      return say.offScale(two(doubt.ph));
    case 'sample-thinner':
      return say.sampleThinner(decimal(doubt.sampleMm, 0, place), decimal(doubt.productMm, 0, place));
    case 'calibration-none':
      return say.calibrationNone;
    case 'calibration-failed':
      return say.calibrationFailed;
    case 'calibration-old':
      return say.calibrationOld(words.dates.span(doubt.ageHours));
  }
}
