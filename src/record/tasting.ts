/** What tasters found: the middle of their marks, and the number under which a batch is tasted blind. */
import { median } from '#core/median.ts';
import type { Batch } from './batch.ts';
import type { EntryOf } from './entry.ts';
import type { SubjectId } from './subject.ts';

export const ASPECTS = ['look', 'smell', 'bite', 'taste', 'overall'] as const;
export type Aspect = (typeof ASPECTS)[number];

export type Tasting = {
  readonly tasters: readonly string[];
  /** Medians over the tasters; of each taster the last marks count. */
  readonly marks: Readonly<Record<Aspect, number>>;
  /** How far the tasters are apart. */
  readonly spread: Readonly<Record<Aspect, number>>;
  readonly blind: number;
};

/** Null while nobody has tasted it. */
export function tasting({ tasted }: Pick<Batch, 'tasted'>): Tasting | null {
  const last = new Map<string, EntryOf<'tasted'>>();
  for (const entry of tasted) last.set(entry.body.taster.trim().toLowerCase(), entry);
  const all = [...last.values()];
  if (all.length === 0) return null;
  const of = (take: (marks: readonly number[]) => number) => {
    const found = ASPECTS.map((aspect) => [aspect, take(all.map(({ body }) => body[aspect]))] as const);
    return Object.fromEntries(found) as Record<Aspect, number>;
  };
  return {
    tasters: all.map(({ body }) => body.taster),
    marks: of(median),
    spread: of((marks) => Math.max(...marks) - Math.min(...marks)),
    blind: all.filter(({ body }) => body.blind).length,
  };
}

const FIRST_CODE = 100;
const CODES = 900;

/**
 * A three-digit number for each batch, the same on every phone: from its id, and the next free one where two would share.
 * Ids begin with the time, so a later batch never changes an earlier one's number.
 */
export function blindCodes(batches: readonly Pick<Batch, 'id'>[]): ReadonlyMap<SubjectId, number> {
  const codes = new Map<SubjectId, number>();
  const taken = new Set<number>();
  for (const { id } of batches.toSorted((one, two) => (one.id < two.id ? -1 : 1)).slice(0, CODES)) {
    let at = Number.parseInt(id.slice(-8), 16) % CODES;
    while (taken.has(at)) at = (at + 1) % CODES;
    taken.add(at);
    codes.set(id, FIRST_CODE + at);
  }
  return codes;
}
