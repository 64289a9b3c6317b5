import * as z from 'zod/mini';
import type { Sentinel } from '#record/check-store.ts';

/** `rows`: how many rows the store held with that, damaged ones that stay where they are among them. */
export type Witness = Sentinel & { readonly rows: number };

const KEY = 'greenweight-sentinel';
const schema = z.object({
  device: z.string(),
  lastSeq: z.int(),
  lastHash: z.string(),
  count: z.int(),
  rows: z._default(z.int(), -1),
});

/** Null when there is none, when it cannot be read, or where the browser keeps no local storage. */
export function readSentinel(): Witness | null {
  try {
    const parsed = schema.safeParse(JSON.parse(localStorage.getItem(KEY) ?? 'null'));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** Never fails: it is a third witness, and the two copies stand without it. */
export function writeSentinel(witness: Witness): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(witness));
  } catch {
    // A full or forbidden local storage costs the witness, not the entry.
  }
}
