import { temperatureToC } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import type { ChamberAir } from '#record/chamber-air.ts';
import { type FaultFigures, faultFigures } from '#record/fault-figures.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type FaultCard = {
  readonly batch: Batch['id'];
  readonly href: string;
  readonly title: string;
  readonly stage: string;
  readonly verdict: { verdict: VerdictShape; word: string } | null;
  readonly rows: readonly { label: string; value: string }[];
  readonly note: string | null;
};
export type AfterFaultView = { readonly sentence: Said; readonly cards: readonly FaultCard[] };

type Given = { place: Place; nowMs: number; zone: string; words: Words };

/** Every running batch beside its limits, those that passed one first. */
export function afterFaultView({
  batches,
  airs,
  ...given
}: Given & {
  batches: readonly Batch[];
  airs?: ReadonlyMap<SubjectId, ChamberAir>;
}): AfterFaultView {
  const { words } = given;
  const say = words.afterFault.sentence;
  const all = faultFigures(batches, given.nowMs, airs);
  const passed = all.filter(({ clock }) => clock?.finding.verdict === 'deviation');
  const ordered = [...passed, ...all.filter((each) => !passed.includes(each))];
  return {
    sentence:
      all.length === 0
        ? say.none
        : passed.length > 0
          ? say.passed(passed.map(({ batch }) => batch.opened.body.lot).join(', '))
          : say.some(all.length),
    cards: ordered.map((figures) => card(figures, given)),
  };
}

function card(figures: FaultFigures, { place, nowMs, zone, words }: Given): FaultCard {
  const { batch, clock, lastRoom, lastPh } = figures;
  const say = words.afterFault;
  const { rows } = say;
  const { formula, lot } = batch.opened.body;
  const ago = (atMs: number) => words.dates.ago(atMs, nowMs);
  const shown = (tempC: number) => joined(temperature(tempC, place));
  const inUnit = (deg: number) => shown(temperatureToC({ value: deg, unit: clock?.unit ?? 'C' }));
  const missing = (clock?.finding.missing ?? []).map((code) => words.ferment.missing[code] ?? code);
  const ofClock = clock
    ? [
        {
          label: rows.above(words.ferment.base[clock.numbersOf]),
          value: [
            words.dates.span(figures.aboveHours),
            ...(figures.unreadHours > 0 ? [rows.unread(words.dates.span(figures.unreadHours))] : []),
          ].join(', '),
        },
        {
          label: rows.sum,
          value:
            clock.sum && clock.limit
              ? rows.of(
                  decimal(clock.sum.totalDegreeHours, 0, place, 'up'),
                  decimal(clock.limit.value, 0, place),
                )
              : rows.none,
        },
        ...(clock.worstCase
          ? [
              {
                label: rows.worst,
                value: `~${rows.of(
                  decimal(clock.worstCase.totalDegreeHours, 0, place, 'up'),
                  decimal(clock.worstCase.limit.value, 0, place),
                )}`,
              },
            ]
          : []),
        { label: rows.warmest, value: clock.sum ? inUnit(clock.sum.highestDeg) : rows.none },
      ]
    : [];
  return {
    batch: batch.id,
    href: `#/batches/${batch.id.slice('batch:'.length)}/ferment`,
    title: words.ferment.line(formula.name, lot),
    stage: say.stage[batch.stage],
    verdict: clock && {
      verdict: clock.finding.verdict,
      word: [
        `${words.ferment.rule[clock.finding.rule] ?? clock.finding.rule}: ${words.verdicts.verdict(clock.finding.verdict)}`,
        ...missing,
      ].join(', '),
    },
    rows: [
      {
        label: rows.since,
        value: batch.stuffedAtMs === null ? rows.none : words.dates.near(batch.stuffedAtMs, nowMs, zone),
      },
      ...ofClock,
      {
        label: rows.now,
        value: lastRoom ? `${shown(lastRoom.roomC)}, ${ago(lastRoom.atMs)}` : rows.none,
      },
      {
        label: rows.ph,
        value: lastPh ? rows.phLimit(decimal(lastPh.ph, 2, place), ago(lastPh.atMs)) : rows.none,
      },
      ...(batch.hung ? airRows(figures, { place, nowMs, zone, words }) : []),
      ...(figures.meanLossPct === null
        ? []
        : [
            {
              label: rows.loss,
              value: rows.lossOf(
                `${decimal(figures.meanLossPct, 1, place, 'down')}\u00a0%`,
                figures.pieces,
                `${decimal(batch.plan.targetLossPct, 0, place)}\u00a0%`,
              ),
            },
          ]),
    ],
    note: batch.stage === 'ferment' ? null : rows.noLimit,
  };
}

/** The air in which it hangs: what it is, the warmest of the week, and how long it was warm. */
function airRows({ air }: FaultFigures, { place, nowMs, zone, words }: Given): FaultCard['rows'] {
  const { rows } = words.afterFault;
  if (air === null) return [{ label: rows.air, value: rows.none }];
  const shown = (tempC: number) => joined(temperature(tempC, place));
  const { last, warmest } = air;
  const damp = last.rhPct === null ? [] : [joined({ value: decimal(last.rhPct, 0, place), unit: '%' })];
  return [
    {
      label: rows.air,
      value: [shown(last.airC), ...damp, words.dates.ago(last.atMs, nowMs)].join(', '),
    },
    {
      label: rows.warmestAir,
      value: `${shown(warmest.airC)}, ${words.dates.near(warmest.atMs, nowMs, zone)}`,
    },
    {
      label: rows.airAbove(shown(air.baseC)),
      value: [
        `~${words.dates.span(air.aboveHours)}`,
        ...(air.unreadHours > 0 ? [rows.unread(words.dates.span(air.unreadHours))] : []),
      ].join(', '),
    },
  ];
}
