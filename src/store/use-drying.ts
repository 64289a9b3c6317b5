/** Asks for a sum of drying, which another thread works out: the page never waits. */
import { useEffect, useRef, useState } from 'react';
import type { DryingAnswer, DryingTask } from '#record/drying-desk.ts';

type Reply = { readonly n: number; readonly answer: unknown; readonly problem: string | null };

/** `answer` is the last one that came, also while the next is under way (`working`); null before the first. */
export type Drying<T extends DryingTask> = {
  readonly answer: DryingAnswer<T> | null;
  /** What the answer was given to. */
  readonly of: T | null;
  readonly working: boolean;
  readonly problem: string | null;
  /** What the problem was with. */
  readonly failed: T | null;
};

const NOTHING = { answer: null, of: null, working: false, problem: null, failed: null };

/**
 * The answer to a task, anew whenever the task is another object; null asks nothing. A task that comes while one is being
 * worked out waits, and only the newest of those that wait is begun.
 */
export function useDrying<T extends DryingTask>(task: T | null): Drying<T> {
  const desk = useRef<ReturnType<typeof openDesk> | null>(null);
  const [held, setHeld] = useState<Drying<T>>(NOTHING);
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
    setHeld((before) => ({ ...before, working: true }));
    desk.current?.ask(task, ({ answer, problem }, isNewest) =>
      setHeld((before) =>
        problem === null
          ? { ...NOTHING, answer: answer as DryingAnswer<T>, of: task, working: !isNewest }
          : { ...before, working: !isNewest, problem, failed: task },
      ),
    );
  }, [task]);
  return held;
}

type Asked = { readonly task: DryingTask; readonly done: (reply: Reply, isNewest: boolean) => void };

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
    done?.done(reply, waiting === null);
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
