import { packAge, type Storage } from '#core/formula/starter.ts';
import type { Lot } from './place.ts';

export type PackAge = { readonly storage: Storage } & ReturnType<typeof packAge>;

/**
 * How old the pack of a culture is at a moment: since it was opened, or, sealed, since it came in. Null where it was not
 * written down how it is kept, and for a moment before it was there.
 */
export function ageOfPack({ received: { atMs, body } }: Lot, nowMs: number): PackAge | null {
  const { openedOnMs, bestBeforeMs = null } = body;
  if (body.storage === undefined) return null;
  const storage: Storage =
    body.storage === 'out-of-freezer'
      ? 'out-of-freezer'
      : openedOnMs === undefined
        ? 'frozen-sealed'
        : 'frozen-opened';
  const sinceMs = openedOnMs ?? atMs;
  return sinceMs > nowMs ? null : { storage, ...packAge({ sinceMs, nowMs, storage, bestBeforeMs }) };
}
