import type { Batch } from '#record/batch.ts';
import { partOf } from '#record/due.ts';
import type { Entry } from '#record/entry.ts';
import type { Unbacked } from '#record/exposure.ts';
import type { Check } from '#record/instruments.ts';
import type { Chamber, Place } from '#record/place.ts';
import { type AirDue, type AwayDue, type Line, season } from '#record/season.ts';
import type { SubjectId } from '#record/subject.ts';
import type { FirstWords } from '#words/en/first.ts';
import { joined, temperature } from '#words/format.ts';
import { type Said, said, strong } from '#words/said.ts';

export type TodayLine = {
  readonly key: string;
  readonly href: string;
  readonly text: string;
  readonly note: string;
};

export type TodayView = {
  readonly sentence: Said;
  readonly lines: readonly TodayLine[];
  readonly act: { href: string; label: string } | null;
};

type Given = { place: Place; nowMs: number; zone: string; words: FirstWords };

/** What is due, most consequential first, each line with its reason. */
export function todayView({
  batches,
  chambers = [],
  entries = [],
  checks = [],
  unbacked = null,
  ...given
}: Given & {
  batches: readonly Batch[];
  chambers?: readonly Chamber[];
  entries?: readonly Entry[];
  checks?: readonly Check[];
  unbacked?: Unbacked | null;
}): TodayView {
  const { place, nowMs, words } = given;
  const { today } = words;
  const running = batches.filter(({ stage, decided }) => stage !== 'finished' || !decided);
  const due = season({ batches, chambers, entries, checks, unbacked, nowMs });
  const lines = due.map((line) => lineOf(line, given));
  if (!place.chosen)
    return {
      sentence: today.welcome.sentence,
      lines,
      act: { href: '#/kit/bench', label: today.welcome.setUp },
    };
  if (running.length === 0 && lines.length === 0)
    return { sentence: today.none, lines, act: { href: '#/formulas', label: today.toFormulas } };
  const ofBatches = due.every(({ about }) => about === 'batch');
  return {
    sentence: ofBatches
      ? today.sentence(lines.length, running.length)
      : said(strong(words.why.mixed(lines.length)), '.'),
    lines,
    act: null,
  };
}

const bare = (id: SubjectId) => id.slice(id.indexOf(':') + 1);

function lineOf(line: Line, given: Given): TodayLine {
  const { nowMs, zone, words } = given;
  switch (line.about) {
    case 'batch': {
      const { batch, due } = line;
      const { formula, lot } = batch.opened.body;
      return {
        key: `${batch.id}-${due.code}`,
        href: `#/batches/${bare(batch.id)}/${partOf(due)}`,
        text: words.due(due, nowMs, zone),
        note: `${words.why.batch(due.code)} · ${formula.name}, ${words.batches.lot(lot)}`,
      };
    }
    case 'chamber':
      return {
        key: `${line.due.chamber.id}-${line.due.code}`,
        href: `#/chambers/${bare(line.due.chamber.id)}`,
        ...airText(line.due, given),
      };
    case 'away':
      return { key: line.due.code, href: '#/absence', ...awayText(line.due, given) };
    case 'back-up':
      return {
        key: 'back-up',
        href: '#/kit/keeping',
        text: words.why.backUp(line.entries),
        note: words.why.backUpWhy(words.dates.ago(line.sinceMs, nowMs)),
      };
  }
}

function airText(due: AirDue, { place, nowMs, zone, words }: Given): Pick<TodayLine, 'text' | 'note'> {
  const { name } = due.chamber;
  if (due.code === 'air-unread')
    return {
      text: words.why.airUnread({ name, lastAtMs: due.lastAtMs, nowMs }),
      note: words.why.airUnreadWhy,
    };
  const { sinceMs, untilMs } = due;
  const airC = joined(temperature(due.airC, place));
  return {
    text: words.why.airWarm({ name, airC, sinceMs, untilMs, nowMs, zone }),
    note: words.why.airWarmWhy(joined(temperature(due.limitC, place, 0))),
  };
}

function awayText(due: AwayDue, { nowMs, zone, words }: Given): Pick<TodayLine, 'text' | 'note'> {
  return due.code === 'leave'
    ? {
        text: words.why.leave({ fromMs: due.fromMs, nowMs, zone }),
        note: words.why.leaveWhy({ toMs: due.toMs, zone }),
      }
    : { text: words.why.returned, note: words.why.returnedWhy };
}
