import type { Batch } from '#record/batch.ts';
import { benchSteps } from '#record/bench-steps.ts';
import { due } from '#record/due.ts';
import type { BenchStep } from '#record/kinds.ts';
import { meatCount } from '#record/meat-count.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type BenchView = {
  readonly line: string;
  readonly sentence: Said;
  readonly rows: readonly { step: BenchStep; title: string; note: string; figure: string; unit: string }[];
  readonly next: BenchStep | null;
  readonly unweighed: number;
  /** The meat is not what was planned: nothing is mixed before that is settled at the weigh-out. */
  readonly miscounted: boolean;
  /** Timers that run, and those that ended within the hour. */
  readonly timers: readonly { key: string; label: string; startMs: number; endMs: number; note: string }[];
};

const HOUR_MS = 3_600_000;

export function benchView({
  batch,
  place,
  nowMs,
  words,
}: {
  batch: Batch;
  place: Place;
  nowMs: number;
  words: Words;
}): BenchView {
  const { bench } = words;
  const { formula, lot } = batch.opened.body;
  const last = (step: BenchStep) => batch.steps.filter(({ kind }) => kind === step).at(-1);
  const steps = benchSteps(batch);
  const next = steps.find((step) => !last(step)) ?? null;
  const waits = due(batch, nowMs).find(({ code }) => code === 'weigh-out');
  const unweighed = waits?.code === 'weigh-out' ? waits.left : 0;
  const miscounted = meatCount(batch)?.open ?? false;
  const mixing = next === 'mixed' || next === 'stuffed';
  return {
    line: bench.line(formula.name, lot),
    sentence:
      mixing && unweighed > 0
        ? bench.sentence.weighOut(unweighed)
        : mixing && miscounted
          ? bench.sentence.miscounted
          : (formula.kind === 'comminuted' ? bench.sentence : bench.ofMuscle)[next ?? 'done'],
    miscounted,
    rows: steps.map((step) => {
      const entry = last(step);
      const tempC = entry?.body.tempC;
      const shown = tempC === undefined ? { value: '', unit: '' } : temperature(tempC, place);
      return {
        step,
        title: bench.step[step],
        note: entry
          ? [
              bench.doneAt(words.dates.near(entry.atMs, nowMs, entry.zone)),
              entry.by,
              ...(['leanC', 'fatC'] as const).map((field) => {
                const beforeC = entry.body[field];
                return beforeC === undefined ? '' : bench.wasAt[field](joined(temperature(beforeC, place)));
              }),
              entry.body.override && bench.gate.wentOn(entry.body.override),
              entry.body.note,
            ]
              .filter(Boolean)
              .join(', ')
          : bench.notYet,
        figure: shown.value,
        unit: shown.unit,
      };
    }),
    next,
    unweighed,
    timers: batch.timers
      .filter(({ body }) => body.endMs > nowMs - HOUR_MS)
      .map(({ id, atMs, zone, body }) => ({
        key: id,
        label: body.name,
        startMs: atMs,
        endMs: body.endMs,
        note: words.timers.until(words.dates.near(body.endMs, nowMs, zone)),
      })),
  };
}
