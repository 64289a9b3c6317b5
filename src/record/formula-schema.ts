/** The check of a formula from anywhere: a screen, a file, a link. The shape itself is `core/formula/formula.ts`. */

import * as z from 'zod/mini';
import type { Formula } from '#core/formula/formula.ts';

const text = (most: number) => z.string().check(z.maxLength(most));
const number = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
const pct = number(0, 100);
const massG = number(0, 1_000_000);
const doseGPerKg = number(0, 1000);

export const cureLabelSchema = z.strictObject({
  nitritePct: pct,
  nitratePct: pct,
  nitriteSalt: z.enum(['NaNO2', 'KNO2']),
  nitrateSalt: z.enum(['NaNO3', 'KNO3']),
});

const amount = z.discriminatedUnion('basis', [
  z.strictObject({ basis: z.literal('pct-of-meat'), amountPct: pct }),
  z.strictObject({ basis: z.literal('pct-of-lean'), amountPct: pct }),
  z.strictObject({ basis: z.literal('pct-of-total'), amountPct: number(0, 90) }),
  z.strictObject({ basis: z.literal('g-per-kg-meat'), doseGPerKg }),
  z.strictObject({ basis: z.literal('fixed'), amountG: massG }),
  z.strictObject({ basis: z.literal('at-least'), minimumG: massG, doseGPerKg }),
  z.strictObject({ basis: z.literal('per-piece'), pieceG: massG }),
  z.strictObject({
    basis: z.literal('pack-share'),
    packG: massG,
    packFraction: number(0, 1),
    doseGPerKg,
    minimumG: massG,
  }),
]);

const line = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(40)),
  name: z.string().check(z.minLength(1), z.maxLength(80)),
  role: z.enum(['lean', 'fat', 'salt', 'cure', 'sugar', 'starter', 'spice', 'liquid', 'mould', 'other']),
  amount,
  cure: z.optional(cureLabelSchema),
  sugarKind: z.optional(
    z.enum(['dextrose', 'sucrose', 'lactose', 'fructose', 'maltodextrin', 'honey', 'other']),
  ),
  hiddenSugarPct: z.optional(pct),
  sulphiteMgPerKg: z.optional(number(0, 1_000_000)),
  allergens: z.optional(z.array(text(40)).check(z.maxLength(20))),
  cutNdb: z.optional(text(12)),
  ownFatPct: z.optional(pct),
  note: z.optional(text(400)),
});

const shape = z.strictObject({
  name: z.string().check(z.minLength(1), z.maxLength(80)),
  kind: z.enum(['comminuted', 'whole-muscle']),
  species: z
    .array(z.enum(['pork', 'beef', 'lamb', 'horse', 'poultry', 'wild-boar', 'venison', 'bear', 'other']))
    .check(z.maxLength(9)),
  fatPctOfMeat: pct,
  lines: z.array(line).check(z.maxLength(60)),
  diameterMm: z.optional(number(5, 300)),
  pieceG: z.optional(massG),
  targetLossPct: z.optional(number(1, 80)),
  plannedDays: z.optional(number(0, 1000)),
  note: z.optional(text(2000)),
});

/** The schema and the core's type say the same: a field added to one alone does not compile. */
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;
type Mutable<T> = T extends (infer Item)[]
  ? readonly Mutable<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Mutable<T[Key]> }
    : T;
export const schemaIsFormula: Same<Mutable<z.infer<typeof shape>>, Formula> = true;

/** Read back as the core's own type, so that a formula made in the core can be kept as it is. */
export const formulaSchema: z.ZodMiniType<Formula> = shape;
