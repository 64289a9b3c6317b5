import { useCallback, useEffect, useState } from 'react';
import type { Entry } from '#record/entry.ts';
import type { SubjectId } from '#record/subject.ts';
import type { StoreProblem } from './append.ts';
import { keepPhoto, readPhoto } from './photos.ts';
import { useAppend } from './use-append.ts';

/** A photo as a page shows it; `url` holds while the page does. */
export type ShownPhoto = { state: 'loading' | 'missing' | 'damaged' } | { state: 'here'; url: string };

export function usePhoto(sha256: string): ShownPhoto {
  const [shown, setShown] = useState<ShownPhoto>({ state: 'loading' });
  useEffect(() => {
    let url: string | null = null;
    let left = false;
    void readPhoto(sha256).then((found) => {
      if (left) return;
      if (found.state !== 'here') return setShown({ state: found.state });
      url = URL.createObjectURL(new Blob([found.bytes], { type: 'image/jpeg' }));
      setShown({ state: 'here', url });
    });
    return () => {
      left = true;
      if (url !== null) URL.revokeObjectURL(url);
    };
  }, [sha256]);
  return shown;
}

export type Photographing =
  | { readonly state: 'idle' | 'working' | 'kept' }
  | {
      readonly state: 'not-kept';
      readonly code: 'unreadable' | 'no-room' | 'not-kept' | StoreProblem['code'];
    };

/** What a photo is of. The reading was saved before: whatever becomes of the photo, it stands. */
export type PhotoOf = {
  readonly subject: SubjectId;
  readonly refs: readonly SubjectId[];
  readonly of?: Entry['id'];
};

/** Shrinks, keeps the bytes, then writes the entry: an entry is never ahead of its photo. `shrink` is the files' part. */
export function usePhotographing(
  by: string,
  shrink: (file: Blob) => Promise<Uint8Array<ArrayBuffer> | null>,
): { photographing: Photographing; photograph: (file: Blob, what: PhotoOf) => Promise<boolean> } {
  const { save } = useAppend(by);
  const [photographing, set] = useState<Photographing>({ state: 'idle' });
  const photograph = useCallback(
    async (file: Blob, { subject, refs, of }: PhotoOf) => {
      const failed = (code: Extract<Photographing, { code: unknown }>['code']) => {
        set({ state: 'not-kept', code });
        return false;
      };
      set({ state: 'working' });
      const small = await shrink(file).catch(() => null);
      if (!small) return failed('unreadable');
      const kept = await keepPhoto(small);
      if (!kept.ok) return failed(kept.code);
      const { sha256, bytes } = kept;
      const body = { sha256, bytes, mime: 'image/jpeg' as const, ...(of ? { of } : {}) };
      const saved = await save([{ kind: 'photographed', subject, refs, body }]);
      if (!saved.ok) return failed(saved.problem.code);
      set({ state: 'kept' });
      return true;
    },
    [save, shrink],
  );
  return { photographing, photograph };
}
