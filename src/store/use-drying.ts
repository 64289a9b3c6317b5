/** Asks for a sum of drying, which another thread works out: the page never waits. */
import { useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { DryingAnswer, DryingTask } from '#record/drying-desk.ts';

type Reply = { readonly n: number; readonly answer: unknown; readonly problem: string | null };

type Held<T extends DryingTask> = {
  /** The last one that came, also while the next is under way; null before the first. */
  readonly answer: DryingAnswer<T> | null;
  /** What the answer was given to. */
  readonly of: T | null;
  readonly problem: string | null;
  /** What the problem was with. */
  readonly failed: T | null;
};
/** `working`: the answer to this very task is still to come. */
export type Drying<T extends DryingTask> = Held<T> & { readonly working: boolean };

const NOTHING = { answer: null, of: null, problem: null, failed: null };

/**
 * The answer to a task, anew whenever the task is another object; null asks nothing. A task that comes while one is being
 * worked out waits, and only the newest of those that wait is begun. `atOnce`: the page draws the answer before a chart that
 * it is drawing at leisure is done.
 */
export function useDrying<T extends DryingTask>(task: T | null, { atOnce = false } = {}): Drying<T> {
  const desk = useRef<ReturnType<typeof openDesk> | null>(null);
  const [held, setHeld] = useState<Held<T>>(NOTHING);
  useEffect(() => {
    const opened = openDesk();
    desk.current = opened;
    return () => {
      desk.current = null;
      opened.close();
    };
  }, []);
  useEffect(() => {
    if (task === null) return;
    desk.current?.ask(task, ({ answer, problem }) => {
      const hold = () =>
        setHeld((before) =>
          problem === null
            ? { ...NOTHING, answer: answer as DryingAnswer<T>, of: task }
            : { ...before, problem, failed: task },
        );
      if (atOnce) flushSync(hold);
      else hold();
    });
  }, [task, atOnce]);
  return { ...held, working: task !== null && held.of !== task && held.failed !== task };
}

type Asked = { readonly task: DryingTask; readonly done: (reply: Reply) => void };

function openDesk() {
  const worker = new Worker(new URL('./drying-worker.ts', import.meta.url), { type: 'module' });
  let n = 0;
  let under: Asked | null = null;
  let next: Asked | null = null;
  const begin = (asked: Asked) => {
    under = asked;
    n += 1;
    worker.postMessage({ n, task: asked.task });
  };
  const finish = (reply: Reply) => {
    const done = under;
    under = null;
    const waiting = next;
    next = null;
    if (waiting) begin(waiting);
    done?.done(reply);
  };
  worker.onmessage = ({ data }: MessageEvent<Reply>) => finish(data);
  worker.onerror = ({ message }) => finish({ n, answer: null, problem: message });
  return {
    ask(task: DryingTask, done: Asked['done']) {
      const asked = { task, done };
      if (under) next = asked;
      else begin(asked);
    },
    close() {
      worker.terminate();
    },
  };
}
