import { useEffect, useState } from 'react';

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

/** The time, asked anew every so often and whenever the page comes back into view: a phone that slept counts no intervals. */
export function useNowMs(everyMs: number): number {
  const [nowMs, setNowMs] = useState(() => now().nowMs);
  useEffect(() => {
    const ask = () => setNowMs(now().nowMs);
    const timer = setInterval(ask, everyMs);
    document.addEventListener('visibilitychange', ask);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', ask);
    };
  }, [everyMs]);
  return nowMs;
}
