/** A thermometer in melting ice, a hygrometer over wet salt, a scale under a known weight: what each shows where the truth is known. */
import type { Finding, Limit } from '#core/rules/rule.ts';

/** Over table salt with a little water in a closed box: 75.3 to 75.7 % between 0 and 30 °C, which no trade hygrometer tells apart. */
export const WET_SALT_RH_PCT = 75;
export const WET_SALT_REST_HOURS = 8;

export const ICE_LIMIT: Limit = {
  value: 1,
  unit: 'C',
  relation: '<=',
  basis: 'melting-ice',
  source: {
    body: 'trade',
    title: 'common practice',
    section: 'ice check of a thermometer',
    standing: 'common-practice',
  },
};
export const WET_SALT_LIMIT: Limit = {
  value: 5,
  unit: '%-points RH',
  relation: '<=',
  basis: 'wet-salt',
  source: {
    body: 'a supplier for cheese ageing',
    title: 'Checking humidity sensor calibration',
    section: 'a sensor is good to 3 to 5 %-points; 8 to 12 h over wet salt',
    standing: 'read',
  },
};

/**
 * The offset of a thermometer from a glass of melting ice; later readings get it added.
 *
 * Formula: offset = 0 - shown. Units: °C. Valid: crushed ice with a little water, stirred; not for a freezer's scale.
 * Source: ice point 0 °C at normal pressure (from memory, high confidence); beyond ICE_LIMIT it is put right or replaced.
 * @throws RangeError unless shownC is a finite number.
 * @example iceCheck({ shownC: 0.4 }).offsetC // => -0.4
 */
export function iceCheck({ shownC }: { shownC: number }): { offsetC: number; finding: Finding } {
  if (!Number.isFinite(shownC))
    throw new RangeError(`iceCheck: shownC requires a finite number, got ${shownC}`);
  const offsetC = 0 - shownC;
  const isGood = Math.abs(offsetC) <= ICE_LIMIT.value;
  return {
    offsetC,
    finding: {
      rule: 'thermometer-ice-check',
      verdict: isGood ? 'within-limit' : 'deviation',
      value: Math.abs(offsetC),
      limit: ICE_LIMIT,
      missing: [],
    },
  };
}

/**
 * The offset of a hygrometer from a closed box over wet table salt; later readings get it added, the raw value stays on the record.
 *
 * Formula: offset = 75 - shown. Units: % RH; h. Valid: 0 to 100 %; at least 8 h in the box, otherwise no-reading.
 * Source: WET_SALT_LIMIT; wet table salt 75.3 to 75.7 % (Greenspan 1977, from memory, high confidence), taken as 75 by the trade.
 * @throws RangeError unless 0 <= shownRhPct <= 100 and restedHours >= 0.
 * @example wetSaltCheck({ shownRhPct: 80, restedHours: 8 }).offsetRhPct // => -5
 */
export function wetSaltCheck({ shownRhPct, restedHours }: { shownRhPct: number; restedHours: number }): {
  offsetRhPct: number;
  finding: Finding;
} {
  if (!(shownRhPct >= 0 && shownRhPct <= 100))
    throw new RangeError(`wetSaltCheck: shownRhPct requires 0 to 100, got ${shownRhPct}`);
  if (!(restedHours >= 0))
    throw new RangeError(`wetSaltCheck: restedHours requires a number >= 0, got ${restedHours}`);
  const offsetRhPct = WET_SALT_RH_PCT - shownRhPct;
  const hasRested = restedHours >= WET_SALT_REST_HOURS;
  const isGood = Math.abs(offsetRhPct) <= WET_SALT_LIMIT.value;
  return {
    offsetRhPct,
    finding: {
      rule: 'hygrometer-salt-check',
      verdict: !hasRested ? 'no-reading' : isGood ? 'within-limit' : 'deviation',
      value: Math.abs(offsetRhPct),
      limit: WET_SALT_LIMIT,
      missing: hasRested ? [] : ['rest-over-salt'],
    },
  };
}

/** A scale may be off by one of its own steps: common practice. */
function scaleLimit(stepG: number): Limit {
  return {
    value: stepG,
    unit: 'g',
    relation: '<=',
    basis: 'check-weight',
    source: {
      body: 'trade',
      title: 'common practice',
      section: 'check of a scale: off by one step at most',
      standing: 'common-practice',
    },
  };
}

/**
 * How far a scale is off under a known weight. Nothing is corrected by it: a scale that fails is put right or replaced.
 *
 * Formula: off = shown - weight, held against one step of the scale. Units: g.
 * Valid: a weight that the scale carries and that is known finer than the step; says nothing of far lighter or heavier loads.
 * Without `stepG` no-reading.
 * Source: common practice: off by one step at most.
 * @throws RangeError unless weightG > 0, shownG >= 0 and stepG > 0.
 * @example scaleCheck({ weightG: 200, shownG: 200.3, stepG: 0.1 }).finding.verdict // => 'deviation'
 */
export function scaleCheck({
  weightG,
  shownG,
  stepG,
}: {
  weightG: number;
  shownG: number;
  stepG?: number | undefined;
}): { offG: number; finding: Finding } {
  if (!(weightG > 0) || !(shownG >= 0) || !(stepG === undefined || stepG > 0))
    throw new RangeError(
      `scaleCheck: requires weightG > 0, shownG >= 0, stepG > 0, got ${weightG}, ${shownG}, ${stepG}`,
    );
  // 200.1 - 200 is a tenth, and not a last bit more.
  const offG = Math.round((shownG - weightG) * 1e9) / 1e9;
  const isGood = stepG !== undefined && Math.abs(offG) <= stepG;
  return {
    offG,
    finding: {
      rule: 'scale-check',
      verdict: stepG === undefined ? 'no-reading' : isGood ? 'within-limit' : 'deviation',
      value: Math.abs(offG),
      limit: stepG === undefined ? null : scaleLimit(stepG),
      missing: stepG === undefined ? ['scale-step'] : [],
    },
  };
}
