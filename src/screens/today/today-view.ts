import type { Batch } from '#record/batch.ts';
import { due, moreConsequential, partOf } from '#record/due.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';

export type TodayView = {
  readonly sentence: Said;
  readonly lines: readonly { key: string; href: string; text: string; note: string }[];
  readonly act: { href: string; label: string } | null;
};

export function todayView({
  batches,
  place,
  nowMs,
  zone,
  words,
}: {
  batches: readonly Batch[];
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
}): TodayView {
  const { today } = words;
  const running = batches.filter(({ stage, decided }) => stage !== 'finished' || !decided);
  const lines = running
    .flatMap((batch) => due(batch, nowMs).map((waits) => ({ batch, waits })))
    .sort((a, b) => moreConsequential(a.waits, b.waits))
    .map(({ batch, waits }) => ({
      key: `${batch.id}-${waits.code}`,
      href: `#/batches/${batch.id.slice('batch:'.length)}/${partOf(waits)}`,
      text: words.due(waits, nowMs, zone),
      note: `${batch.opened.body.formula.name}, ${words.batches.lot(batch.opened.body.lot)}`,
    }));
  if (!place.chosen)
    return {
      sentence: today.welcome.sentence,
      lines,
      act: { href: '#/kit/bench', label: today.welcome.setUp },
    };
  if (running.length === 0)
    return { sentence: today.none, lines, act: { href: '#/formulas', label: today.toFormulas } };
  return { sentence: today.sentence(lines.length, running.length), lines, act: null };
}
