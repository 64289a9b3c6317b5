/** A formula of 25 lines in which every kind of amount and every field stands at least once. Invented for tests; made by nobody. */
import type { Amount, Formula, FormulaLine, Role } from '#core/formula/formula.ts';

const perKg = (doseGPerKg: number): Amount => ({ basis: 'g-per-kg-meat', doseGPerKg });
const ofMeat = (amountPct: number): Amount => ({ basis: 'pct-of-meat', amountPct });
const spice = (name: string, doseGPerKg: number): Omit<FormulaLine, 'id'> => ({
  name,
  role: 'spice',
  amount: perKg(doseGPerKg),
});
const other = (role: Role, name: string, amount: Amount): Omit<FormulaLine, 'id'> => ({ name, role, amount });

const lines: Omit<FormulaLine, 'id'>[] = [
  { ...other('lean', 'Pork shoulder, trimmed of sinew', ofMeat(70)), cutNdb: '10072', ownFatPct: 7.15 },
  { ...other('fat', 'Pork back fat, frozen', ofMeat(30)), cutNdb: '10007' },
  other('salt', 'Sea salt, fine', { basis: 'pct-of-lean', amountPct: 2.55 }),
  {
    ...other('cure', 'Curing salt with nitrite and nitrate', ofMeat(0.25)),
    cure: { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'KNO3' },
    note: 'Weighed on the fine scale.',
  },
  { ...other('sugar', 'Dextrose', ofMeat(0.35)), sugarKind: 'dextrose' },
  { ...other('sugar', 'Cane sugar', perKg(1.9)), sugarKind: 'sucrose' },
  other('starter', 'Starter culture, mild and slow', {
    basis: 'pack-share',
    packG: 25,
    packFraction: 0.25,
    doseGPerKg: 0.12,
    minimumG: 6.25,
  }),
  {
    ...other('liquid', 'Red wine, boiled down', { basis: 'pct-of-total', amountPct: 1.2 }),
    hiddenSugarPct: 0.2,
    sulphiteMgPerKg: 120,
    allergens: ['sulphites'],
  },
  { ...other('other', 'Milk powder', perKg(12.5)), allergens: ['milk'] },
  other('other', 'Sodium ascorbate', { basis: 'at-least', minimumG: 0.5, doseGPerKg: 0.55 }),
  other('other', 'Poppy flowers, dried', { basis: 'fixed', amountG: 0.1 }),
  other('mould', 'Mould culture for the casing', { basis: 'per-piece', pieceG: 0.35 }),
  spice('Black pepper, cracked', 2.8),
  spice('White pepper, ground', 1.15),
  spice('Garlic, crushed', 3.4),
  spice('Fennel seed, roasted', 2.25),
  spice('Paprika, sweet', 8.75),
  spice('Paprika, smoked and hot', 1.6),
  spice('Nutmeg', 0.45),
  spice('Mace', 0.35),
  spice('Coriander seed', 0.9),
  spice('Caraway', 0.65),
  spice('Juniper berries, crushed', 0.55),
  spice('Orange zest, dried', 1.05),
  spice('Chilli flakes', 1.25),
];

export const LONG_FORMULA: Formula = {
  name: 'Country salami with wine and garlic',
  kind: 'comminuted',
  species: ['pork', 'wild-boar'],
  fatPctOfMeat: 27.5,
  lines: lines.map((line, at) => ({ id: String(at + 1), ...line })),
  diameterMm: 55,
  targetLossPct: 36.5,
  plannedDays: 42,
};

export const SHORT_FORMULA: Formula = {
  name: 'Plain salami',
  kind: 'comminuted',
  species: ['pork'],
  fatPctOfMeat: 25,
  lines: [
    { id: 'salt', name: 'Salt', role: 'salt', amount: ofMeat(2.5) },
    { id: 'pepper', name: 'Pepper', role: 'spice', amount: perKg(3) },
  ],
};
