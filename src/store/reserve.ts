/**
 * Some room on the disk, held by a file of its own and given back when a reading finds no other. What a browser says of the
 * room that is left is no help: some name a round number that has nothing to do with the disk.
 */
import { problemOf } from './problem.ts';
import type { ReserveAnswer, ReserveTask } from './reserve-worker.ts';
import { KEPT_FOR_READINGS_BYTES, leftBytes } from './room.ts';
import { setState, storeState } from './state.ts';

const ANSWER_MS = 5000;

/** Beside the log and after it: no entry waits for it. */
export async function holdReserve(): Promise<void> {
  const answer = await ask('hold');
  const left = await leftBytes();
  if ('heldBytes' in answer)
    setState({ room: left !== null && left < KEPT_FOR_READINGS_BYTES ? 'low' : 'kept' });
  else if (problemOf({ message: answer.problem }).code === 'full') setState({ room: 'used' });
}

/** Whether there was any to give back: then it is worth another try. */
export async function freeReserve(): Promise<boolean> {
  if (storeState().room === 'used') return false;
  const answer = await ask('free');
  if (!('heldBytes' in answer) || answer.heldBytes === 0) return false;
  setState({ room: 'used' });
  return true;
}

let worker: Worker | null = null;
let turn: Promise<unknown> = Promise.resolve();

function ask(task: ReserveTask): Promise<ReserveAnswer> {
  const answer = turn.then(() => askWorker(task));
  turn = answer;
  return answer;
}

function askWorker(task: ReserveTask): Promise<ReserveAnswer> {
  if (typeof Worker !== 'function' || typeof navigator.storage?.getDirectory !== 'function')
    return Promise.resolve({ problem: 'not in this browser' });
  if (task === 'free' && worker === null) return Promise.resolve({ problem: 'none is held' });
  worker ??= new Worker(new URL('./reserve-worker.ts', import.meta.url), { type: 'module' });
  const asked = worker;
  return new Promise<ReserveAnswer>((resolve) => {
    const settle = (answer: ReserveAnswer) => {
      clearTimeout(timer);
      resolve(answer);
    };
    const timer = setTimeout(() => settle({ problem: 'no answer' }), ANSWER_MS);
    asked.onmessage = ({ data }: MessageEvent<ReserveAnswer>) => settle(data);
    asked.onerror = () => settle({ problem: 'no answer' });
    asked.postMessage(task);
  });
}
