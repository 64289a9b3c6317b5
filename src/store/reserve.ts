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

/**
 * Whether the disk takes anything more, by itself or because what was held is given back now. `none`: nothing is to be opened
 * anew there, since a browser that opens a store on a full disk may take it for broken and throw it away.
 */
export async function makeRoom(): Promise<'there' | 'made' | 'none' | 'not-known'> {
  const answer = await ask('free');
  if (!('room' in answer)) return 'not-known';
  if (answer.room === 'made') spentChars = 0;
  if (answer.room !== 'there') setState({ room: 'used' });
  return answer.room;
}

/**
 * Whether the disk takes a photo beside what is held; true where that cannot be told. Asked before its store is written to: one
 * photo too many, and a browser may throw away the log as well.
 */
export async function takesPhoto(): Promise<boolean> {
  const answer = await ask('ask');
  return !('room' in answer) || answer.room === 'there';
}

/** Of the room that was given back, what lines may take: each stands in both copies, and the rest lets the stores settle. */
const SPENDABLE_CHARS = 1_500_000;
let spentChars: number | null = null;

/**
 * Whether so much may be written. A store that comes up against the end of a disk may be thrown away whole by the browser, so that the
 * room that was given back is not written full.
 */
export function maySpend(chars: number): boolean {
  if (storeState().room !== 'used' || spentChars === null) return true;
  if (spentChars + chars > SPENDABLE_CHARS) return false;
  spentChars += chars;
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
