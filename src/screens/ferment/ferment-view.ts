import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import { type PhBandAnswer, phBandAnswer } from '#core/rules/ph-band.ts';
import type { Finding } from '#core/rules/rule.ts';
import type { Batch } from '#record/batch.ts';
import { fermentFigures, lastRoomHumidity, phReadings, roomSeries } from '#record/ferment-figures.ts';
import { phBandOf } from '#record/ferment-plan.ts';
import type { PhAhead } from '#record/ph-ahead.ts';
import type { Place } from '#record/place.ts';
import { isStalled } from '#record/stall-figures.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';
import { aheadFigures, aheadSentence, barAhead, restsOn } from './ahead-view.ts';
import { clockSentence } from './clock-sentence.ts';
import { degreeHourWorking } from './degree-hour-working.ts';
import { phChart } from './ph-chart.ts';
import { disagreements, type ReadingRow, readingRows } from './readings-view.ts';
import { roomChart } from './room-chart.ts';

type Given = {
  batch: Batch;
  /** Where it was computed already: a month of minutes takes its time. */
  clock?: FermentClock | null;
  /** What is computed ahead, once it is there. */
  ahead?: PhAhead | null;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};

export type FermentView = {
  readonly line: string;
  readonly sentence: Said;
  readonly verdicts: readonly { key: string; verdict: Finding['verdict']; word: string }[];
  readonly working: ReturnType<typeof degreeHourWorking> | null;
  readonly bar: {
    label: string;
    usedShare: number;
    usedText: string;
    projectedShare?: number;
    projectedText?: string;
    limitText: string;
  } | null;
  readonly chart: ReturnType<typeof phChart>;
  readonly roomChart: ReturnType<typeof roomChart>;
  readonly figures: readonly {
    key: string;
    label: string;
    value: string;
    unit?: string;
    note?: string;
    about?: boolean;
    interval?: string;
  }[];
  readonly clock: FermentClock | null;
  readonly rests: string | null;
  readonly notices: readonly string[];
  readonly readings: readonly ReadingRow[];
  readonly stage: 'before' | 'running' | 'stopped' | 'ended' | 'hung';
  readonly passed: boolean;
  /** The pH hardly moved for the time and the warmth it had. */
  readonly stalled: boolean;
};

export function fermentView(given: Given): FermentView {
  const { batch, nowMs, words } = given;
  const clock = given.clock === undefined ? fermentFigures(batch, nowMs) : given.clock;
  const own = phBandOf(batch.plan);
  const band = own && phBandAnswer({ readings: phReadings(batch), band: own });
  const ahead =
    given.ahead && clock && !batch.fermentEnded && !batch.hung && clock.finding.verdict !== 'deviation'
      ? { ...given, clock, ahead: given.ahead }
      : null;
  const chart = phChart({ ...given, ahead: ahead?.ahead ?? null });
  return {
    // Made when it is asked for: of a month of minutes it has as many steps.
    get working() {
      return clock?.sum ? degreeHourWorking(clock, given) : null;
    },
    line: words.ferment.line(batch.opened.body.formula.name, batch.opened.body.lot),
    sentence: said(
      ...clockSentence({ ...given, clock }),
      ...(band === null || (ahead && band.position === 'above') ? [] : bandSentence(given, band)),
      ...(ahead ? aheadSentence(ahead) : []),
    ),
    verdicts:
      clock === null
        ? []
        : [clock.finding, ...(band ? [band.finding] : [])].map((finding) => verdictOf(finding, words)),
    bar: barOf(clock, given),
    chart,
    roomChart: roomChart({ ...given, clock, xTicks: chart?.model.xTicks ?? null }),
    figures: [...figuresOf(clock, given), ...(ahead ? aheadFigures(ahead) : [])],
    clock,
    rests: ahead ? restsOn(ahead) : null,
    notices: disagreements(batch, clock, given.place, words),
    readings: readingRows(given),
    stage: stageOf(batch, clock),
    passed: clock?.finding.verdict === 'deviation',
    stalled: clock?.finding.verdict !== 'deviation' && isStalled(batch, nowMs),
  };
}

function stageOf(batch: Batch, clock: FermentClock | null): FermentView['stage'] {
  if (batch.hung) return 'hung';
  if (batch.fermentEnded) return 'ended';
  if (clock === null) return 'before';
  if (phBandOf(batch.plan) === null) return 'ended';
  return clock.stop ? 'stopped' : 'running';
}

function bandSentence({ batch, place, words }: Given, { position }: PhBandAnswer): Said {
  const last = batch.ph
    .filter(({ body }) => body.sample !== 'mix' && !body.doubted && body.method === 'meter')
    .at(-1);
  const own = phBandOf(batch.plan);
  if (position === null || !last || own === null) return [];
  return words.ferment.band[position](
    decimal(last.body.ph, 2, place),
    decimal(own.lowPh, 1, place),
    decimal(own.highPh, 1, place),
  );
}

function verdictOf(finding: Finding, words: Words) {
  const { rule, missing } = words.ferment;
  const why = finding.missing.map((code) => missing[code] ?? code).join(', ');
  const word = `${rule[finding.rule] ?? finding.rule}: ${words.verdicts.verdict(finding.verdict)}`;
  return { key: finding.rule, verdict: finding.verdict, word: why ? `${word}, ${why}` : word };
}

/** Used is rounded up and what is left down: never in the maker's favour. */
function barOf(clock: FermentClock | null, given: Given): FermentView['bar'] {
  if (!clock?.sum || !clock.limit) return null;
  const { batch, place, words } = given;
  const { bar, base } = words.ferment;
  const limit = clock.limit.value;
  const ahead = clock.stop === null ? clock.ahead : null;
  const due = given.ahead ? barAhead({ ...given, clock, ahead: given.ahead }, limit) : null;
  return {
    label: DEGREE_HOUR_RULES[batch.opened.body.ruleSet].binds
      ? bar.label(base[clock.numbersOf])
      : bar.labelReference(base[clock.numbersOf]),
    usedShare: clock.sum.totalDegreeHours / limit,
    usedText: bar.used(decimal(clock.sum.totalDegreeHours, 0, place, 'up')),
    ...(due ??
      (ahead
        ? {
            projectedShare: ahead.nowDegreeHours / limit,
            projectedText: bar.ahead(decimal(ahead.nowDegreeHours, 0, place, 'up')),
          }
        : {})),
    limitText: bar.limit(decimal(limit, 0, place)),
  };
}

function figuresOf(
  clock: FermentClock | null,
  { batch, place, nowMs, zone, words }: Given,
): FermentView['figures'] {
  const { figures } = words.ferment;
  const { fermentAhead } = words;
  const ph = batch.ph.at(-1);
  // By hand or by a logger, whichever was last.
  const room = roomSeries(batch).readings.findLast(({ atMs, doubted }) => atMs <= nowMs && doubted !== true);
  const shown = room && temperature(room.roomC, place);
  const byHand = batch.room.find(({ atMs }) => atMs === room?.atMs);
  const isCorrected = byHand?.body.thermometer && byHand.body.roomC !== room?.roomC;
  const crossing = clock?.crossing;
  const worst = clock?.worstCase;
  return [
    {
      key: 'ph',
      label: ph ? figures.ph(words.dates.ago(ph.atMs, nowMs)) : figures.noPh,
      value: ph ? decimal(ph.body.ph, 2, place) : figures.none,
    },
    {
      key: 'room',
      label: room ? figures.room(words.dates.ago(room.atMs, nowMs)) : figures.noRoom,
      value: shown?.value ?? figures.none,
      ...(shown ? { unit: shown.unit } : {}),
      ...(isCorrected
        ? { note: fermentAhead.figures.shown(joined(temperature(byHand.body.roomC, place))) }
        : {}),
    },
    ...humidityFigure({ batch, place, nowMs, words }),
    ...(crossing
      ? [
          {
            key: 'crossing',
            label: figures.crossing,
            value: words.dates.near(crossing.atMs, nowMs, zone),
            about: true,
            note: figures.crossingNote,
          },
        ]
      : []),
    ...(worst
      ? [
          {
            key: 'worst',
            label: fermentAhead.figures.worst,
            value: decimal(worst.totalDegreeHours, 0, place, 'up'),
            about: true,
            note: fermentAhead.figures.worstNote(
              words.dates.span(worst.unreadHours),
              decimal(worst.limit.value, 0, place),
            ),
          },
        ]
      : []),
  ];
}

/** The last humidity that was read: what the hygrometer showed stays beside what its check makes of it. */
function humidityFigure({
  batch,
  place,
  nowMs,
  words,
}: Pick<Given, 'batch' | 'place' | 'nowMs' | 'words'>): FermentView['figures'] {
  const say = words.fermentAhead.figures;
  const last = lastRoomHumidity(batch, nowMs);
  if (!last) return [];
  const pct = (value: number) => joined({ value: decimal(value, 0, place), unit: '%' });
  return [
    {
      key: 'humidity',
      label: say.humidity(words.dates.ago(last.atMs, nowMs)),
      value: decimal(last.rhPct, 0, place),
      unit: '%',
      note: [
        ...(last.offsetPct === 0 ? [] : [say.shown(pct(last.shownRhPct))]),
        ...(last.doubted ? [say.humidityFailed] : []),
        say.humidityRange,
      ].join('; '),
    },
  ];
}

export function roomText(roomC: number, place: Place): string {
  return joined(temperature(roomC, place));
}
