import { useEffect, useReducer } from 'react';

export function now(): { nowMs: number; zone: string } {
  const nowMs = Date.now();
  return { nowMs, zone: zoneAt(nowMs) };
}

/** The UTC offset in force on this device at an instant, such as `+01:00`. */
export function zoneAt(atMs: number): string {
  const minutes = Math.round(-new Date(atMs).getTimezoneOffset());
  const two = (value: number) => String(value).padStart(2, '0');
  const most = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(most / 60))}:${two(most % 60)}`;
}

/**
 * The time of this drawing. Drawn anew every so often and whenever the page comes back into view: a phone that slept counts no
 * intervals. Never older than what was just written, or a reading of this second would lie ahead of it.
 */
export function useNowMs(everyMs: number): number {
  const [, tick] = useReducer((count: number) => count + 1, 0);
  useEffect(() => {
    const ask = () => tick();
    const timer = setInterval(ask, everyMs);
    document.addEventListener('visibilitychange', ask);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', ask);
    };
  }, [everyMs]);
  return now().nowMs;
}
