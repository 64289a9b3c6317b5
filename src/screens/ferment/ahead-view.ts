import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import type { PhWindow } from '#core/ferment/ph-forecast.ts';
import { temperatureToC } from '#core/units.ts';
import type { PhAhead } from '#record/ph-ahead.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';

type Given = {
  clock: FermentClock;
  ahead: PhAhead;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};
type FigureText = {
  key: string;
  label: string;
  value: string;
  unit?: string;
  note?: string;
  about?: boolean;
  interval?: string;
};

const HALF_HOUR_MS = 30 * 60_000;

/** To the half hour, and a window never narrower than it is: minutes would look like a measurement. */
function coarse(atMs: number, towards: 'down' | 'nearest' | 'up'): number {
  const halves = atMs / HALF_HOUR_MS;
  const whole =
    towards === 'down' ? Math.floor(halves) : towards === 'up' ? Math.ceil(halves) : Math.round(halves);
  return whole * HALF_HOUR_MS;
}

/** When the pH should be there and when to read it next, as a tail of the sentence. */
export function aheadSentence({ clock, ahead, nowMs, zone, words }: Given): Said {
  const say = words.fermentAhead.sentence;
  if (clock.stop !== null) return [];
  const near = (atMs: number) => words.dates.near(atMs, nowMs, zone);
  const { earliestAtMs, likelyAtMs, latestAtMs } = ahead.stop;
  const isAhead = likelyAtMs !== null && likelyAtMs > nowMs;
  const window =
    isAhead && earliestAtMs !== null && latestAtMs !== null
      ? say.stop(
          near(coarse(likelyAtMs, 'nearest')),
          near(Math.max(nowMs, coarse(earliestAtMs, 'down'))),
          near(coarse(latestAtMs, 'up')),
        )
      : earliestAtMs !== null && earliestAtMs > nowMs
        ? say.open(near(coarse(earliestAtMs, 'down')))
        : likelyAtMs === null
          ? say.never
          : [];
  const { next } = ahead;
  const read = next === null ? [] : next.dueAtMs <= nowMs ? say.nextNow : say.next(near(next.dueAtMs));
  return said(...window, ...read);
}

/** Hours left, the two windows, the end point and the next reading, each with its interval. */
export function aheadFigures(given: Given): FigureText[] {
  const { clock, ahead, place, nowMs, zone, words } = given;
  const say = words.fermentAhead;
  const ph = (value: number) => decimal(value, 1, place);
  const { endPh } = ahead.forecast;
  const { next } = ahead;
  return [
    ...leftFigure(given),
    ...(clock.stop === null ? windowFigure('stop', say.figures.stop, ahead.stop, given) : []),
    ...windowFigure('band', say.figures.band(ph(ahead.band.ph)), ahead.band, given),
    {
      key: 'end',
      label: say.figures.end,
      value: ph(endPh.midPh),
      about: true,
      interval: say.figures.endWindow(ph(endPh.lowPh), ph(endPh.highPh)),
    },
    ...(next === null
      ? []
      : [
          {
            key: 'next',
            label: say.figures.next,
            value:
              next.dueAtMs <= nowMs
                ? say.figures.now
                : words.dates.dayCount(nowMs, next.dueAtMs, zone) === 0
                  ? words.dates.clock(next.dueAtMs, zone)
                  : words.dates.near(next.dueAtMs, nowMs, zone),
            note: say.why[next.why],
          },
        ]),
  ];
}

function leftFigure({ clock, place, words }: Given): FigureText[] {
  const { ahead } = clock;
  const say = words.fermentAhead.figures;
  if (ahead === null || clock.finding.verdict === 'deviation') return [];
  const room = joined(temperature(temperatureToC({ value: ahead.roomDeg, unit: clock.unit }), place));
  const { hours } = ahead.hoursLeft;
  return [
    {
      key: 'left',
      label: say.left(room),
      value: hours === null ? say.never : hours === 0 ? say.over : words.dates.span(hours),
      ...(hours ? { about: true } : {}),
      ...(clock.finding.verdict === 'does-not-apply'
        ? { note: say.leftReference }
        : hours
          ? { note: say.leftNote }
          : {}),
    },
  ];
}

function windowFigure(
  key: string,
  label: string,
  { earliestAtMs, likelyAtMs, latestAtMs }: PhWindow,
  { nowMs, zone, words }: Given,
): FigureText[] {
  const say = words.fermentAhead.figures;
  const near = (atMs: number) => words.dates.near(atMs, nowMs, zone);
  if (likelyAtMs === null || likelyAtMs <= nowMs) return [];
  const early = near(Math.max(nowMs, coarse(earliestAtMs ?? nowMs, 'down')));
  const likelyMs = coarse(likelyAtMs, 'nearest');
  return [
    {
      key,
      label,
      value:
        words.dates.dayCount(nowMs, likelyMs, zone) === 0
          ? words.dates.clock(likelyMs, zone)
          : near(likelyMs),
      about: true,
      interval: latestAtMs === null ? say.from(early) : say.window(early, near(coarse(latestAtMs, 'up'))),
    },
  ];
}

/** What would be used by the time that pH 5.3 is due: the late end is drawn, since it is the one to mind. */
export function barAhead(
  { clock, ahead, place, nowMs, words }: Given,
  limit: number,
): { projectedShare: number; projectedText: string } | null {
  const { likelyDegreeHours, latestDegreeHours } = ahead;
  const count = (value: number) => decimal(value, 0, place, 'up');
  // Once the likely time is over it was not read there: what is used by now says more.
  if (clock.stop !== null || likelyDegreeHours === null || (ahead.stop.likelyAtMs ?? nowMs) <= nowMs)
    return null;
  const say = words.fermentAhead.bar;
  const usedDegreeHours = clock.sum?.totalDegreeHours ?? 0;
  const share = (degreeHours: number) => Math.max(usedDegreeHours, degreeHours) / limit;
  return latestDegreeHours === null
    ? { projectedShare: share(likelyDegreeHours), projectedText: say.dueFrom(count(likelyDegreeHours)) }
    : {
        projectedShare: share(latestDegreeHours),
        projectedText: say.due(count(likelyDegreeHours), count(latestDegreeHours)),
      };
}

export function restsOn({ ahead, words }: Pick<Given, 'ahead' | 'words'>): string {
  const say = words.fermentAhead;
  return say.rests({
    count: ahead.forecast.count,
    own: ahead.own.length,
    assumes: ahead.forecast.assumes.map((code) => say.assumes[code]).join(', '),
  });
}
