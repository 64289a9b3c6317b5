/** How far a lot in the freezer has come, from what was read there. */
import { type FreezingAnswer, type FreezingReading, freezingAnswer } from '#core/rules/freezing.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import type { Entry, EntryOf } from './entry.ts';
import { latest, ofKind } from './fold.ts';
import { live } from './strikes.ts';

export type FreezingState = {
  readonly frozen: EntryOf<'frozen'> | null;
  readonly readings: readonly EntryOf<'freezer-read'>[];
  /** Null before it went in, or while no rule set was chosen. */
  readonly answer: FreezingAnswer | null;
};

/** `entries` are those of the lot. A temperature of before it went in is not of this freezing. */
export function freezingFigures({
  entries,
  ruleSet,
  species,
  nowMs,
}: {
  entries: readonly Entry[];
  ruleSet: RuleSetId | null;
  species: string | undefined;
  nowMs: number;
}): FreezingState {
  const standing = live(entries);
  const frozen = latest(standing, 'frozen');
  const readings = ofKind(standing, 'freezer-read').filter(({ atMs }) => frozen && atMs >= frozen.atMs);
  const answer =
    frozen && ruleSet
      ? freezingAnswer({
          ruleSet,
          species: species === 'pork' ? 'pork' : 'game',
          method: frozen.body.method,
          thicknessMm: frozen.body.thicknessMm,
          readings: readings.map(freezingReading),
          nowMs,
        })
      : null;
  return { frozen, readings, answer };
}

function freezingReading({ atMs, body }: EntryOf<'freezer-read'>): FreezingReading {
  const typed = body.typed?.tempC;
  const value = Number(typed?.text.replace(',', '.').replace(/[\u2212\u2013]/, '-'));
  const unit = typed?.unit;
  return {
    atMs,
    tempC: body.tempC,
    where: body.where,
    ...(Number.isFinite(value) && (unit === 'C' || unit === 'F') ? { typed: { value, unit } } : {}),
  };
}
