const SECOND_MS = 1000;
const MINUTE_MS = 60 * SECOND_MS;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

/**
 * How long until an instant, as coarse as it may be read: days and hours, hours and minutes, and in the last hour
 * minutes and seconds. Rounded so that it never shows more time than there is. Symbols d, h and min are the SI brochure's.
 *
 * @example timeLeft({ endMs: 90_000, nowMs: 0 }) // => { over: false, text: '1:30' }
 * @example timeLeft({ endMs: 0, nowMs: 7_500_000 }) // => { over: true, text: '2 h 05 min' }
 */
export function timeLeft({ endMs, nowMs }: { endMs: number; nowMs: number }): {
  over: boolean;
  text: string;
} {
  const over = nowMs >= endMs;
  const leftMs = Math.abs(endMs - nowMs);
  const two = (part: number) => String(Math.floor(part)).padStart(2, '0');
  if (leftMs >= DAY_MS) {
    return { over, text: `${Math.floor(leftMs / DAY_MS)} d ${Math.floor((leftMs % DAY_MS) / HOUR_MS)} h` };
  }
  if (leftMs >= HOUR_MS) {
    return { over, text: `${Math.floor(leftMs / HOUR_MS)} h ${two((leftMs % HOUR_MS) / MINUTE_MS)} min` };
  }
  return { over, text: `${Math.floor(leftMs / MINUTE_MS)}:${two((leftMs % MINUTE_MS) / SECOND_MS)}` };
}
