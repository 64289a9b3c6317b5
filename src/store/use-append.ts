import { useCallback, useState } from 'react';
import type { Draft, EntryId } from '#record/entry.ts';
import type { BodyOf, Kind } from '#record/kinds.ts';
import type { SubjectId } from '#record/subject.ts';
import { type Appended, append, type StoreProblem } from './append.ts';
import { now, zoneAt } from './clock.ts';

/** What a screen knows of a fact; when and by whom are added here unless it says when. */
export type Fact = {
  [K in Kind]: {
    readonly kind: K;
    readonly subject: SubjectId;
    readonly refs?: readonly SubjectId[];
    readonly body: BodyOf<K>;
    /** When it was true, if that is not now. */
    readonly atMs?: number;
    readonly strikes?: { readonly id: EntryId; readonly reason: string };
  };
}[Kind];

export type Saving =
  | { readonly state: 'idle' }
  | { readonly state: 'saving' }
  | { readonly state: 'saved'; readonly copies: 'both' | 'one' }
  | { readonly state: 'not-saved'; readonly problem: StoreProblem };

/** Appends facts and tells how it stands: `saved` only after the store's promise says that they are on disk. */
export function useAppend(by: string): {
  saving: Saving;
  save: (facts: readonly Fact[]) => Promise<Appended>;
} {
  const [saving, setSaving] = useState<Saving>({ state: 'idle' });
  const save = useCallback(
    async (facts: readonly Fact[]) => {
      setSaving({ state: 'saving' });
      const { nowMs } = now();
      const drafts = facts.map((fact): Draft => {
        const atMs = fact.atMs ?? nowMs;
        return { ...fact, atMs, zone: zoneAt(atMs), by };
      });
      const appended = await append(drafts);
      setSaving(
        appended.ok
          ? { state: 'saved', copies: appended.copies }
          : { state: 'not-saved', problem: appended.problem },
      );
      return appended;
    },
    [by],
  );
  return { saving, save };
}
