import { useEffect } from 'react';

/** Keeps the screen lit while the page is seen. Where the browser cannot, the phone's own setting holds. */
export function useAwake(): void {
  useEffect(() => {
    let held: WakeLockSentinel | null = null;
    let left = false;
    const ask = async () => {
      if (!('wakeLock' in navigator) || document.visibilityState !== 'visible') return;
      // Refused at a low battery: nothing else depends on it.
      const lock = await navigator.wakeLock.request('screen').catch(() => null);
      if (left) await lock?.release();
      else held = lock;
    };
    const seen = () => void ask();
    seen();
    document.addEventListener('visibilitychange', seen);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', seen);
      void held?.release();
    };
  }, []);
}
