import { useEffect } from 'react';

/** Keeps the screen on while the page is seen. Where a browser cannot, it goes dark as ever, and nothing else changes. */
export function useAwake(): void {
  useEffect(() => {
    let held: WakeLockSentinel | null = null;
    let left = false;
    const ask = async () => {
      if (!('wakeLock' in navigator) || document.visibilityState !== 'visible') return;
      try {
        const lock = await navigator.wakeLock.request('screen');
        if (left) await lock.release();
        else held = lock;
      } catch {
        held = null;
      }
    };
    const again = () => void ask();
    again();
    document.addEventListener('visibilitychange', again);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', again);
      void held?.release();
    };
  }, []);
}
