import type { Batch } from './batch.ts';
import type { BodyOf } from './kinds.ts';

/** A tray forgotten or weighed twice shows as more than this. Common practice: what trimming may take. */
const COUNT_TOLERANCE_FRACTION = 0.1;

type Planned = Required<Pick<BodyOf<'batch-opened'>, 'plannedTrays' | 'plannedMeatG'>>;

/** What was counted, in the shape in which it is kept, beside what was planned. */
export type MeatCount = Readonly<BodyOf<'count-kept'>> & {
  readonly [Field in keyof Planned]: NonNullable<Planned[Field]> | null;
} & {
  readonly differs: readonly ('trays' | 'mass')[];
  /** It differs, and nobody has said yet that it is meant. */
  readonly open: boolean;
};

/** Meat as counted and weighed against what was said to lie ready. Null while nothing was said or nothing is weighed. */
export function meatCount({ opened, meat, leanG, fatG, countKept }: Batch): MeatCount | null {
  const { plannedMeatG = null, plannedTrays = null } = opened.body;
  if (meat.length === 0 || (plannedMeatG === null && plannedTrays === null)) return null;
  const trays = meat.length;
  const meatG = leanG + fatG;
  const off =
    plannedMeatG !== null && Math.abs(meatG - plannedMeatG) > COUNT_TOLERANCE_FRACTION * plannedMeatG;
  const differs = [
    ...(plannedTrays !== null && trays !== plannedTrays ? (['trays'] as const) : []),
    ...(off ? (['mass'] as const) : []),
  ];
  const kept = countKept?.body.trays === trays && countKept.body.meatG === meatG;
  return { trays, plannedTrays, meatG, plannedMeatG, differs, open: differs.length > 0 && !kept };
}
