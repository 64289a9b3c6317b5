/** How much room the browser says is left: an estimate, and in some browsers a round number that has nothing to do with the disk. */

/** Kept free for readings: photos stop first, and the maker is warned. */
export const KEPT_FOR_READINGS_BYTES = 50_000_000;

/** Null where the browser does not say. */
export async function leftBytes(): Promise<number | null> {
  try {
    const { quota, usage } = (await navigator.storage?.estimate?.()) ?? {};
    return quota === undefined || usage === undefined ? null : Math.max(0, quota - usage);
  } catch {
    return null;
  }
}
