import { BUILD } from '#store/build.ts';

const HOUR_MS = 3_600_000;

type Updates = {
  /** A newer version is on the phone, whole, and waits. `take` starts it; every open page then reloads, each when it may. */
  onWaiting: (take: () => void) => void;
  /** False while something half typed would be lost. */
  mayReload: () => boolean;
};

/** Registers the service worker and says when a newer version waits. Nothing is reloaded that nobody asked for. */
export async function watchForUpdates({ onWaiting, mayReload }: Updates): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  window.addEventListener('vite:preloadError', () => reloadOnce(mayReload));

  const { Workbox } = await import('workbox-window');
  const worker = new Workbox('service-worker.js', { updateViaCache: 'none' });
  worker.addEventListener('waiting', () => onWaiting(() => worker.messageSkipWaiting()));
  // The first worker to take a page in hand brings nothing new; each one after it does.
  let inHand = navigator.serviceWorker.controller !== null;
  worker.addEventListener('controlling', () => {
    if (inHand) reloadWhen(mayReload);
    inHand = true;
  });
  const registration = await worker.register();
  if (!registration) return;
  holdThisBuild(registration);
  askHourly(registration);
}

/** The service worker keeps a build's files for as long as any page holds that build's lock. */
function holdThisBuild(registration: ServiceWorkerRegistration): void {
  const untilThePageCloses = () => new Promise(() => {});
  void navigator.locks.request(
    `greenweight ${registration.scope} ${BUILD}`,
    { mode: 'shared' },
    untilThePageCloses,
  );
  registration.active?.postMessage('tidy');
}

function askHourly(registration: ServiceWorkerRegistration): void {
  let askedAtMs = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - askedAtMs < HOUR_MS) return;
    askedAtMs = Date.now();
    registration.update().catch(() => {
      // No signal: the version at hand goes on, and the next hour asks again.
    });
  });
}

function reloadWhen(mayReload: () => boolean): void {
  if (mayReload()) window.location.reload();
  else window.setTimeout(reloadWhen, 1000, mayReload);
}

/** A part of an older build that is gone everywhere: one reload brings the present one, a second would only loop. */
function reloadOnce(mayReload: () => boolean): void {
  const key = `reloaded from ${BUILD}`;
  if (!mayReload() || sessionStorage.getItem(key) !== null) return;
  sessionStorage.setItem(key, 'yes');
  window.location.reload();
}
