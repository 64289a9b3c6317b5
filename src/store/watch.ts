/** What may happen to the connection while the page is open: a newer build, a browser that dropped it, a phone that slept. */
import { log } from './database.ts';
import { probe } from './heal.ts';
import { type StartState, setState, storeState } from './state.ts';

let watching = false;

export function watch(checkAgain: () => Promise<StartState>): void {
  if (watching) return;
  watching = true;
  log.on('versionchange', (event: IDBVersionChangeEvent) => {
    if (event.newVersion === null) return true;
    // A newer build waits to open the log: this page finishes what it writes, and writes no more.
    log.close({ disableAutoOpen: true });
    setState({ start: { code: 'newer-open' } });
    return false;
  });
  log.on('blocked', () => setState({ start: { code: 'blocked' } }));
  // The browser closed it by itself, as when site data are cleared: what is left must be looked at before the next entry.
  log.on('ready', () => log.backendDB().addEventListener('close', () => void checkAgain()), true);
  if (typeof document === 'undefined') return;
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void answer();
  });
  window.addEventListener('pageshow', () => void answer());
}

async function answer(): Promise<void> {
  if (storeState().start.code !== 'ready') return;
  setState({ connection: (await probe()) ? 'ok' : 'lost' });
}
