/** What a plan says of the ferment. That of a whole muscle may say nothing: it goes from the salt to the drying air. */
import type { PhBand } from '#core/rules/ph-band.ts';
import type { Plan } from './kinds.ts';

/** Null where no ferment is planned. */
export function phBandOf({ phLow, phHigh }: Plan): PhBand | null {
  return phLow === undefined || phHigh === undefined ? null : { lowPh: phLow, highPh: phHigh };
}
