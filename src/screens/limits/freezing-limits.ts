import { type FreezingTable, freezingTable } from '#core/rules/freezing.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { LimitGroup, LimitView } from './limit-text.ts';

/** One lot in each published table: a thin one, a thick one, and one with a probe in its core. */
const LOTS = [
  { method: 'room', thicknessMm: 100 },
  { method: 'room', thicknessMm: 300 },
  { method: 'core', thicknessMm: 100 },
] as const;

const HOURS_A_DAY = 24;
/** Shorter times are said in hours, as their table prints them. */
const LEAST_DAYS_HOURS = 120;

/** The freezing times of a rule set, row by row. Canada's could not be read: the core shows the US ones, which make no verdict there. */
export function freezingLimits(ruleSet: RuleSetId, words: Words, place: Place): LimitGroup {
  const say = words.limits.freezing;
  const tables = LOTS.flatMap((lot) => freezingTable({ ruleSet, ...lot }) ?? []);
  return {
    title: say.title,
    note: ruleSet === 'CA' ? say.borrowed : ruleSet === 'US' ? say.reserved : null,
    limits: tables.map((table) => tableView(table, words, place)),
  };
}

function tableView(table: FreezingTable, words: Words, place: Place): LimitView {
  const say = words.limits.freezing;
  const mm = (lengthMm: number) => joined({ value: decimal(lengthMm, 0, place, 'down'), unit: 'mm' });
  const lasting = (hours: number) =>
    hours >= LEAST_DAYS_HOURS
      ? say.days(decimal(hours / HOURS_A_DAY, 0, place, 'up'))
      : say.hours(words.workings.exactly(hours, place));
  return {
    title: table.method === 'core' ? say.core : say.room,
    of:
      table.method === 'core'
        ? null
        : table.aboveMm === 0
          ? say.thin(mm(table.toMm))
          : say.thick(mm(table.aboveMm), mm(table.toMm)),
    values: table.rows.map(({ atC, hours }) => say.row(joined(temperature(atC, place)), lasting(hours))),
    basis: table.method === 'core' ? say.inCore : say.inRoom,
    source: words.workings.source(table.source),
  };
}
