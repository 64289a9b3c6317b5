import { isMeat } from '#core/formula/formula.ts';
import type { Batch } from '#record/batch.ts';
import { benchSteps } from '#record/bench-steps.ts';
import { type BatchPart, due, partOf } from '#record/due.ts';
import { phBandOf } from '#record/ferment-plan.ts';
import type { Place } from '#record/place.ts';
import { tasting } from '#record/tasting.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type BatchView = {
  readonly title: string;
  readonly line: string;
  readonly sentence: Said;
  readonly act: { href: string; label: string } | null;
  readonly rows: readonly { key: string; href: string; title: string; note: string }[];
  /** To learn from it, once there are pieces. */
  readonly learn: readonly { key: string; href: string; title: string; note: string }[];
  readonly plan: readonly { label: string; value: string }[];
  readonly warnings: readonly string[];
};

export function batchView({
  batch,
  entryCount,
  place,
  nowMs,
  zone,
  words,
}: {
  batch: Batch;
  entryCount: number;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
}): BatchView {
  const { body } = batch.opened;
  const base = `#/batches/${batch.id.slice('batch:'.length)}`;
  const first = due(batch, nowMs)[0];
  const notes = partNotes(batch, entryCount, place, words);
  return {
    title: body.formula.name,
    line: words.batch.line(body.lot, words.verdicts.ruleSet[body.ruleSet]),
    sentence: first ? words.batch.sentence(words.due(first, nowMs, zone)) : words.batch.nothing,
    act: first ? { href: `${base}/${partOf(first)}`, label: words.batch.open } : null,
    rows: (Object.keys(words.batch.parts) as (keyof typeof notes)[]).map((part) => ({
      key: part,
      href: `${base}/${part}`,
      title: words.batch.parts[part],
      note: notes[part],
    })),
    learn: batch.pieces.length > 0 ? learnRows(batch, base, place, words) : [],
    plan: planRows(batch, place, words),
    warnings: [
      ...(batch.unknown > 0 ? [words.batch.unknown] : []),
      ...(batch.rivals.length > 0 ? [words.batch.rivals] : []),
    ],
  };
}

function partNotes(
  batch: Batch,
  entryCount: number,
  place: Place,
  words: Words,
): Readonly<Record<Exclude<BatchPart, 'round'>, string>> {
  const { notes } = words.batch;
  const { pieces } = batch;
  const lines = batch.opened.body.formula.lines.filter(({ role }) => !isMeat(role));
  const weighed = lines.filter(({ id }) => batch.weighedOut.has(id)).length;
  const steps = new Set(batch.steps.map(({ kind }) => kind)).size;
  const down = pieces.filter(({ status }) => status === 'taken-down').length;
  const totalG = pieces.reduce((sumG, { greenG }) => sumG + greenG, 0);
  const none = phBandOf(batch.plan) === null;
  const begun = batch.fermentEnded ? 'ended' : none ? 'none' : 'running';
  const ferment = batch.stuffedAtMs === null && !none ? 'before' : begun;
  return {
    'weigh-out': notes['weigh-out'](weighed, batch.leanG + batch.fatG > 0 ? lines.length : 0),
    bench: notes.bench(steps, benchSteps(batch).length),
    stuffing: notes.stuffing(pieces.length, joined(mass(totalG, 1, place))),
    ferment: notes.ferment[ferment],
    hanging: batch.hung ? notes.hanging(pieces.length - down, down) : notes.notHung,
    record: notes.record(entryCount),
    release: batch.decided ? words.release.past[batch.decided.body.decision] : notes.undecided,
  };
}

function learnRows(batch: Batch, base: string, place: Place, words: Words): BatchView['learn'] {
  const tasted = tasting(batch);
  const mark = tasted?.marks.overall ?? 0;
  const note = words.tasting.note(
    tasted?.tasters.length ?? 0,
    decimal(mark, Number.isInteger(mark) ? 0 : 1, place),
  );
  return [
    { key: 'tasting', href: `${base}/tasting`, title: words.tasting.title, note },
    { key: 'photos', href: `${base}/photos`, title: words.photos.title, note: words.photos.note },
    { key: 'compare', href: `${base}/compare`, title: words.compare.title, note: words.compare.note },
  ];
}

function planRows({ plan }: Batch, place: Place, words: Words): { label: string; value: string }[] {
  const say = words.batch.plan;
  const band = phBandOf(plan);
  return [
    ...(plan.fermentC === undefined
      ? []
      : [{ label: say.ferment, value: joined(temperature(plan.fermentC, place, 0)) }]),
    ...(band === null
      ? []
      : [{ label: say.ph, value: `${decimal(band.lowPh, 1, place)} – ${decimal(band.highPh, 1, place)}` }]),
    { label: say.dry, value: joined(temperature(plan.dryC, place, 0)) },
    { label: say.humidity, value: `${decimal(plan.dryRhPct, 0, place)}\u00a0%` },
    { label: say.diameter, value: `${decimal(plan.diameterMm, 0, place)}\u00a0mm` },
    { label: say.loss, value: `${decimal(plan.targetLossPct, 0, place)}\u00a0%` },
  ];
}
