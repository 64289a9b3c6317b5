/** So many photos in one file: what a phone can hold in memory at once. */
const PHOTOS_A_BOX = 100;
export const MOST_BOX_BYTES = 100 * 1024 * 1024;

/** Which photos go into which file: from the first, up to but without the last. */
export function boxesOf(count: number): { from: number; to: number; part: number }[] {
  return Array.from({ length: Math.ceil(count / PHOTOS_A_BOX) }, (_, at) => ({
    from: at * PHOTOS_A_BOX,
    to: Math.min(count, (at + 1) * PHOTOS_A_BOX),
    part: at + 1,
  }));
}
