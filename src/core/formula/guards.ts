import type { Limit, RuleSetId, Standing } from '#core/rules/rule.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import type { Figures } from './figures.ts';
import { type Formula, type FormulaLine, isCure } from './formula.ts';

/** What a careful colleague would ask before anything is weighed. Codes only; `words/` says why. None of these is a verdict. */

export type GuardCode =
  | 'no-cure'
  | 'cure-without-label'
  /** 0.0625 where 6.25 was meant. */
  | 'label-like-a-fraction'
  /** Nitrite or nitrate as good as pure: never at home. */
  | 'nearly-pure-agent'
  /** More than ten times a limit: a unit was mistaken. */
  | 'ten-times-over'
  /** Over the limit of a mix, but within that of a pickle or of a dry-cured muscle: the wrong one was taken. */
  | 'pumped-limit-on-mix'
  | 'muscle-limit-on-mix'
  | 'two-cures'
  | 'nitrite-alone-for-long'
  | 'nitrate-alone'
  | 'little-nitrite'
  | 'little-salt'
  | 'much-salt'
  | 'no-starter'
  | 'game'
  /** Bacon, pumped or dry-cured, has a lower limit than other muscles in the US. */
  | 'belly-has-its-own-limit';

export type Guard = {
  readonly code: GuardCode;
  /** `stop`: a mistake, not to be passed. `confirm`: to be passed by a person. `tell`: stays on the record. */
  readonly asks: 'stop' | 'confirm' | 'tell';
  readonly lineId: string | null;
  readonly value: number | null;
  readonly level: number | null;
  readonly standing: Standing;
};

/** A plan longer than this wants nitrate in the cure, which lasts where nitrite is used up (common practice). */
export const NITRITE_ALONE_DAYS = 30;
/** Policy minimum with some preservative effect: FSIS Directive 7620.3, p. 12 (read second-hand). */
const LITTLE_NITRITE_MG_PER_KG = 40;
/** Canada's least for fermented meat, CFIA 4.16 (read second-hand); "the bare minimum" of makers (read). */
const LITTLE_SALT_PCT = 2.5;
/** Above every recipe read, 2.5 to 3.5 %. */
const MUCH_SALT_PCT = 4;
/** No nitrited salt read is weaker than 0.4 %. */
export const WEAKEST_LABEL_PCT = 0.1;
/** No cure for small makers read is stronger than about 10 % in both together. */
export const PURE_LABEL_PCT = 20;
/** US, 10 % pump: 2 lb in 100 gallons (read second-hand). */
const PUMPED_MG_PER_KG = 200;
const GAME = new Set(['wild-boar', 'venison', 'bear']);

function guard(code: GuardCode, asks: Guard['asks'], more: Partial<Guard> = {}): Guard {
  return { code, asks, lineId: null, value: null, level: null, standing: 'common-practice', ...more };
}

function ofLabel(line: FormulaLine): readonly Guard[] {
  const { id: lineId, cure } = line;
  if (!cure) return [guard('cure-without-label', 'stop', { lineId })];
  const value = cure.nitritePct;
  const both = cure.nitritePct + cure.nitratePct;
  if (value > 0 && value < WEAKEST_LABEL_PCT)
    return [guard('label-like-a-fraction', 'confirm', { lineId, value, level: WEAKEST_LABEL_PCT })];
  if (both > PURE_LABEL_PCT)
    return [guard('nearly-pure-agent', 'stop', { lineId, value: both, level: PURE_LABEL_PCT })];
  return [];
}

function mostOf(ruleSet: RuleSetId, kind: Formula['kind'], figures: Figures): readonly Guard[] {
  const { knownNitrite: nitrite, knownNitrate: nitrate } = figures;
  const most = (measure: string): Limit | undefined =>
    RULE_SETS[ruleSet].formula.find(
      (one) => one.measure === measure && one.kinds.includes(kind) && one.limit.relation === '<=',
    )?.limit;
  const held = [
    [nitrite.mgPerKgMeat, most('nitrite')],
    [nitrate.mgPerKgMeat, most('nitrate')],
    [nitrite.mgPerKgMeat + nitrate.mgPerKgMeat, most('nitrite-and-nitrate')],
    [nitrite.ionMgPerKgMeat, most('nitrite-ion')],
    [nitrate.ionMgPerKgMeat, most('nitrate-ion')],
  ] as const;
  return held.flatMap(([value, limit]) =>
    limit && value > 10 * limit.value
      ? [
          guard('ten-times-over', 'stop', {
            value,
            level: 10 * limit.value,
            standing: limit.source.standing,
          }),
        ]
      : [],
  );
}

function nitriteOnMix(nitriteMgPerKg: number): readonly Guard[] {
  const limits = RULE_SETS.US.formula.filter(({ rule }) => rule === 'nitrite-in-most');
  const at = (kind: Formula['kind']) => limits.find(({ kinds }) => kinds.includes(kind))?.limit.value ?? 0;
  const value = Number(nitriteMgPerKg.toPrecision(12));
  const level = at('comminuted');
  if (value <= level || value > at('whole-muscle')) return [];
  const code = value <= PUMPED_MG_PER_KG ? 'pumped-limit-on-mix' : 'muscle-limit-on-mix';
  return [guard(code, 'confirm', { value, level, standing: 'read-second-hand' })];
}

/**
 * All guards that a formula raises, the gravest first.
 *
 * Wrong tool: instead of the rules; a formula without guards has not been held against a limit.
 *
 * Units: mg/kg of green meat, % of meat, days.
 * Source: each guard carries its standing; levels stand at the head of the file.
 * @example formulaGuards({ formula: { name: '', kind: 'comminuted', species: ['bear'], fatPctOfMeat: 25, lines: [] }, figures: { saltPctOfMeat: 2.8, knownNitrite: { mgPerKgMeat: 0 }, knownNitrate: { mgPerKgMeat: 0 } }, ruleSet: 'US' }).map(({ code }) => code) // => ['no-cure', 'no-starter', 'game']
 */
export function formulaGuards({
  formula,
  figures,
  ruleSet,
}: {
  formula: Formula;
  /** From exact or rounded grams. */
  figures: Figures;
  ruleSet: RuleSetId;
}): readonly Guard[] {
  const cures = formula.lines.filter(isCure);
  const nitriteMgPerKg = figures.knownNitrite.mgPerKgMeat;
  const nitrateMgPerKg = figures.knownNitrate.mgPerKgMeat;
  const labelled = cures.every(({ cure }) => cure);
  const days = formula.plannedDays ?? 0;
  const salt = { value: figures.saltPctOfMeat, standing: 'read-second-hand' } as const;
  const found: Guard[] = [...cures.flatMap(ofLabel), ...mostOf(ruleSet, formula.kind, figures)];
  if (formula.kind === 'comminuted') found.push(...nitriteOnMix(nitriteMgPerKg));
  if (cures.length === 0) found.push(guard('no-cure', 'confirm'));
  if (cures.length > 1) found.push(guard('two-cures', 'confirm', { value: nitriteMgPerKg }));
  if (labelled && nitriteMgPerKg > 0 && nitrateMgPerKg === 0 && days > NITRITE_ALONE_DAYS)
    found.push(guard('nitrite-alone-for-long', 'confirm', { value: days, level: NITRITE_ALONE_DAYS }));
  if (labelled && nitriteMgPerKg === 0 && nitrateMgPerKg > 0)
    found.push(guard('nitrate-alone', 'confirm', { value: nitrateMgPerKg }));
  if (labelled && nitriteMgPerKg > 0 && nitriteMgPerKg < LITTLE_NITRITE_MG_PER_KG)
    found.push(
      guard('little-nitrite', 'confirm', {
        value: nitriteMgPerKg,
        level: LITTLE_NITRITE_MG_PER_KG,
        standing: 'read-second-hand',
      }),
    );
  if (labelled && figures.saltPctOfMeat < LITTLE_SALT_PCT)
    found.push(guard('little-salt', 'confirm', { ...salt, level: LITTLE_SALT_PCT }));
  if (figures.saltPctOfMeat > MUCH_SALT_PCT)
    found.push(guard('much-salt', 'confirm', { value: salt.value, level: MUCH_SALT_PCT }));
  if (formula.kind === 'comminuted' && !formula.lines.some(({ role }) => role === 'starter'))
    found.push(guard('no-starter', 'confirm'));
  if (formula.species.some((species) => GAME.has(species))) found.push(guard('game', 'tell'));
  if (formula.kind === 'whole-muscle' && ruleSet === 'US')
    found.push(guard('belly-has-its-own-limit', 'tell', { standing: 'read-second-hand' }));
  const gravity = { stop: 0, confirm: 1, tell: 2 };
  return found.toSorted((one, other) => gravity[one.asks] - gravity[other.asks]);
}
