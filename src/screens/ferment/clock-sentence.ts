import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import { temperatureToC } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import { phBandOf } from '#record/ferment-plan.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

type Given = {
  batch: Batch;
  clock: FermentClock | null;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};

/** Where the ferment stands and what to do: the most consequential thing first. */
export function clockSentence({ batch, clock, place, nowMs, zone, words }: Given): Said {
  const { sentence, why } = words.ferment;
  const near = (atMs: number) => words.dates.near(atMs, nowMs, zone);
  if (clock === null) return sentence.notStuffed;
  if (clock.finding.verdict === 'deviation') return sentence.passed(clock.isAtLimit);
  if (batch.hung) return sentence.hung(near(batch.hung.atMs));
  if (batch.fermentEnded) return sentence.ended(near(batch.fermentEnded.atMs));
  if (clock.sum === null || clock.limit === null)
    return phBandOf(batch.plan) === null ? sentence.unfermented : sentence.noRoom;
  const total = decimal(clock.sum.totalDegreeHours, 0, place, 'up');
  const limit = decimal(clock.limit.value, 0, place);
  if (clock.finding.verdict === 'does-not-apply' && clock.stop === null)
    return sentence.reference(total, limit);
  if (clock.worstCase && clock.gaps.some(({ where }) => where !== 'after-last'))
    return sentence.gap(decimal(clock.worstCase.totalDegreeHours, 0, place, 'up'), limit);
  if (clock.stop) return sentence.stopped(decimal(clock.stop.ph, 2, place), near(clock.stop.atMs));
  if (clock.unconfirmed) return sentence.confirm(why[clock.unconfirmed.why]);
  const { ahead } = clock;
  if (ahead === null) return sentence.noRoom;
  if (ahead.isStale) return sentence.stale(words.dates.ago(ahead.lastReadAtMs, nowMs));
  const room = joined(temperature(temperatureToC({ value: ahead.roomDeg, unit: clock.unit }), place));
  if (ahead.runsOutAtMs === null || ahead.hoursLeft.hours === null) return sentence.neverRuns(room);
  return sentence.running(room, near(ahead.runsOutAtMs), words.dates.span(ahead.hoursLeft.hours));
}
