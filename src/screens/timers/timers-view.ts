import { backPlan } from '#core/ferment/back-plan.ts';
import type { DueEvent } from '#files/icalendar.ts';
import type { Batch } from '#record/batch.ts';
import type { EntryId } from '#record/entry.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';

export type TimersView = {
  readonly line: string;
  readonly sentence: Said;
  readonly tasks: readonly { key: string; title: string; note: string; figure: string }[];
  readonly timers: readonly { key: EntryId; label: string; endMs: number; startMs: number; note: string }[];
  /** For a calendar: the same due time keeps its name for ever, and what was moved counts up. */
  readonly events: readonly DueEvent[];
};

type Given = { batch: Batch; nowMs: number; zone: string; words: Words };
const MINUTES_PER_HOUR = 60;
const ALARM_MINUTES = 5;

/** Tasks planned backwards from stuffing, timers, and both as events. All of them are instants on the record. */
export function timersView({ batch, nowMs, zone, words }: Given): TimersView {
  const say = words.timers;
  const planned = batch.stuffingPlanned;
  const near = (atMs: number) => words.dates.near(atMs, nowMs, zone);
  const title = (id: string) => say.tasks[id] ?? id;
  const tasks = planned
    ? backPlan({
        finishAtMs: planned.body.finishMs,
        tasks: planned.body.tasks.map(({ name, minutes }) => ({ id: name, durationMinutes: minutes })),
        nowMs,
      })
    : [];
  const { formula, lot } = batch.opened.body;
  const isStuffed = batch.stuffedAtMs !== null;
  return {
    line: say.line(formula.name, lot),
    sentence: sentenceOf(),
    tasks: [
      ...tasks.map(({ id, startAtMs, durationMinutes, isLate, lateMinutes }) => ({
        key: id,
        title: title(id),
        note: [
          say.takes(words.dates.span(durationMinutes / MINUTES_PER_HOUR)),
          ...(isLate && !isStuffed ? [say.lateBy(words.dates.span(lateMinutes / MINUTES_PER_HOUR))] : []),
        ].join(', '),
        figure: near(startAtMs),
      })),
      ...(planned
        ? [{ key: 'stuffing', title: title('stuffing'), note: '', figure: near(planned.body.finishMs) }]
        : []),
    ],
    timers: batch.timers.map(({ id, atMs, body }) => ({
      key: id,
      label: body.name,
      startMs: atMs,
      endMs: body.endMs,
      note: say.until(near(body.endMs)),
    })),
    events: [
      ...(planned
        ? [
            ...tasks.map(({ id, startAtMs }) =>
              event(`${batch.id}-${id}`, title(id), startAtMs, planned.seq),
            ),
            event(`${batch.id}-stuffing`, title('stuffing'), planned.body.finishMs, planned.seq),
          ]
        : []),
      ...batch.timers.map(({ id, body }) => event(id, body.name, body.endMs, 0)),
    ].filter(({ atMs }) => atMs > nowMs),
  };

  function event(uid: string, what: string, atMs: number, sequence: number): DueEvent {
    return { uid, sequence, title: `${what} (${lot})`, atMs, alarmMinutesBefore: ALARM_MINUTES };
  }

  function sentenceOf(): Said {
    if (!planned || isStuffed) return planned ? say.sentence.begun : say.sentence.none;
    const next = tasks.find(({ startAtMs }) => startAtMs > nowMs);
    const late = tasks.find(
      ({ lateMinutes, durationMinutes }) => lateMinutes > 0 && lateMinutes < durationMinutes,
    );
    if (late && !next)
      return say.sentence.late(title(late.id), words.dates.span(late.lateMinutes / MINUTES_PER_HOUR));
    if (next) return say.sentence.next(title(next.id), near(next.startAtMs));
    return planned.body.finishMs > nowMs
      ? say.sentence.next(title('stuffing'), near(planned.body.finishMs))
      : say.sentence.begun;
  }
}
