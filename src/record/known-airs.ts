import { chamberAir } from './chamber-air.ts';
import { type KnownAir, knownAir } from './drying-air.ts';
import type { Entry } from './entry.ts';
import type { Check } from './instruments.ts';
import type { Chamber } from './place.ts';
import type { SubjectId } from './subject.ts';

/** What is known of the air of each chamber, as far as drying needs it. */
export function knownAirs(
  chambers: readonly Chamber[],
  entries: readonly Entry[],
  checks: readonly Check[],
): ReadonlyMap<SubjectId, KnownAir> {
  return new Map(chambers.map(({ id }) => [id, knownAir(chamberAir(id, entries, checks))]));
}
