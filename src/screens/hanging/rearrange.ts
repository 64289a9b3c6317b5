import type { SubjectId } from '#record/subject.ts';

export type Place = { readonly piece: SubjectId; readonly rail: number };

/** One place nearer the door or further from it; past the end of a rail it goes on to the next one. */
export function shifted(order: readonly Place[], piece: SubjectId, by: -1 | 1, rails: number): Place[] {
  const at = order.findIndex((each) => each.piece === piece);
  const own = order[at];
  if (!own) return [...order];
  const other = order[at + by];
  if (other && other.rail === own.rail)
    return order.map((each, here) => (here === at ? other : here === at + by ? own : each));
  const rail = own.rail + by;
  if (rail < 1 || rail > rails) return [...order];
  return order.map((each) => (each === own ? { ...own, rail } : each));
}
