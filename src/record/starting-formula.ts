import type { Formula } from '#core/formula/formula.ts';
import type { Place } from './place.ts';

/**
 * A formula to begin from, invented for this app: nobody has made it. Its shares are common practice of the trade for a
 * minced sausage dried for some weeks, not a tried product; its name and note say so wherever it goes.
 *
 * The dose of curing salt follows the rule set, so that a beginner's first plan is not over a limit: 0.25 % of the
 * label below keeps the US limits, 0.18 % keeps those of Canada and the EU as well. The bag at hand may print
 * something else.
 */
export function startingFormula(ruleSet: Place['ruleSet']): Formula {
  return {
    name: 'Caraway and pepper, invented example',
    kind: 'comminuted',
    species: ['pork'],
    fatPctOfMeat: 25,
    lines: [
      { id: 'lean', name: 'Lean pork', role: 'lean', amount: { basis: 'pct-of-meat', amountPct: 75 } },
      { id: 'fat', name: 'Pork back fat', role: 'fat', amount: { basis: 'pct-of-meat', amountPct: 25 } },
      { id: 'salt', name: 'Salt', role: 'salt', amount: { basis: 'pct-of-meat', amountPct: 2.55 } },
      {
        id: 'cure',
        name: 'Curing salt',
        role: 'cure',
        amount: { basis: 'pct-of-meat', amountPct: ruleSet === 'US' ? 0.25 : 0.18 },
        cure: { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
        note: 'The percentages are an example. Type those printed on your bag.',
      },
      {
        id: 'dextrose',
        name: 'Dextrose',
        role: 'sugar',
        amount: { basis: 'pct-of-meat', amountPct: 0.3 },
        sugarKind: 'dextrose',
      },
      {
        id: 'pepper',
        name: 'Black pepper, cracked',
        role: 'spice',
        amount: { basis: 'pct-of-meat', amountPct: 0.35 },
      },
      {
        id: 'caraway',
        name: 'Caraway, ground',
        role: 'spice',
        amount: { basis: 'pct-of-meat', amountPct: 0.15 },
      },
      {
        id: 'garlic',
        name: 'Garlic, fresh',
        role: 'spice',
        amount: { basis: 'pct-of-meat', amountPct: 0.2 },
      },
      {
        id: 'starter',
        name: 'Starter culture',
        role: 'starter',
        amount: { basis: 'pack-share', packG: 25, packFraction: 0.25, doseGPerKg: 0.12, minimumG: 0 },
        note: 'Dose and pack are an example. Follow the pack at hand.',
      },
      {
        id: 'water',
        name: 'Water for the starter',
        role: 'liquid',
        amount: { basis: 'g-per-kg-meat', doseGPerKg: 10 },
      },
    ],
    diameterMm: 50,
    targetLossPct: 38,
    plannedDays: 45,
    note: 'Invented example. Nobody has made it: treat it as a beginning, and change it.',
  };
}
