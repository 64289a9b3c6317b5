import type { Batch } from '#record/batch.ts';
import { due } from '#record/due.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';

export type BatchesView = {
  readonly sentence: Said;
  readonly rows: readonly { key: string; href: string; title: string; note: string; value: string }[];
};

/** Newest first; each with its stage and the first thing it waits for. */
export function batchesView({
  batches,
  nowMs,
  zone,
  words,
}: {
  batches: readonly Batch[];
  nowMs: number;
  zone: string;
  words: Words;
}): BatchesView {
  if (batches.length === 0) return { sentence: words.batches.none, rows: [] };
  const finished = batches.filter(({ stage }) => stage === 'finished').length;
  const rows = [...batches]
    .sort((a, b) => b.opened.atMs - a.opened.atMs)
    .map((batch) => {
      const first = due(batch, nowMs)[0];
      const day = words.dates.dayCount(batch.stuffedAtMs ?? batch.opened.atMs, nowMs, zone);
      return {
        key: batch.id,
        href: `#/batches/${batch.id.slice('batch:'.length)}`,
        title: batch.opened.body.formula.name,
        note: [
          words.batches.lot(batch.opened.body.lot),
          words.batches.stage[batch.stage],
          first && words.due(first, nowMs, zone),
        ]
          .filter(Boolean)
          .join(' · '),
        // Short, so that it fits beside or below the words in text twice as large.
        value: batch.stage === 'finished' ? '' : words.batches.day(day),
      };
    });
  return { sentence: words.batches.sentence(batches.length - finished, finished), rows };
}
