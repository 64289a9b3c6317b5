import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, type Writing } from '#words/format.ts';

/** More lines than this nobody reads: a logger's rows are shown by the six hours. */
const MOST_STEPS = 40;
const ROW_MS = 6 * 3_600_000;

function sixHourRows(clock: FermentClock, { place, words }: { place: Place; words: Words }) {
  const { work } = words.ferment;
  const steps = clock.sum?.steps ?? [];
  const fromMs = clock.sum?.fromMs ?? 0;
  const groups = new Map<number, (typeof steps)[number][]>();
  for (const step of steps) {
    const at = Math.floor((step.fromMs - fromMs) / ROW_MS);
    const group = groups.get(at);
    if (group) group.push(step);
    else groups.set(at, [step]);
  }
  return [...groups].map(([at, group]) => {
    const degrees = group.flatMap(({ fromDeg, toDeg }) => [fromDeg, toDeg]);
    const shown = (value: number) => `${decimal(value, 1, place)}\u00a0°${clock.unit}`;
    return {
      label: work.hours(
        `${at * 6}`,
        `${at * 6 + 6}`,
        shown(Math.min(...degrees)),
        shown(Math.max(...degrees)),
        group.length,
      ),
      value: decimal(
        group.reduce((sum, step) => sum + step.degreeHours, 0),
        1,
        place,
        'up',
      ),
      ...(group.some(({ isGap }) => isGap) ? { note: work.gap } : {}),
    };
  });
}

/** The working, made of the very steps that were added up. */
export function degreeHourWorking(clock: FermentClock, { place, words }: { place: Place; words: Words }) {
  const { work } = words.ferment;
  const unit = `°${clock.unit}`;
  const degrees = (value: number) => `${decimal(value, 1, place)}\u00a0${unit}`;
  const count = (value: number, writing: Pick<Writing, 'decimal'>) => decimal(value, 1, writing, 'up');
  return {
    title: work.title,
    equation: work.equation,
    rows: [
      { label: work.base, value: degrees(clock.base.value) },
      ...((clock.sum?.steps.length ?? 0) <= MOST_STEPS
        ? (clock.sum?.steps ?? []).map((step, at) => ({
            label: `${at + 1}. ${work.step(
              `${decimal(step.durationHours, 2, place)}\u00a0h`,
              degrees(step.fromDeg),
              degrees(step.toDeg),
            )}`,
            value: count(step.degreeHours, place),
            ...(step.isGap ? { note: work.gap } : {}),
          }))
        : sixHourRows(clock, { place, words })),
      { label: work.highest, value: degrees(clock.sum?.highestDeg ?? 0) },
    ],
    result: { label: work.result, value: count(clock.sum?.totalDegreeHours ?? 0, place) },
    ...(clock.limit ? { limit: words.workings.limit(clock.limit, place) } : {}),
    caution: work.caution,
    sources: [clock.limit, clock.base].flatMap((limit) =>
      limit ? [words.workings.source(limit.source)] : [],
    ),
    words: words.workings.words,
  };
}
