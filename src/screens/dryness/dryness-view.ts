import type { Verdict } from '#core/rules/rule.ts';
import type { Batch } from '#record/batch.ts';
import { middleOf } from '#record/drying-batch.ts';
import { criteriaFound, drynessRows, measuredReadings } from '#record/dryness-figures.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type DrynessView = {
  readonly line: string;
  readonly sentence: Said;
  readonly rows: readonly { key: string; head: string; note: string; cells: readonly string[] }[];
  readonly criteria: readonly {
    key: string;
    title: string;
    of: string;
    verdict: Verdict;
    word: string;
    ways: readonly string[];
    notes: readonly string[];
    source: string;
  }[];
  readonly measured: readonly { key: string; title: string; note: string; figure: string }[];
};

type Given = { batch: Batch; place: Place; nowMs: number; words: Words };

export function drynessView(given: Given): DrynessView {
  const { batch, place, nowMs, words } = given;
  const say = words.dryness;
  const { body } = batch.opened;
  const middle = middleOf(batch.pieces.filter(({ status }) => status !== 'taken-down')) ?? batch.pieces[0];
  const targetPct = middle?.targetLossPct;
  const nowPct = middle && pieceFigures(middle).lossPct;
  const rows = drynessRows(batch, [
    ...(targetPct === undefined ? [] : [targetPct]),
    ...(nowPct != null && nowPct >= 0 ? [Math.floor(10 * nowPct) / 10] : []),
  ]);
  const at = rows.find(({ lossPct }) => lossPct === targetPct);
  const aw = (value: number, rounding: 'up' | 'down') => decimal(value, 2, place, rounding);
  const lastAw = batch.measured.findLast((entry) => entry.body.measure === 'aw');
  return {
    line: say.line(body.formula.name, body.lot),
    sentence: lastAw
      ? say.measuredAw({
          aw: words.workings.exactly(lastAw.body.value, place),
          when: words.dates.near(lastAw.atMs, nowMs, lastAw.zone),
        })
      : at
        ? say.sentence({
            loss: decimal(at.lossPct, 0, place),
            low: aw(at.dryness.lowAw, 'down'),
            high: aw(at.dryness.highAw, 'up'),
          })
        : say.noPieces,
    rows: rows.map(({ lossPct, dryness }) => ({
      key: String(lossPct),
      head: `${words.workings.exactly(lossPct, place)}\u00a0%`,
      note: lossPct === targetPct ? say.target : Math.abs(lossPct - (nowPct ?? -1)) < 0.1 ? say.now : '',
      cells: [
        say.about(`${decimal(dryness.moisturePct, 0, place, 'up')}\u00a0%`),
        say.about(decimal(dryness.mpr, 2, place, 'up')),
        say.about(`${decimal(dryness.waterPhaseSaltPct, 1, place, 'down')}\u00a0%`),
        say.aw(aw(dryness.lowAw, 'down'), aw(dryness.highAw, 'up')),
      ],
    })),
    criteria: criteriaOf(given),
    measured: batch.measured.toReversed().map(({ id, atMs, zone, body: { measure, value, by, note } }) => ({
      key: id,
      title: say.sheet.measures[measure],
      note: [words.dates.full(atMs, zone), by, note ?? ''].filter(Boolean).join(', '),
      figure: words.workings.exactly(value, place),
    })),
  };
}

function criteriaOf({ batch, place, words }: Given): DrynessView['criteria'] {
  const say = words.dryness;
  const readings = measuredReadings(batch);
  return criteriaFound(batch).map(({ criterion, finding, nearLossPct }) => ({
    key: `${criterion.ruleSet} ${criterion.rule}`,
    title: say.rule[criterion.rule] ?? criterion.rule,
    of: words.verdicts.ruleSet[criterion.ruleSet],
    verdict: finding.verdict,
    word: words.verdicts.verdict(finding.verdict),
    ways: criterion.anyOf.map((limits, at) => {
      const text = say.and(
        limits.map(({ measure, value }) => say.limit(measure, words.workings.exactly(value, place))),
      );
      const near = nearLossPct[at] ?? null;
      if (near === null) return text;
      return `${text} (${near > 0 ? say.near(decimal(near, 0, place, 'up')) : say.fresh})`;
    }),
    notes: [
      ...Object.entries(readings).flatMap(([measure, reading]) =>
        criterion.anyOf.flat().some((limit) => limit.measure === measure)
          ? [
              `${say.measure[measure as keyof typeof say.measure]}: ${words.workings.exactly(reading.value, place)}`,
            ]
          : [],
      ),
      ...(finding.missing.length > 0
        ? [say.missing(finding.missing.map((name) => say.measure[name as keyof typeof say.measure]))]
        : []),
      ...(criterion.alongside.length > 0 ? [say.alongside] : []),
    ],
    source: [
      ...new Set(
        criterion.anyOf.flat().map(({ source }) => {
          const { text, standing } = words.workings.source(source);
          return `${text}; ${standing}.`;
        }),
      ),
    ].join(' '),
  }));
}
