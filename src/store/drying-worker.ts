/** Sums of drying away from the thread that draws. One task at a time, in order. */
import { type DryingTask, dryingSum } from '#record/drying-desk.ts';

self.onmessage = ({ data }: MessageEvent<{ n: number; task: DryingTask }>) => {
  try {
    self.postMessage({ n: data.n, answer: dryingSum(data.task), problem: null });
  } catch (error) {
    self.postMessage({ n: data.n, answer: null, problem: String(error) });
  }
};
