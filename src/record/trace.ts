/** From a lot of meat, cure or culture to every piece it went into, and back. */
import { type Batch, batch } from './batch.ts';
import type { Entry, EntryOf } from './entry.ts';
import { ofKind } from './fold.ts';
import { live } from './strikes.ts';
import { isSubject, type SubjectId } from './subject.ts';

/** One batch that a lot went into: what of it, how much, and all pieces of the batch. */
export type LotUse = {
  readonly batch: Batch;
  readonly used: readonly (EntryOf<'meat-weighed'> | EntryOf<'weighed-out'>)[];
};

/** `entries` are all there are. In the order in which the batches were opened. */
export function usesOfLot(lot: SubjectId, entries: readonly Entry[]): LotUse[] {
  const standing = live(entries);
  const used = [...ofKind(standing, 'meat-weighed'), ...ofKind(standing, 'weighed-out')].filter(
    ({ body }) => body.lot === lot,
  );
  const touching = new Map<SubjectId, Entry[]>();
  for (const entry of entries)
    for (const subject of new Set([entry.subject, ...entry.refs]))
      if (isSubject(subject, 'batch')) {
        const list = touching.get(subject);
        if (list) list.push(entry);
        else touching.set(subject, [entry]);
      }
  return [...new Set(used.map(({ subject }) => subject))]
    .flatMap((id) => {
      const folded = batch(id, touching.get(id) ?? []);
      return folded ? [{ batch: folded, used: used.filter(({ subject }) => subject === id) }] : [];
    })
    .sort((a, b) => a.batch.opened.atMs - b.batch.opened.atMs);
}

/** Every lot that stands behind a batch, each once. */
export function lotsOf({ meat, weighedOut }: Batch): SubjectId[] {
  const all = [...meat, ...weighedOut.values()].flatMap(({ body }) => body.lot ?? []);
  return [...new Set(all)];
}
