import { type LoggerInput, type LoggerRead, readLogger } from './logger-csv.ts';
import type { LoggerTask, LoggerTold } from './logger-worker.ts';

type Input = Omit<LoggerInput, 'zone'> & { readonly zone: string };

/** Reads a logger's table in a worker of its own; where there is none, or it does not start, on the page, step by step. */
export async function readLoggerAside(input: Input): Promise<LoggerRead> {
  const { bytes, zone, choices = {}, signal, onProgress } = input;
  if (typeof Worker !== 'function') return readLogger(input);
  const worker = new Worker(new URL('./logger-worker.ts', import.meta.url), { type: 'module' });
  const answer = await new Promise<LoggerRead | null>((resolve) => {
    signal?.addEventListener('abort', () => resolve({ state: 'cancelled' }), { once: true });
    worker.onerror = () => resolve(null);
    worker.onmessage = ({ data }: MessageEvent<LoggerTold>) => {
      if (data.answer) resolve(data.answer);
      else onProgress?.(data.doneFraction);
    };
    const task: LoggerTask = { bytes, zone, choices };
    worker.postMessage(task);
  });
  worker.terminate();
  return answer ?? readLogger(input);
}
