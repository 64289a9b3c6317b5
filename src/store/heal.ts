import { log } from './database.ts';
import { problemOf, type StoreProblem } from './problem.ts';
import { makeRoom } from './reserve.ts';

export type Healed<T> = { ok: true; value: T } | { ok: false; problem: StoreProblem };

const PAUSES_MS = [0, 60, 300];
const PROBE_MS = 2000;

/**
 * Runs work on the log; when the browser dropped the connection (a phone that slept, a storage process that died), the dead
 * handle is let go and the work runs again on a new one; so it does where the phone is full and some room was held back for
 * this. The work must be repeatable: it may have been done already.
 */
export async function healing<T>(work: () => PromiseLike<T>): Promise<Healed<T>> {
  let problem: StoreProblem = { code: 'connection-lost' };
  for (const pauseMs of [...PAUSES_MS, null]) {
    try {
      return { ok: true, value: await work() };
    } catch (error) {
      problem = problemOf(error);
      if ((problem.code !== 'connection-lost' && problem.code !== 'full') || pauseMs === null) break;
      // On a full disk the browser may shut the log without a word of the disk.
      const room = await makeRoom();
      if (room === 'none') problem = { code: 'full' };
      if (problem.code === 'full' && room !== 'made') break;
      await new Promise((resolve) => setTimeout(resolve, pauseMs));
      await reopen();
    }
  }
  return { ok: false, problem };
}

/** Whether the log still answers; a handle that does not answer in time is let go and opened anew. */
export async function probe(): Promise<boolean> {
  const answer = await healing(() =>
    Promise.race([
      log.devices.count(),
      new Promise<never>((_, reject) =>
        setTimeout(() => reject(new DOMException('no answer', 'TimeoutError')), PROBE_MS),
      ),
    ]),
  );
  return answer.ok;
}

async function reopen(): Promise<void> {
  log.close({ disableAutoOpen: false });
  try {
    await log.open();
  } catch {
    // The next round of the work meets the same problem and names it.
  }
}
