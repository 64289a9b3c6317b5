/** What the maker's own batches say, where the trade's tables differ: the fill of a casing, and sugar for a fall of pH. */
import { learnedFillGPerM } from '#core/formula/casing.ts';
import { type FinishedFerment, sugarInMix } from '#core/formula/sugar.ts';
import type { Batch } from './batch.ts';
import type { SubjectId } from './subject.ts';

export type OwnFill = {
  readonly casing: string;
  readonly fillGPerM: number;
  readonly batches: number;
};

/** A casing stuffs out differently by a few mm; what lies closer counts as the same calibre. */
const SAME_CALIBRE_MM = 3;

/** The fill of each casing that was stuffed at about this diameter, the one used last first. */
export function ownFills(batches: readonly Batch[], diameterMm: number): OwnFill[] {
  const stuffings = batches
    .toSorted((one, other) => other.opened.atMs - one.opened.atMs)
    .flatMap(({ casingUsed, pieces }) => {
      const last = pieces.at(-1)?.stuffed.body;
      if (!casingUsed || !last || Math.abs(last.diameterMm - diameterMm) > SAME_CALIBRE_MM) return [];
      const mixG = pieces.reduce((sumG, { greenG }) => sumG + greenG, 0);
      return [{ casing: last.casing.trim(), mixG, usedM: casingUsed.body.usedM }];
    });
  return [...new Set(stuffings.map(({ casing }) => casing))].flatMap((casing) => {
    const own = stuffings.filter((each) => each.casing === casing);
    const fillGPerM = learnedFillGPerM(own);
    return fillGPerM === null ? [] : [{ casing, fillGPerM, batches: own.length }];
  });
}

/**
 * Ferments of one formula that ended by their pH or their time: the first pH of the mix, the lowest after it, and the sugar
 * that was weighed. A batch whose mix was not read, or whose ferment was stopped for another reason, says nothing here.
 */
export function finishedFerments(batches: readonly Batch[], formula: SubjectId): FinishedFerment[] {
  return batches.flatMap((batch) => {
    const { opened, fermentEnded, leanG, fatG, weighedOut } = batch;
    const reason = fermentEnded?.body.reason;
    if (opened.body.from?.formula !== formula || !(leanG + fatG > 0)) return [];
    if (reason !== 'ph-reached' && reason !== 'time-reached') return [];
    const read = batch.ph.filter(({ body }) => body.method === 'meter' && !body.doubted);
    const start = read.find(({ body }) => body.sample === 'mix');
    const later = read.filter(({ body, atMs }) => start && body.sample !== 'mix' && atMs > start.atMs);
    if (!start || later.length === 0) return [];
    const { lines } = opened.body.formula;
    const sugars = lines.filter(({ role, hiddenSugarPct = 0 }) => role === 'sugar' || hiddenSugarPct > 0);
    if (sugars.some(({ id }) => !weighedOut.has(id))) return [];
    const sugar = sugarInMix({
      formula: opened.body.formula,
      meatG: leanG + fatG,
      gramsByLine: lines.map(({ id }) => weighedOut.get(id)?.body.massG ?? 0),
    });
    return [
      {
        startPh: start.body.ph,
        endPh: Math.min(...later.map(({ body }) => body.ph)),
        sugarGPerKg: (sugar.addedLowGPerKg + sugar.addedHighGPerKg) / 2 + sugar.hiddenGPerKg,
      },
    ];
  });
}
